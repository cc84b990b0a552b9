import { daysBetween } from '../time/civil.ts';
import type { Reading } from './odometer.ts';

/** A reading as it was written down: in a replaced clock's row stands its last figure and the new one's first. */
export interface WrittenReading {
  readonly on: string;
  readonly reading: number;
  readonly event: 'read' | 'replaced' | 'owner-told';
  readonly newStart: number | null;
}

export interface TrueReadings {
  /** One for each that was written, with the distance the car has truly gone. */
  readonly all: readonly Reading[];
  /** What the present clock shows less: to be added to its figure for the true distance. */
  readonly carried: number;
}

/** True distances of readings in the order they were written; each replaced clock carries on from the old one's last figure. */
export function trueReadings(written: readonly WrittenReading[]): TrueReadings {
  let carried = 0;
  const all: Reading[] = [];
  for (const { on, reading, event, newStart } of written) {
    const distance = carried + reading;
    if (event === 'replaced') carried = distance - (newStart ?? 0);
    all.push({ on, distance });
  }
  return { all, carried };
}

const FEWEST_DAYS = 30;
const MOST_DAYS = 730;

/**
 * The two readings that a pace is taken from: the last, and the oldest that lies within two years before it and at least
 * 30 days; else the newest before that. null without two such. Common practice, no source.
 */
export function paceReadings(all: readonly Reading[]): { first: Reading; last: Reading } | null {
  const last = all.at(-1);
  if (!last) return null;
  const apart = all.filter((one) => daysBetween(one.on, last.on) >= FEWEST_DAYS);
  const first = apart.find((one) => daysBetween(one.on, last.on) <= MOST_DAYS) ?? apart.at(-1);
  return first ? { first, last } : null;
}
