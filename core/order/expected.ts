import { roundDivide } from '../money/money.ts';
import { addDays, weekday } from '../time/civil.ts';
import { instantToWall, wallToInstant } from '../time/instant.ts';

/** Hours sold on a job, thousandths, and the minutes clocked on it so far. */
export interface SoldWork {
  readonly sold: number;
  readonly clocked: number;
}

/** What is left of a job, and whose it is: who is clocked on to it, else who it was given to; nobody's is anybody's. */
export interface WorkLeft {
  /** Man-minutes. */
  readonly minutes: number;
  readonly people: readonly string[];
}

/** Man-minutes that are left of a job: what is sold less what is clocked; one that took longer owes nothing back. */
export const manMinutesLeft = ({ sold, clocked }: SoldWork): number =>
  Math.max(0, roundDivide(BigInt(sold) * 60n, 1000n) - clocked);

/**
 * Minutes by the clock until all of it is done. Man-minutes add, the time of the bay does not: people on one job share it
 * evenly, whoever has most to do says when it ends, and what is nobody's falls to whoever has least. With nobody named
 * it is one pair of hands. Rounded up. Common practice, no source.
 */
export function minutesByTheClock(jobs: readonly WorkLeft[]): number {
  const loads = new Map<string, number>();
  for (const { minutes, people } of jobs)
    for (const person of people) loads.set(person, (loads.get(person) ?? 0) + minutes / people.length);
  const all = jobs.reduce((sum, { minutes }) => sum + minutes, 0);
  return Math.ceil(Math.max(0, ...loads.values(), all / Math.max(1, loads.size)));
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
