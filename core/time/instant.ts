import { Temporal } from '@js-temporal/polyfill';

const MINUTE = 60_000;

/** What a clock on the wall of a zone shows at an instant. */
export interface WallTime {
  /** Civil date 'YYYY-MM-DD'. */
  readonly date: string;
  /** 'HH:MM', 24 hours. */
  readonly time: string;
}

/**
 * The instant (epoch milliseconds) of a wall time 'YYYY-MM-DDTHH:MM' in a named zone. A wall time that happens twice
 * takes `fold`: 0 the first, 1 the second. One that never happens (clocks go forward) is moved on by the gap.
 * Throws RangeError for an unknown zone or an impossible time.
 */
export function wallToInstant(wall: string, zone: string, fold: 0 | 1 = 0): number {
  const plain = Temporal.PlainDateTime.from(wall, { overflow: 'reject' });
  const earlier = plain.toZonedDateTime(zone, { disambiguation: 'earlier' });
  const later = plain.toZonedDateTime(zone, { disambiguation: 'later' });
  const gap = !later.toPlainDateTime().equals(plain);
  return (gap || fold === 1 ? later : earlier).epochMilliseconds;
}

/** What the wall clock of a zone shows at an instant (epoch milliseconds). */
export function instantToWall(instant: number, zone: string): WallTime {
  const zoned = Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(zone);
  return { date: zoned.toPlainDate().toString(), time: zoned.toPlainTime().toString({ smallestUnit: 'minute' }) };
}

/** The civil date of an instant in a zone. */
export function civilDateOf(instant: number, zone: string): string {
  return instantToWall(instant, zone).date;
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
    const day = Temporal.Instant.fromEpochMilliseconds(from).toZonedDateTimeISO(zone).startOfDay();
    const until = Math.min(off, day.add({ days: 1 }).startOfDay().epochMilliseconds);
    days.set(day.toPlainDate().toString(), minutesBetween(on, until) - minutesBetween(on, from));
    from = until;
  }
  return days;
}
