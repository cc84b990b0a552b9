import { type Money, money, roundDivide, sum } from './money.ts';

/**
 * `part` of `whole` as a percentage times ten (36.1 % = 361), rounded half away from zero; null when `whole` is 0.
 * Any two whole numbers of one unit.
 */
export function percentX10(part: number, whole: number): number | null {
  return whole === 0 ? null : roundDivide(BigInt(part) * 1000n, BigInt(whole));
}

export interface Profit {
  /** Sold less cost, minor units. */
  readonly profit: Money;
  /** Profit over what was sold, percent times ten; null when nothing was sold. */
  readonly marginX10: number | null;
  /** Profit over what it cost, percent times ten; null when it cost nothing. */
  readonly markupX10: number | null;
}

/** Profit of a sale, both sums net of tax in minor units. Margin and markup are never the same figure. */
export function profitOf(sold: Money, cost: Money): Profit {
  const profit = money(sold - cost);
  return { profit, marginX10: percentX10(profit, sold), markupX10: percentX10(profit, cost) };
}

/** What is still owed after each of the sums applied in order (minor units); below zero is the customer's credit. */
export function balancesAfter(gross: Money, applied: readonly Money[]): Money[] {
  return applied.map((_, at) => money(gross - sum(applied.slice(0, at + 1))));
}
