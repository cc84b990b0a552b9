import { z } from 'zod';
import { act, ask } from './operation.ts';
import { civilDate, done, id, instant, needed, quantity, revision, words } from './scalars.ts';

/** A place in a bay: day, wall time 'HH:MM', and thousandths of an hour. */
export const bookingFields = z.strictObject({
  bayId: id,
  day: civilDate,
  from: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/),
  hours: z.int().min(100).max(100_000),
  /** Who is to do it; left out it stays as it is. */
  personId: id.nullable().optional(),
});

/** Another booking in the same bay, or of the same person, at the same time: told, not forbidden. */
const clash = z.strictObject({
  /** The order; of an internal booking its own id. */
  orderId: id,
  /** null of an internal booking. */
  number: z.int().nullable(),
  plate: z.string(),
  words: z.string(),
  from: z.string(),
  hours: z.int(),
  over: z.enum(['bay', 'person']),
});

/** Where it begins and how long it is, on whichever days. */
const whole = bookingFields.pick({ day: true, from: true, hours: true });

const person = { personId: id.nullable(), person: z.string() };
const days = { from: civilDate, to: civilDate };

/** A booking without an order: a lift that is examined, a bay kept free. */
const internalFields = z.strictObject({ ...bookingFields.shape, words: needed(120) });

export const bookingRoom = {
  /** Gives an order a place in a bay, or another one. On the order's own revision. After a no-show it is a new booking. */
  'booking.change': act(
    'desk',
    z.strictObject({ orderId: id, revision, booking: bookingFields }),
    z.strictObject({ id, revision, clashes: z.array(clash) }),
  ),
  /** The car did not come, or (with `came` true) it was said wrongly. On the order's own revision. */
  'booking.noShow': act('desk', z.strictObject({ orderId: id, revision, came: z.boolean().default(false) }), done),
  'booking.addInternal': act(
    'desk',
    z.strictObject({ booking: internalFields }),
    z.strictObject({ id, revision, clashes: z.array(clash) }),
  ),
  'booking.changeInternal': act(
    'desk',
    z.strictObject({ id, revision, booking: internalFields }),
    z.strictObject({ id, revision, clashes: z.array(clash) }),
  ),
  'booking.takeOut': act('desk', z.strictObject({ id, revision }), done),
  /**
   * Bookings of a span of days, both ends in it, without cancelled ones. One that is longer than the garage is open in a
   * day has a row for each day that it takes, with that day's hours; `whole` is what was booked.
   */
  'booking.list': ask(
    'crew',
    z.strictObject(days),
    z.strictObject({
      bays: z.array(z.strictObject({ id, name: z.string(), words: z.string() })),
      rows: z.array(
        bookingFields.extend({
          bookingId: id,
          whole,
          orderId: id,
          number: z.int(),
          revision,
          bay: z.string(),
          ...person,
          plate: z.string(),
          car: z.string(),
          customer: z.string(),
          complaint: z.string(),
          arrivedAt: instant.nullable(),
          handedOverAt: instant.nullable(),
          promiseAt: instant.nullable(),
          noShowAt: instant.nullable(),
          /** It was fetched again with nothing done to it. */
          leftWithoutWork: z.boolean(),
          /** Orders and internal bookings that stand in the same bay, or have the same person, at the same time. */
          clashes: z.array(id),
        }),
      ),
      internal: z.array(
        bookingFields.extend({
          id,
          whole,
          revision,
          bay: z.string(),
          ...person,
          words: z.string(),
          clashes: z.array(id),
        }),
      ),
      /** Hours booked a day over all bays, thousandths; days without any are left out. No-shows and cars gone do not count. */
      days: z.array(z.strictObject({ day: civilDate, hours: z.int() })),
    }),
  ),
  /**
   * What can still be promised, day by day: present hours x planned share, less what is booked. A bay that is kept takes
   * hours of work only where somebody of the garage is to do it. Thousandths of an hour.
   */
  'booking.capacity': ask(
    'crew',
    z.strictObject(days),
    z.strictObject({
      /** Hundredths of a percent. */
      shareBp: z.int(),
      days: z.array(
        z.strictObject({
          day: civilDate,
          /** Whether the garage works that day of the week. */
          working: z.boolean(),
          present: quantity,
          planned: quantity,
          booked: quantity,
          /** Below zero the day is over-booked. */
          free: z.int(),
          people: z.array(
            z.strictObject({
              personId: id,
              name: z.string(),
              /** Without absences; guessed from the garage's hours where the person has no week of their own. */
              hours: quantity,
              guessed: z.boolean(),
              present: quantity,
              booked: quantity,
              absences: z.array(z.strictObject({ id, hours: quantity, words: z.string() })),
            }),
          ),
          bays: z.array(z.strictObject({ bayId: id, open: quantity, booked: quantity, free: z.int() })),
        }),
      ),
    }),
  ),
  /** The bookings as a calendar file (RFC 5545). */
  'booking.calendar': ask(
    'crew',
    z.strictObject(days),
    z.strictObject({ name: z.string(), text: z.string(), count: z.int() }),
  ),
  /** Away on each of these days, by so many hours; without hours, for all that the person's week has that day. */
  'absence.add': act(
    'desk',
    z.strictObject({
      personId: id,
      ...days,
      hours: z.int().min(100).max(24_000).nullable().default(null),
      words: words(120).default(''),
    }),
    z.strictObject({ ids: z.array(id) }),
  ),
  'absence.takeOut': act('desk', z.strictObject({ id }), z.strictObject({ id })),
};
