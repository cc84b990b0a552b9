import { type DistanceUnit, inKilometres, inMiles } from '../measure/distance.ts';
import { roundDivide } from '../money/money.ts';
import { daysBetween } from '../time/civil.ts';

/** A reading of a car's clock: whole units, on a civil date. */
export interface Reading {
  readonly on: string;
  readonly distance: number;
}

/** A car does not go farther than this in a day on average: common practice, no source. */
export const MOST_KM_A_DAY = 300;

export interface ReadingCheck {
  /** Lower than the last reading: warn, and ask. */
  readonly lower: boolean;
  /** Farther than a car goes in the days between. */
  readonly tooFar: boolean;
  /** The typed figure as if it had been read in the other unit, in the unit of this clock. */
  readonly otherUnit: number;
  /** Typed in the other unit it would fit since the last reading: offer it. */
  readonly fitsAsOtherUnit: boolean;
}

/**
 * Compares a typed mileage with the last true distance, both in `unit`. Nothing is refused here: the desk is warned and
 * offered the other unit where that fits. Throws RangeError for dates that do not exist.
 */
export function checkReading(
  last: Reading,
  typed: Reading,
  unit: DistanceUnit,
  mostKmADay: number = MOST_KM_A_DAY,
): ReadingCheck {
  const days = Math.max(1, daysBetween(last.on, typed.on));
  const farthest = last.distance + (unit === 'km' ? mostKmADay * days : inMiles(mostKmADay * days, 'km'));
  const otherUnit = unit === 'km' ? inKilometres(typed.distance, 'mi') : inMiles(typed.distance, 'km');
  const fits = (distance: number) => distance >= last.distance && distance <= farthest;
  const lower = typed.distance < last.distance;
  return {
    lower,
    tooFar: typed.distance > farthest,
    otherUnit,
    fitsAsOtherUnit: !fits(typed.distance) && fits(otherUnit),
  };
}

/** A clock that was replaced: what the old one showed last and the new one first. */
export interface ClockReplaced {
  readonly on: string;
  readonly oldFinal: number;
  readonly newStart: number;
}

/**
 * The distance that the car has truly gone when its present clock shows `shown`: every replaced clock's own distance is
 * added. Replacements in any order; those after the civil date `on` do not count.
 */
export function trueDistance(shown: Reading, replaced: readonly ClockReplaced[]): number {
  const before = replaced.filter((clock) => clock.on <= shown.on);
  return before.reduce((distance, clock) => distance + clock.oldFinal - clock.newStart, shown.distance);
}

/** Distance a day between two true readings, times a hundred, rounded; null when they are not on different days. */
export function perDayX100(first: Reading, second: Reading): number | null {
  const days = daysBetween(first.on, second.on);
  return days <= 0 ? null : roundDivide(BigInt(second.distance - first.distance) * 100n, BigInt(days));
}
