import { addDays, isCivilDate } from './civil.ts';

const MINUTE = 60_000;
const DAY = 86_400_000;

/** What a clock on the wall of a zone shows at an instant. */
export interface WallTime {
  /** Civil date 'YYYY-MM-DD'. */
  readonly date: string;
  /** 'HH:MM', 24 hours. */
  readonly time: string;
}

/** Making a format takes fifty times as long as using it; a shop has one zone. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const kept = formats.get(zone);
  if (kept) return kept;
  const made = new Intl.DateTimeFormat('en-u-ca-iso8601-nu-latn', {
    ...{ timeZone: zone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit' },
    ...{ hour: '2-digit', minute: '2-digit', second: '2-digit' },
  });
  formats.set(zone, made);
  return made;
}

/** The wall clock to the second, as figures. */
function shownAt(instant: number, zone: string) {
  const parts: Partial<Record<Intl.DateTimeFormatPartTypes, string>> = {};
  for (const { type, value } of formatOf(zone).formatToParts(instant)) parts[type] = value;
  const { year = '', month = '', day = '', hour = '', minute = '', second = '' } = parts;
  return { date: `${year.padStart(4, '0')}-${month}-${day}`, time: `${hour}:${minute}`, second };
}

/** What the wall clock of a zone shows, read as if it were UTC. */
function asUtc(instant: number, zone: string): number {
  const { date, time, second } = shownAt(instant, zone);
  return Date.parse(`${date}T${time}:${second}Z`);
}

/**
 * The instant (epoch milliseconds) of a wall time 'YYYY-MM-DDTHH:MM' in a named zone. A wall time that happens twice
 * takes `fold`: 0 the first, 1 the second. One that never happens (clocks go forward) is moved on by the gap.
 * Throws RangeError for an unknown zone or an impossible time.
 */
export function wallToInstant(wall: string, zone: string, fold: 0 | 1 = 0): number {
  const [date = '', time = ''] = wall.split('T');
  const there = isCivilDate(date) && /^([01]\d|2[0-3]):[0-5]\d$/.test(time);
  if (!there) throw new RangeError(`not a wall time: ${wall}`);
  const utc = Date.parse(`${date}T${time}:00Z`);
  // What the zone is ahead of UTC before and after the day: clocks are changed once in so short a time.
  const before = utc - (asUtc(utc - DAY, zone) - (utc - DAY));
  const after = utc - (asUtc(utc + DAY, zone) - (utc + DAY));
  const shown = [before, after].filter((at) => asUtc(at, zone) === utc);
  // In a gap the clock that was left behind says how far on it is.
  if (shown.length === 0) return before;
  return fold === 0 ? Math.min(...shown) : Math.max(...shown);
}

/** What the wall clock of a zone shows at an instant (epoch milliseconds). Throws RangeError for an unknown zone. */
export function instantToWall(instant: number, zone: string): WallTime {
  const { date, time } = shownAt(instant, zone);
  return { date, time };
}

/** The civil date of an instant in a zone. */
export function civilDateOf(instant: number, zone: string): string {
  return shownAt(instant, zone).date;
}

/** Whole minutes between two instants, seconds dropped: never worked from wall clocks. */
export function minutesBetween(on: number, off: number): number {
  return Math.trunc((off - on) / MINUTE);
}

/** Minutes of a span by civil day, split at local midnight. The days add up to {@link minutesBetween}. */
export function minutesByDay(on: number, off: number, zone: string): ReadonlyMap<string, number> {
  const days = new Map<string, number>();
  let from = on;
  while (from < off) {
    const date = civilDateOf(from, zone);
    // A day may begin at one o'clock: midnight that never was is moved on.
    const until = Math.min(off, wallToInstant(`${addDays(date, 1)}T00:00`, zone));
    days.set(date, (days.get(date) ?? 0) + minutesBetween(on, until) - minutesBetween(on, from));
    from = until;
  }
  return days;
}
