import { roundDivide } from '../money/money.ts';

export type DistanceUnit = 'km' | 'mi';

/** Whole units of a car's own clock in whole kilometres, rounded half away from zero. A mile is 1.609344 km exactly. */
export function inKilometres(distance: number, unit: DistanceUnit): number {
  return unit === 'km' ? distance : roundDivide(BigInt(distance) * 1_609_344n, 1_000_000n);
}

/** Whole units of a car's own clock in whole miles, rounded half away from zero. */
export function inMiles(distance: number, unit: DistanceUnit): number {
  return unit === 'mi' ? distance : roundDivide(BigInt(distance) * 1_000_000n, 1_609_344n);
}
