import { type Money, money } from './money.ts';

/**
 * Splits `total` (minor units, may be negative) by `weights` with the largest-remainder method: every share is the
 * exact share rounded down in size, and the units left over go to the largest remainders, ties to the earlier place.
 * The shares always add up to `total`. Weights are whole numbers and may be negative (a credit line bears its part of a
 * discount). If they add up to 0 or less, the negative ones are left out; if nothing is left, the first place bears all.
 * An empty list of weights gives an empty list. Throws RangeError for a total that is not whole, or that has no place.
 */
export function spread(total: Money, weights: readonly number[]): Money[] {
  if (weights.length === 0) {
    if (total !== 0) throw new RangeError('Nothing to spread over');
    return [];
  }
  const used = usable(weights);
  const all = used.reduce((a, b) => a + b, 0n);
  if (all === 0n) return weights.map((_, place) => money(place === 0 ? total : 0));

  const whole = total < 0 ? -BigInt(total) : BigInt(total);
  const shares: bigint[] = [];
  const remainders: { place: number; rest: bigint }[] = [];
  let left = whole;
  for (const [place, weight] of used.entries()) {
    const exact = whole * weight;
    const share = floorDivide(exact, all);
    shares.push(share);
    remainders.push({ place, rest: exact - share * all });
    left -= share;
  }
  remainders.sort((a, b) => (a.rest === b.rest ? a.place - b.place : a.rest > b.rest ? -1 : 1));
  for (const { place } of remainders.slice(0, Number(left))) shares[place] = (shares[place] ?? 0n) + 1n;
  return shares.map((share) => money(Number(total < 0 ? -share : share)));
}

function usable(weights: readonly number[]): bigint[] {
  const signed = weights.map((weight) => BigInt(weight));
  if (signed.reduce((a, b) => a + b, 0n) > 0n) return signed;
  return signed.map((weight) => (weight > 0n ? weight : 0n));
}

function floorDivide(numerator: bigint, denominator: bigint): bigint {
  const quotient = numerator / denominator;
  return numerator % denominator < 0n ? quotient - 1n : quotient;
}
