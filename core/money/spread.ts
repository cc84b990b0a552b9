import { type Money, money } from './money.ts';

/**
 * Spreads a total (minor units) over weights by the largest remainder; ties go to the earlier place. The shares add to
 * the total exactly. Weights are whole numbers, none negative; if all are 0 the first place takes everything.
 * Throws RangeError on a negative weight.
 */
export function spread(total: Money, weights: readonly number[]): Money[] {
  if (weights.length === 0) return [];
  if (weights.some((weight) => weight < 0)) throw new RangeError('A weight below zero cannot take a share');
  const all = weights.reduce((a, b) => a + BigInt(b), 0n);
  if (all === 0n) return weights.map((_, place) => money(place === 0 ? total : 0));
  const sign = total < 0 ? -1 : 1;
  const size = BigInt(Math.abs(total));
  const floors = weights.map((weight) => (size * BigInt(weight)) / all);
  const rests = weights.map((weight) => (size * BigInt(weight)) % all);
  let left = Number(size - floors.reduce((a, b) => a + b, 0n));
  const order = rests
    .map((rest, place) => ({ rest, place }))
    .sort((a, b) => (a.rest === b.rest ? a.place - b.place : a.rest > b.rest ? -1 : 1));
  const shares = floors.map(Number);
  for (const { place } of order) {
    if (left === 0) break;
    shares[place] = (shares[place] ?? 0) + 1;
    left -= 1;
  }
  return shares.map((share) => money(sign * share));
}
