import { addDays, addMonths, isCivilDate, weekday } from './civil.ts';
import { type DateForm, dateInFigures } from './date-form.ts';

/** What a date is read by. */
export interface DateReading {
  /** Civil date 'YYYY-MM-DD'. */
  readonly today: string;
  readonly form: DateForm;
  /** Names of the days, Monday first, in every language that is read; beginnings of two letters count. */
  readonly weekdays: readonly (readonly string[])[];
  /** Words for a day near today, in small letters, each with its days from today: "tomorrow" is 1. */
  readonly near: ReadonlyMap<string, number>;
  /** Only the past makes sense: without its year it is the last such day, a day of the week the last one before today. */
  readonly past?: boolean;
}

/** A date as it was meant; 'no-such-day' for one that no calendar from 1900 to 2199 has, 'unread' for what is no date at all. */
export type DateRead = { readonly date: string } | { readonly problem: 'no-such-day' | 'unread' };

/** A year outside of these is a slip of the hand. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2199;
/** Within so many years there is a 29 February, also past a year such as 2100. */
const YEARS_ASIDE = 8;

const dateOf = (year: number, month: number, day: number): DateRead => {
  const two = (figure: number) => String(figure).padStart(2, '0');
  const date = `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
  return within(date);
};

function within(date: string): DateRead {
  const year = Number(date.slice(0, 4));
  return isCivilDate(date) && year >= FIRST_YEAR && year <= LAST_YEAR ? { date } : { problem: 'no-such-day' };
}

/**
 * Reads a date as typed: in the shop's order with points, strokes or dashes (29.11.2026, 11/29/26), as 2026-11-29, without
 * its year (the next such day, or the last one where only the past makes sense; today counts), as a word such as "tomorrow", "+3" or "-1" days, "+2w" weeks, or as a
 * day of the week (the next one after today). Two figures of a year are of this century.
 */
export function readDate(text: string, { today, form, weekdays, near, past = false }: DateReading): DateRead {
  const bare = text.trim().toLowerCase().replace('\u2212', '-');
  const word = near.get(bare);
  if (word !== undefined) return within(addDays(today, word));
  const [, sign, count = '', unit] = /^([+-])\s*(\d{1,4})\s*([dw]?)$/.exec(bare) ?? [];
  if (sign !== undefined) {
    const days = Number(count) * (unit === 'w' ? 7 : 1);
    return within(addDays(today, sign === '-' ? -days : days));
  }
  const named =
    bare.length < 2 ? -1 : weekdays.findIndex((names) => names.some((name) => name.toLowerCase().startsWith(bare)));
  if (named >= 0 && past) return { date: addDays(today, -((weekday(today) - named - 1 + 6) % 7) - 1) };
  if (named >= 0) return { date: addDays(today, ((named + 1 - weekday(today) + 6) % 7) + 1) };
  const [, y, m, d] = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})$/.exec(bare) ?? /^(\d{4})(\d{2})(\d{2})$/.exec(bare) ?? [];
  if (y !== undefined) return dateOf(Number(y), Number(m), Number(d));
  const [, first = '', mark, second = '', year = ''] =
    /^(\d{1,2})([-./])(\d{1,2})(?:\2(\d{2}|\d{4})?)?$/.exec(bare) ?? [];
  if (mark === undefined) return { problem: 'unread' };
  const monthFirst = form === 'month-day' || (form === 'year-month' && mark !== '.');
  const [month, day] = monthFirst ? [Number(first), Number(second)] : [Number(second), Number(first)];
  if (year !== '') return dateOf(Number(year) + (year.length === 2 ? 2000 : 0), month, day);
  for (let aside = 0; aside <= YEARS_ASIDE; aside++) {
    const read = dateOf(Number(today.slice(0, 4)) + (past ? -aside : aside), month, day);
    if ('date' in read && (past ? read.date <= today : read.date >= today)) return read;
  }
  return { problem: 'no-such-day' };
}

/** A civil date as it is typed in this form; where the language says it, in its figures: 29.11.2026, English 29/11/2026. */
export function typedDate(date: string, form: DateForm, language: string): string {
  const figures = dateInFigures(date, form === 'language' ? 'day-month' : form, false) ?? date;
  return form === 'language' && language !== 'en' ? figures.replaceAll('/', '.') : figures;
}

/** The weeks of a date's month, each from Monday; days of the months beside it fill them up. */
export function weeksOfMonth(date: string): readonly (readonly string[])[] {
  const first = `${date.slice(0, 8)}01`;
  const begin = addDays(first, 1 - weekday(first));
  const end = addMonths(first, 1);
  const weeks: string[][] = [];
  for (let day = begin; day < end; day = addDays(day, 7))
    weeks.push(Array.from({ length: 7 }, (_, at) => addDays(day, at)));
  return weeks;
}
