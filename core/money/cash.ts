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

/**
 * What really changes hands where a sum is to be settled: in cash the coins there are, in any other way the sum itself.
 * A part is rounded like the whole, since nobody can hand over less than a coin.
 */
export function handedOver(way: 'cash' | 'card' | 'transfer', amount: Money, step: number): CashSum {
  return way === 'cash' ? cashRounding(amount, step) : { payable: amount, difference: money(0) };
}

/** The least sum that a coin of `step` minor units pays; what is less rounds to nothing. */
export const leastInCash = (step: number): number => Math.ceil(step / 2);
