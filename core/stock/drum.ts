import { percentX10 } from '../money/margin.ts';
import { type Money, money } from '../money/money.ts';
import { issueCost, type Stock } from './average.ts';

export interface DrumCount {
  /** Dip less book, thousandths of a litre; below zero is short. */
  readonly variance: number;
  readonly varianceValue: Money;
  /** Size of the variance over what was issued since the last count, percent times ten; null when nothing was. */
  readonly varianceX10: number | null;
  readonly after: Stock;
}

/** A drum is dipped: what the book says against what is there. `issued` and `dip` in thousandths of a litre. */
export function countDrum(book: Stock, issued: number, dip: number, lastUnitCost: Money): DrumCount {
  const variance = dip - book.quantity;
  const varianceValue = issueCost(book, variance, lastUnitCost);
  return {
    variance,
    varianceValue,
    varianceX10: percentX10(Math.abs(variance), issued),
    after: { quantity: dip, value: money(book.value + varianceValue) },
  };
}
