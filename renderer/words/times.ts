import { isCivilDate } from '../../core/time/civil.ts';
import { dateInFigures } from '../../core/time/date-form.ts';
import { timeShown } from '../../core/time/time-shown.ts';
import type { Writing } from './figures.ts';

const formats = new Map<string, Intl.DateTimeFormat>();

function format(writing: Writing, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const locale = writing.language === 'en' ? 'en-GB' : writing.language;
  const key = `${locale} ${writing.zone} ${JSON.stringify(options)}`;
  const made = formats.get(key) ?? new Intl.DateTimeFormat(locale, { timeZone: writing.zone, ...options });
  formats.set(key, made);
  return made;
}

/** "7:50" on the shop's own wall clock. */
export function timeText(at: number, writing: Writing): string {
  return timeShown(format(writing, { hour: 'numeric', minute: '2-digit', hourCycle: 'h23' }).format(at));
}

function inFigures(at: number, writing: Writing, short: boolean): string | null {
  // The Canadian way of writing a date is ISO 8601.
  const civil = format({ ...writing, language: 'en-CA' }, { year: 'numeric', month: '2-digit', day: '2-digit' });
  return dateInFigures(civil.format(at), writing.dateForm ?? 'language', short);
}

/** "17 Nov", with the year where it is not this one. */
export function dayText(at: number, writing: Writing, now: number): string {
  const year = format(writing, { year: 'numeric' });
  const other = year.format(at) !== year.format(now);
  const figures = inFigures(at, writing, !other);
  if (figures !== null) return figures;
  return format(writing, { day: 'numeric', month: 'short', ...(other ? { year: 'numeric' } : {}) }).format(at);
}

/** "Wed 18 Nov". */
export function weekdayText(at: number, writing: Writing): string {
  return format(writing, { weekday: 'short', day: 'numeric', month: 'short' }).format(at).replace(',', '');
}

/** A month 'YYYY-MM' as "Mar 2024"; nothing for nothing. */
export function monthText(month: string, writing: Writing): string {
  if (month === '') return '';
  return format({ ...writing, zone: 'UTC' }, { month: 'short', year: 'numeric' }).format(
    Date.parse(`${month}-15T00:00Z`),
  );
}

/** "Wednesday" and "18 November, 10:42", as the top line says it. */
export function longDay(at: number, writing: Writing): { weekday: string; rest: string } {
  const day = format(writing, { day: 'numeric', month: 'long' }).format(at);
  return { weekday: format(writing, { weekday: 'long' }).format(at), rest: `${day}, ${timeText(at, writing)}` };
}

/** Today only the time, within six days before or after the weekday with it ("Tue 17:30"), else the day. */
export function nearText(at: number, writing: Writing, now: number): string {
  const day = format(writing, { year: 'numeric', month: '2-digit', day: '2-digit' });
  if (day.format(at) === day.format(now)) return timeText(at, writing);
  if (Math.abs(at - now) > 6 * 86_400_000) return dayText(at, writing, now);
  return `${format(writing, { weekday: 'short' }).format(at)} ${timeText(at, writing)}`;
}

/** A civil date 'YYYY-MM-DD' as "18 Nov 2026"; nothing for what is none. */
export function civilText(date: string, writing: Writing): string {
  if (!isCivilDate(date)) return '';
  const figures = dateInFigures(date, writing.dateForm ?? 'language', false);
  if (figures !== null) return figures;
  return format({ ...writing, zone: 'UTC' }, { day: 'numeric', month: 'short', year: 'numeric' }).format(
    Date.parse(`${date}T00:00Z`),
  );
}

/** "Mon" of a day of the week, Monday = 1 to Sunday = 7. */
export function weekdayName(day: number, writing: Writing): string {
  // The first of January 2024 was a Monday.
  return format({ ...writing, zone: 'UTC' }, { weekday: 'short' }).format(Date.UTC(2024, 0, day));
}

/** Words for the days near today, "tomorrow" and its like in the shop's language and in English, with their days from today. */
export function nearDays({ language }: Writing): ReadonlyMap<string, number> {
  const words = [language, 'en'].flatMap((one) => {
    const near = new Intl.RelativeTimeFormat(one, { numeric: 'auto' });
    return [-2, -1, 0, 1, 2].map((days) => [near.format(days, 'day').toLowerCase(), days] as const);
  });
  return new Map(words);
}

/** The days of the week, Monday first, each by its whole name as the shop says it and in English. */
export function weekdayNames(writing: Writing): readonly (readonly string[])[] {
  return [1, 2, 3, 4, 5, 6, 7].map((day) =>
    [writing.language, 'en'].map((language) =>
      format({ ...writing, language, zone: 'UTC' }, { weekday: 'long' }).format(Date.UTC(2024, 0, day)),
    ),
  );
}
