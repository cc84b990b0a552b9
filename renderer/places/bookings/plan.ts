import type { OutputOf } from '../../../core/contract/index.ts';
import type { Span } from '../../../core/order/spread.ts';
import { addDays, weekday } from '../../../core/time/civil.ts';
import { wallTime } from '../book-in/bay-day.ts';
import { minutesOf } from '../today/strip/lay-out.ts';

type Listed = OutputOf<'booking.list'>;

/** A place in a bay: a day, a wall time and thousandths of an hour; who is to do it, or nobody yet. */
export interface Place {
  readonly bayId: string;
  readonly day: string;
  readonly from: string;
  readonly hours: number;
  readonly personId: string | null;
}

/** A booking in the plan: of an order, or one of the shop's own; where it is longer than a day, once a day that it takes. */
export interface Planned extends Place {
  /** What it takes of the day that it is drawn on. */
  readonly part: Span;
  readonly id: string;
  /** What clashes are told by: the order; of the shop's own booking the booking itself. */
  readonly orderId: string;
  readonly own: boolean;
  readonly revision: number;
  readonly person: string;
  /** What it is called in one word: the plate, else the car; of the shop's own its words. */
  readonly name: string;
  readonly about: string;
  readonly look: 'booked' | 'here' | 'gone' | 'no-show' | 'own';
  readonly leftWithoutWork: boolean;
}

const partOf = ({ day, from, hours }: Span): Span => ({ day, from, hours });

/** Whether it is a later day of a booking that began before. */
export const goesOn = (one: Planned): boolean => one.part.day !== one.day;

/** All bookings that were listed, as the plan draws them. */
export function plannedOf({ rows, internal }: Pick<Listed, 'rows' | 'internal'>): Planned[] {
  return [
    ...rows.map(
      (row): Planned => ({
        ...{ bayId: row.bayId, ...row.whole, personId: row.personId, part: partOf(row) },
        ...{ id: row.bookingId, orderId: row.orderId, own: false, revision: row.revision, person: row.person },
        name: row.plate || row.car,
        about: [row.plate === '' ? '' : row.car, row.customer, row.complaint].filter((one) => one !== '').join(', '),
        look:
          row.noShowAt !== null
            ? 'no-show'
            : row.handedOverAt !== null
              ? 'gone'
              : row.arrivedAt !== null
                ? 'here'
                : 'booked',
        leftWithoutWork: row.leftWithoutWork,
      }),
    ),
    ...internal.map(
      (row): Planned => ({
        ...{ bayId: row.bayId, ...row.whole, personId: row.personId, part: partOf(row) },
        ...{ id: row.id, orderId: row.id, own: true, revision: row.revision, person: row.person },
        ...{ name: row.words, about: '', look: 'own', leftWithoutWork: false },
      }),
    ),
  ];
}

/** Whether it takes up its bay: a car that did not come, or went with nothing done to it, does not. */
export const takesRoom = (one: Planned): boolean => one.look !== 'no-show' && !one.leftWithoutWork;

/** Monday of the week that a day is in. */
export const weekOf = (day: string): string => addDays(day, 1 - weekday(day));

/** The days of a week that are drawn: those the garage works, and whichever else something is booked for. */
export function shownDays(
  monday: string,
  works: readonly number[],
  booked: readonly { readonly day: string }[],
): string[] {
  return Array.from({ length: 7 }, (_, index) => addDays(monday, index)).filter(
    (day) => works.includes(weekday(day)) || booked.some((one) => one.day === day),
  );
}

const HOUR = 60;
const DAY = 24 * HOUR;
/** A booking is moved by so many minutes. */
const QUARTER = 15;

/** The minutes of a day that a place takes up. */
export function minutesTaken({ from, hours }: Pick<Place, 'from' | 'hours'>): { from: number; to: number } {
  const begins = minutesOf(from);
  return { from: begins, to: Math.min(DAY, begins + (hours * HOUR) / 1000) };
}

/** A place that begins at the nearest quarter of an hour to `minutes`, within the day. */
export function at(place: Place, minutes: number): Place {
  const latest = Math.max(0, Math.floor((DAY - (place.hours * HOUR) / 1000) / QUARTER) * QUARTER);
  const quarter = Math.round(minutes / QUARTER) * QUARTER;
  return { ...place, from: wallTime(Math.min(latest, Math.max(0, quarter))) };
}

export type Step = 'earlier' | 'later' | 'up' | 'down';

/** One step by a key: a quarter of an hour, or the next bay; past the last bay of a day comes the first of the next. */
export function stepped(place: Place, step: Step, days: readonly string[], bays: readonly string[]): Place {
  if (step === 'earlier' || step === 'later')
    return at(place, minutesOf(place.from) + (step === 'later' ? QUARTER : -QUARTER));
  const lanes = days.flatMap((day) => bays.map((bayId) => ({ day, bayId })));
  const now = lanes.findIndex((lane) => lane.day === place.day && lane.bayId === place.bayId);
  return { ...place, ...lanes[now + (step === 'down' ? 1 : -1)] };
}

/** Bookings of one bay on one day in lanes, so that none covers another. `partOf` says what each takes of the day. */
export function inLanes<B>(bookings: readonly B[], partOf: (one: B) => Pick<Place, 'from' | 'hours'>): B[][] {
  const lanes: B[][] = [];
  for (const one of bookings.toSorted((a, b) => partOf(a).from.localeCompare(partOf(b).from))) {
    const { from } = minutesTaken(partOf(one));
    const free = lanes.find((lane) => lane.every((other) => minutesTaken(partOf(other)).to <= from));
    if (free === undefined) lanes.push([one]);
    else free.push(one);
  }
  return lanes;
}
