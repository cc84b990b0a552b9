import type { OutputOf } from '../../../core/contract/index.ts';
import { scale } from '../../../core/money/money.ts';
import { daysBetween } from '../../../core/time/civil.ts';
import type { LifePoint } from './life.ts';

type Car = OutputOf<'car.get'>;
type Reminder = OutputOf<'reminder.list'>['rows'][number];

/** Something that happened to the car between visits, and what kind of thing it was. */
export interface LifeEvent {
  readonly id: string;
  readonly what: 'clock' | 'owner' | 'plate';
  readonly distance: number;
  /** Of an owner the name, of a plate the plate. */
  readonly words: string;
}

/** How far the clocks before the present one had gone: what its figures lack of the true distance. */
export function carriedOf(car: Pick<Car, 'readings'>): number {
  const last = car.readings.at(-1);
  if (last === undefined) return 0;
  return last.trueDistance - (last.newStart ?? last.reading);
}

/** True distance on a day, drawn straight between the readings before and after it; null before the first one. */
export function distanceOn(car: Pick<Car, 'readings'>, day: string): number | null {
  const before = car.readings.findLast((one) => one.on <= day);
  const after = car.readings.find((one) => one.on > day);
  if (before === undefined) return null;
  if (after === undefined) return before.trueDistance;
  const gone = after.trueDistance - before.trueDistance;
  return before.trueDistance + scale(gone, daysBetween(before.on, day), daysBetween(before.on, after.on));
}

/** Clocks that were replaced, and each owner and plate but the first. */
export function lifeEvents(car: Pick<Car, 'readings' | 'owners' | 'plates'>): LifeEvent[] {
  const clocks = car.readings
    .filter((one) => one.event === 'replaced')
    .map((one) => ({ id: `clock ${one.on}`, what: 'clock' as const, distance: one.trueDistance, words: '' }));
  const dated = (what: 'owner' | 'plate', rows: readonly { readonly from: string; readonly words: string }[]) =>
    rows
      .toSorted((a, b) => a.from.localeCompare(b.from))
      .slice(1)
      .flatMap(({ from, words }) => {
        const distance = distanceOn(car, from);
        return distance === null ? [] : [{ id: `${what} ${from}`, what, distance, words }];
      });
  return [
    ...clocks,
    ...dated(
      'owner',
      car.owners.map(({ from, name }) => ({ from, words: name })),
    ),
    ...dated(
      'plate',
      car.plates.map(({ from, plate }) => ({ from, words: plate })),
    ),
  ];
}

/**
 * What is due ahead, at the distance that was set or, for a day, where the pace of the visits will have it by then. What
 * was said no to stands there of itself.
 */
export function aheadPoints(car: Pick<Car, 'readings'>, reminders: readonly Reminder[]): LifePoint[] {
  const carried = carriedOf(car);
  const last = car.readings.at(-1);
  return reminders.flatMap((one): LifePoint[] => {
    if (one.closedAt !== null || one.source === 'declined') return [];
    const point = (distance: number) => [{ id: one.id, distance, words: one.words }];
    if (one.dueMileage !== null) return point(one.dueMileage + carried);
    if (one.on === null || one.perDayX100 === null || last === undefined || one.on < last.on) return [];
    return point(last.trueDistance + scale(one.perDayX100, daysBetween(last.on, one.on), 100));
  });
}
