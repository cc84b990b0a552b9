import type { OutputOf } from '../../core/contract/index.ts';
import { roundDivide } from '../../core/money/money.ts';

/** The sheet of an order against the work done. */
export type CloseOut = OutputOf<'closeOut.get'>;
export type CloseOutJob = CloseOut['jobs'][number];
export type CloseOutLine = CloseOutJob['lines'][number];
export type Stop = CloseOut['stops'][number];
export type WayOut = CloseOut['waysOut'][number];

const MS_PER_HUNDREDTH_HOUR = 36_000n;

/** A stretch of the clock in thousandths of an hour, to the hundredth: nobody reads more from a clock. */
export function hoursClocked(ms: number): number {
  return roundDivide(BigInt(ms), MS_PER_HUNDREDTH_HOUR) * 10;
}

/** The same for hours that come in thousandths. */
export function hoursShown(thousandths: number): number {
  return roundDivide(BigInt(thousandths), 10n) * 10;
}
