/**
 * An amount of money in minor units of the shop's currency (cents, pence, …), always a safe integer.
 * Every rounding of money goes through {@link roundDivide}.
 */
export type Money = number & { readonly __brand: 'Money' };

/** Brands an integer of minor units as Money. Throws RangeError for a fraction or beyond ±2^53-1. */
export function money(minor: number): Money {
  if (!Number.isSafeInteger(minor)) throw new RangeError(`Not a whole number of minor units: ${minor}`);
  return (minor === 0 ? 0 : minor) as Money;
}

export const ZERO = money(0);

/** Sum of amounts in minor units. Throws RangeError when the sum leaves the safe range. */
export function sum(amounts: Iterable<number>): Money {
  let total = 0;
  for (const amount of amounts) total += amount;
  return money(total);
}

/**
 * numerator / denominator rounded half away from zero: the one place where money is rounded.
 * Exact for any size (BigInt inside). Throws RangeError on denominator 0 or a result beyond the safe range.
 */
export function roundDivide(numerator: bigint, denominator: bigint): Money {
  if (denominator === 0n) throw new RangeError('Division by zero');
  const negative = numerator < 0n !== denominator < 0n;
  const n = numerator < 0n ? -numerator : numerator;
  const d = denominator < 0n ? -denominator : denominator;
  const rounded = (2n * n + d) / (2n * d);
  return money(Number(negative ? -rounded : rounded));
}

/** amount x numerator / denominator, rounded half away from zero. All arguments are whole numbers. */
export function scale(amount: number, numerator: number, denominator: number): Money {
  return roundDivide(BigInt(amount) * BigInt(numerator), BigInt(denominator));
}
