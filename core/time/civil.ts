import { Temporal } from '@js-temporal/polyfill';

/** A day after (or before, when negative) a civil date 'YYYY-MM-DD'. Throws RangeError for a date that does not exist. */
export function addDays(date: string, days: number): string {
  return civil(date).add({ days }).toString();
}

/** The same day of a month `months` on, clamped to that month's last day: 2026-01-31 + 1 is 2026-02-28. */
export function addMonths(date: string, months: number): string {
  return civil(date).add({ months }, { overflow: 'constrain' }).toString();
}

/** Whole days from one civil date to another; negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return civil(from).until(civil(to), { largestUnit: 'days' }).days;
}

/** Day of the week of a civil date, Monday = 1 to Sunday = 7. */
export function weekday(date: string): number {
  return civil(date).dayOfWeek;
}

/** Whether the text is a civil date 'YYYY-MM-DD' that exists. */
export function isCivilDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  try {
    return civil(text).toString() === text;
  } catch {
    return false;
  }
}

function civil(date: string): Temporal.PlainDate {
  return Temporal.PlainDate.from(date, { overflow: 'reject' });
}
