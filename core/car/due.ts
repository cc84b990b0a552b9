import { roundDivide } from '../money/money.ts';
import { addDays, daysBetween } from '../time/civil.ts';
import { perDayX100, type Reading } from './odometer.ts';

/** A service due at a distance or on a date, whichever comes first. */
export interface DueRule {
  readonly atDistance: number | null;
  readonly onDate: string | null;
}

export interface Due {
  /** Days between the two readings that the guess stands on. */
  readonly days: number;
  readonly perDayX100: number | null;
  /** Smallest whole number of days after the last reading that reaches the distance; null without a pace to go by. */
  readonly daysToDue: number | null;
  /** The earlier of the guessed day and the date of the rule; null when neither is known. */
  readonly on: string | null;
  /** Whether `on` is a guess from the pace, not the date of the rule. */
  readonly guessed: boolean;
}

/** Readings nearer to each other than this say nothing of a pace: common practice, no source. */
const FEWEST_DAYS = 30;

/**
 * When a service will be due, from the pace between two true readings. Without a pace (fewer than 30 days between, no
 * distance gone, or more than `mostADay` units a day) only the date counts.
 */
export function dueOn(first: Reading, last: Reading, rule: DueRule, mostADay: number): Due {
  const days = daysBetween(first.on, last.on);
  const gone = last.distance - first.distance;
  const sane = days >= FEWEST_DAYS && gone > 0 && gone <= mostADay * days;
  const daysToDue =
    sane && rule.atDistance !== null ? Math.max(0, Math.ceil(((rule.atDistance - last.distance) * days) / gone)) : null;
  const byDistance = daysToDue === null ? null : addDays(last.on, daysToDue);
  const guessed = byDistance !== null && (rule.onDate === null || byDistance < rule.onDate);
  return {
    days,
    perDayX100: sane ? perDayX100(first, last) : null,
    daysToDue,
    on: guessed ? byDistance : rule.onDate,
    guessed,
  };
}

/** Distance to be expected on a civil date at the pace between two true readings. Throws RangeError on equal days. */
export function expectedDistance(first: Reading, last: Reading, on: string): number {
  const gone = BigInt(last.distance - first.distance) * BigInt(daysBetween(last.on, on));
  return last.distance + roundDivide(gone, BigInt(daysBetween(first.on, last.on)));
}
