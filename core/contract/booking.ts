import { z } from 'zod';
import { act, ask } from './operation.ts';
import { civilDate, id, instant, revision } from './scalars.ts';

/** A place in a bay: day, wall time 'HH:MM', and thousandths of an hour. */
export const bookingFields = z.strictObject({
  bayId: id,
  day: civilDate,
  from: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/),
  hours: z.int().min(100).max(100_000),
});

/** Another car in the same bay at the same time: told, not forbidden. */
const clash = z.strictObject({
  orderId: id,
  number: z.int(),
  plate: z.string(),
  from: z.string(),
  hours: z.int(),
});

export const bookingRoom = {
  /** Gives an order a place in a bay, or another one. On the order's own revision. */
  'booking.change': act(
    'desk',
    z.strictObject({ orderId: id, revision, booking: bookingFields }),
    z.strictObject({ id, revision, clashes: z.array(clash) }),
  ),
  /** Bookings of a span of days, both ends in it, without cancelled ones. */
  'booking.list': ask(
    'crew',
    z.strictObject({ from: civilDate, to: civilDate }),
    z.strictObject({
      bays: z.array(z.strictObject({ id, name: z.string(), words: z.string() })),
      rows: z.array(
        bookingFields.extend({
          orderId: id,
          number: z.int(),
          revision,
          bay: z.string(),
          plate: z.string(),
          car: z.string(),
          customer: z.string(),
          complaint: z.string(),
          arrivedAt: instant.nullable(),
          handedOverAt: instant.nullable(),
          promiseAt: instant.nullable(),
          /** Orders that stand in the same bay at the same time. */
          clashes: z.array(id),
        }),
      ),
      /** Hours booked a day over all bays, thousandths; days without any are left out. */
      days: z.array(z.strictObject({ day: civilDate, hours: z.int() })),
    }),
  ),
};
