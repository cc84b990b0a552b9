import { roundDivide } from '../money/money.ts';
import { addDays, weekday } from '../time/civil.ts';
import { instantToWall, wallToInstant } from '../time/instant.ts';

/** Hours sold on a job, thousandths, and the minutes clocked on it so far. */
export interface SoldWork {
  readonly sold: number;
  readonly clocked: number;
}

/** Minutes of work that are left: what is sold less what is clocked, job by job; a job that took longer owes nothing back. */
export function minutesLeft(jobs: readonly SoldWork[]): number {
  return jobs.reduce(
    (left, { sold, clocked }) => left + Math.max(0, roundDivide(BigInt(sold) * 60n, 1000n) - clocked),
    0,
  );
}

/** When the garage is open, wall times 'HH:MM' in its own zone; Monday = 1 to Sunday = 7. */
export interface WorkingHours {
  readonly opens: string;
  readonly closes: string;
  readonly weekdays: readonly number[];
  readonly zone: string;
}

const MINUTE = 60_000;
/** Longer than any work in hand; beyond it there are no working days to count on. */
const MOST_DAYS = 400;

/**
 * The instant at which so many minutes of work end, counted on through the hours in which the garage is open. `now` in
 * epoch milliseconds. Without hours to count on (no working day, closes before it opens) the minutes are added as they are.
 */
export function workEnds(now: number, minutes: number, hours: WorkingHours): number {
  let left = minutes * MINUTE;
  let day = instantToWall(now, hours.zone).date;
  if (hours.weekdays.length === 0 || hours.closes <= hours.opens) return now + left;
  for (let days = 0; days < MOST_DAYS; days += 1, day = addDays(day, 1)) {
    if (!hours.weekdays.includes(weekday(day))) continue;
    const from = Math.max(now, wallToInstant(`${day}T${hours.opens}`, hours.zone));
    const room = wallToInstant(`${day}T${hours.closes}`, hours.zone) - from;
    if (room <= 0) continue;
    if (left <= room) return from + left;
    left -= room;
  }
  return now + minutes * MINUTE;
}
