import { z } from 'zod';
import { bestHours } from './customer.ts';
import { act, ask } from './operation.ts';
import { civilDate, distanceUnit, done, id, instant, mileage, needed, seenAmount, words } from './scalars.ts';

export const reminderSource = z.enum(['service', 'declined', 'run-in', 'warranty', 'wheel-recheck', 'own']);
/** What came of a try. A letter and nobody reached are no answer; two noes end it. */
export const reminderOutcome = z.enum(['booked', 'later', 'no', 'nobody', 'letter']);

const reminderRow = z.strictObject({
  ...done.shape,
  source: reminderSource,
  words: z.string(),
  carId: id,
  plate: z.string(),
  car: z.string(),
  unit: distanceUnit,
  customer: z
    .strictObject({
      id,
      name: z.string(),
      phone: z.string(),
      phone2: z.string(),
      email: z.string(),
      tellBy: z.string(),
      /** When they answer the phone best; null where it cannot be told. */
      bestPhone: bestHours.nullable(),
    })
    .nullable(),
  /** As it was set: whichever comes first. True distance on the car, in its own unit. */
  dueOn: civilDate.nullable(),
  dueMileage: mileage.nullable(),
  /** The earlier of the day that was set and the one guessed from the pace of the visits; null where neither is known. */
  on: civilDate.nullable(),
  guessed: z.boolean(),
  /** What the guess stands on: days between the two visits, and distance a day times a hundred; null without a pace. */
  days: z.int().nullable(),
  perDayX100: z.int().nullable(),
  /** Guessed distance today, where there is a pace. */
  expected: mileage.nullable(),
  /** To be spoken of: due, and not put off to a later day. */
  due: z.boolean(),
  /** The day that the customer asked to be asked again, or a day after nobody was reached. */
  askOn: civilDate.nullable(),
  noes: z.int(),
  tries: z.array(
    z.strictObject({
      at: instant,
      outcome: reminderOutcome,
      askOn: civilDate.nullable(),
      words: z.string(),
      by: z.string(),
    }),
  ),
  /** Of declined work: what it was to cost. */
  amount: seenAmount,
  closedAt: instant.nullable(),
  closeWhy: z.string(),
});

export const reminderRoom = {
  'reminder.add': act(
    'desk',
    z
      .strictObject({
        carId: id,
        source: reminderSource.default('own'),
        words: needed(300),
        dueOn: civilDate.nullable().default(null),
        dueMileage: mileage.nullable().default(null),
      })
      .refine((one) => one.dueOn !== null || one.dueMileage !== null, { path: ['dueOn'], error: 'needed' }),
    done,
  ),
  /**
   * One list to call down: due until a day (today when left out), whose owner may be reminded. Without those who said no
   * twice, who are to be asked later, and cars that have changed hands since. With `carId` all of a car's, due or not.
   */
  'reminder.list': ask(
    'desk',
    z.strictObject({
      until: civilDate.nullable().default(null),
      carId: id.nullable().default(null),
      most: z.int().min(1).max(500).default(200),
    }),
    z.strictObject({ rows: z.array(reminderRow) }),
  ),
  /** What came of asking. Booked closes it, a second no closes it, later asks again on a day. */
  'reminder.try': act(
    'desk',
    z
      .strictObject({
        id,
        revision: z.int().min(1),
        outcome: reminderOutcome,
        askOn: civilDate.nullable().default(null),
        words: words(300).default(''),
      })
      .refine((one) => one.outcome !== 'later' || one.askOn !== null, { path: ['askOn'], error: 'needed' }),
    z.strictObject({ ...done.shape, closed: z.boolean() }),
  ),
  /** Done with, for a reason that stays: done elsewhere, car scrapped. */
  'reminder.close': act('desk', z.strictObject({ id, revision: z.int().min(1), why: needed(200) }), done),
  /** The reminder as a letter, PDF. That it was sent is recorded by reminder.try. */
  'reminder.letter': ask('desk', z.strictObject({ id }), z.strictObject({ name: z.string(), base64: z.string() })),
};
