import { addDays, weekday } from '../time/civil.ts';

/** What a booking takes of a day: civil date, wall time 'HH:MM', thousandths of an hour. */
export interface Span {
  readonly day: string;
  readonly from: string;
  readonly hours: number;
}

/** When the garage is open, wall times 'HH:MM'; Monday = 1 to Sunday = 7. */
export interface OpenHours {
  readonly opens: string;
  readonly closes: string;
  readonly weekdays: readonly number[];
}

const DAY = 24 * 60;
const minutesOf = (wall: string) => Number(wall.slice(0, 2)) * 60 + Number(wall.slice(3));
/** Minutes in thousandths of an hour. */
const thousandths = (minutes: number) => Math.round((minutes * 1000) / 60);

/**
 * A booking that is longer than the garage is open in a day, over the days that it takes: until closing on its own day,
 * then from opening on, working day after working day. Its hours add up to what was booked. Anything shorter stands as it
 * was booked, also where somebody stays on after closing. Without hours to count on, or where it begins when the garage
 * has closed, it stands whole.
 */
export function spreadOver<S extends Span>(one: S, { opens, closes, weekdays }: OpenHours): S[] {
  const whole = thousandths(minutesOf(closes) - minutesOf(opens));
  const first = thousandths(minutesOf(closes) - minutesOf(one.from));
  if (weekdays.length === 0 || whole <= 0 || first <= 0 || one.hours <= whole) return [one];
  const parts: S[] = [{ ...one, hours: Math.min(first, one.hours) }];
  let left = one.hours - first;
  for (let { day } = one; left > 0; ) {
    day = addDays(day, 1);
    if (!weekdays.includes(weekday(day))) continue;
    parts.push({ ...one, day, from: opens, hours: Math.min(whole, left) });
    left -= whole;
  }
  return parts;
}

/** The longest booking that is taken, thousandths of an hour. */
const LONGEST = 100_000;

/** How many days before a day a booking may begin that still reaches into it. */
export function reachBack({ opens, closes, weekdays }: OpenHours): number {
  const whole = thousandths(Math.min(DAY, minutesOf(closes) - minutesOf(opens)));
  if (weekdays.length === 0 || whole <= 0) return 0;
  return Math.ceil((Math.ceil(LONGEST / whole) * 7) / weekdays.length) + 7;
}
