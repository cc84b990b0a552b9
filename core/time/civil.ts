/** Civil dates as text, reckoned in the proleptic Gregorian calendar of ISO 8601, years 1 to 9999. */

const DAY = 86_400_000;

interface Parts {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
}

/** Days of a civil day since 1970-01-01; months may run over. */
const dayNumber = ({ year, month, day }: Parts) => new Date(0).setUTCFullYear(year, month - 1, day) / DAY;

const two = (figure: number) => String(figure).padStart(2, '0');

function textOf(days: number): string {
  const at = new Date(days * DAY);
  const year = at.getUTCFullYear();
  if (!(year >= 1 && year <= 9999)) throw new RangeError(`no civil date of four figures: ${days} days from 1970`);
  return `${String(year).padStart(4, '0')}-${two(at.getUTCMonth() + 1)}-${two(at.getUTCDate())}`;
}

/** The parts of a date that exists; null for any other text. */
function partsOf(date: string): Parts | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!found) return null;
  const parts = { year: Number(found[1]), month: Number(found[2]), day: Number(found[3]) };
  // A day that does not exist comes back as another one.
  const back = new Date(dayNumber(parts) * DAY);
  const same =
    parts.year > 0 &&
    back.getUTCFullYear() === parts.year &&
    back.getUTCMonth() + 1 === parts.month &&
    back.getUTCDate() === parts.day;
  return same ? parts : null;
}

/** Throws RangeError for a date that does not exist. */
function civil(date: string): Parts {
  const parts = partsOf(date);
  if (!parts) throw new RangeError(`not a civil date: ${date}`);
  return parts;
}

/** A day after (or before, when negative) a civil date 'YYYY-MM-DD'. Throws RangeError for a date that does not exist. */
export function addDays(date: string, days: number): string {
  return textOf(dayNumber(civil(date)) + days);
}

/** The same day of a month `months` on, clamped to that month's last day: 2026-01-31 + 1 is 2026-02-28. */
export function addMonths(date: string, months: number): string {
  const { year, month, day } = civil(date);
  const last = new Date(dayNumber({ year, month: month + months + 1, day: 0 }) * DAY).getUTCDate();
  return textOf(dayNumber({ year, month: month + months, day: Math.min(day, last) }));
}

/** Whole days from one civil date to another; negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(civil(to)) - dayNumber(civil(from));
}

/** Day of the week of a civil date, Monday = 1 to Sunday = 7. */
export function weekday(date: string): number {
  return new Date(dayNumber(civil(date)) * DAY).getUTCDay() || 7;
}

/** Whether the text is a civil date 'YYYY-MM-DD' that exists. */
export function isCivilDate(text: string): boolean {
  return partsOf(text) !== null;
}
