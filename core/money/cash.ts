import { type Money, money, roundDivide } from './money.ts';

export interface CashSum {
  readonly payable: Money;
  /** payable - amount: a payment line of its own, never a change of price or tax. */
  readonly difference: Money;
}

/**
 * What is paid in cash where the smallest coin is `step` minor units: the nearest multiple, halves away from zero.
 * Rule read in public notes on rounding to five ("1, 2, 6, 7 down, 3, 4, 8, 9 up"). Throws RangeError for a step below 1.
 */
export function cashRounding(amount: Money, step: number): CashSum {
  if (!Number.isSafeInteger(step) || step < 1) throw new RangeError(`Not a coin: ${step}`);
  const payable = money(roundDivide(BigInt(amount), BigInt(step)) * step);
  return { payable, difference: money(payable - amount) };
}
