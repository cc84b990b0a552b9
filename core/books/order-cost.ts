import { type PaidMinutes, payCost } from '../bench/clock.ts';
import type { LineKind } from '../money/line.ts';
import { type Money, money, scale, sum } from '../money/money.ts';

/** A line as far as its cost is concerned; sums in minor units, quantity in thousandths. */
export interface CostedLine {
  readonly kind: LineKind;
  readonly quantity: number;
  /** Cost of one unit as typed; null when not known. */
  readonly unitCost: number | null;
  /** What was issued to it from stock, at cost; null when nothing was. */
  readonly issued: number | null;
  /** What its supplier's bill came to; null when there is none. */
  readonly billed: number | null;
}

export interface OrderCost {
  readonly parts: Money;
  readonly outside: Money;
  /** Issued or spilt and on no line: in the cost, never on the sheet. */
  readonly stray: Money;
  readonly pay: Money;
  readonly total: Money;
  /** Parts, fluids and outside work whose cost nobody knows yet. */
  readonly unknown: number;
}

const BOUGHT: ReadonlySet<LineKind> = new Set(['part', 'fluid', 'outside']);

/**
 * What an order cost the shop, net of tax: stock at what it was issued at, else the supplier's bill, else the typed cost;
 * pay by the minute. A core charge goes back and is neither sold nor cost.
 */
export function orderCost(lines: readonly CostedLine[], stray: Money, paid: readonly PaidMinutes[]): OrderCost {
  const costOf = (line: CostedLine): number | null =>
    line.issued ?? line.billed ?? (line.unitCost === null ? null : scale(line.unitCost, line.quantity, 1000));
  const bought = lines.filter((line) => line.kind !== 'labour' && line.kind !== 'core');
  const of = (outside: boolean) =>
    sum(bought.filter((line) => (line.kind === 'outside') === outside).map((line) => costOf(line) ?? 0));
  const [parts, away, pay] = [of(false), of(true), payCost(paid)];
  return {
    parts,
    outside: away,
    stray,
    pay,
    total: money(parts + away + stray + pay),
    unknown: bought.filter((line) => BOUGHT.has(line.kind) && costOf(line) === null).length,
  };
}
