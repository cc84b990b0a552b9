import { z } from 'zod';
import { ask } from './operation.ts';
import { civilDate, id, instant, revision, seenAmount } from './scalars.ts';
import { nextMove, openClock } from './whole-order.ts';

const todayRow = z.strictObject({
  orderId: id,
  number: z.int(),
  plate: z.string(),
  car: z.string(),
  customer: z.string(),
  complaint: z.string(),
  titles: z.array(z.string()),
  promiseAt: instant.nullable(),
  promiseWords: z.string(),
  next: nextMove,
  clocks: z.array(z.strictObject({ person: z.string(), on: instant })),
  /** Booked for this hour or before, and not here: the order's revision, on which it is said that they did not come. */
  absent: revision.nullable(),
  /**
   * When the work that was said yes to will be done at the earliest: sold hours less clocked ones, by whoever is on its
   * jobs, counted on through the garage's hours. null where nothing is sold or left to do.
   */
  expected: z
    .strictObject({
      doneAt: instant,
      /** Man-minutes. */
      leftMinutes: z.int(),
      /** Pairs of hands that it is reckoned with. */
      people: z.int(),
      /** Later than the promise. */
      late: z.boolean(),
    })
    .nullable(),
});

export const todayRoom = {
  /** Every open order with whose move it is, and what else waits for somebody. */
  'today.get': ask(
    'crew',
    z.strictObject({}),
    z.strictObject({
      now: instant,
      rows: z.array(todayRow),
      /** Clocks that run; `left` where it was surely forgotten: since another day, or after the garage closed. */
      open: z.array(openClock.extend({ left: z.boolean() })),
      /** Papers that nobody has sent, samples without a result, old units that did not come back, calls to make. */
      waiting: z.strictObject({
        toSend: z.int(),
        /** Statements of the last run that are not written down as sent, and until which day they are; null: none. */
        statements: z.strictObject({ n: z.int(), until: civilDate }).nullable(),
        lab: z.array(
          z.strictObject({
            sampleId: id,
            orderId: id,
            number: z.int(),
            label: z.string(),
            lab: z.string(),
            sentOn: civilDate,
          }),
        ),
        cores: z.array(
          z.strictObject({
            lineId: id,
            orderId: id,
            number: z.int(),
            words: z.string(),
            customer: z.string(),
            dueOn: civilDate,
          }),
        ),
        /** Cars told ready and not fetched in the days that cost nothing. */
        stored: z.array(
          z.strictObject({
            orderId: id,
            number: z.int(),
            car: z.string(),
            customer: z.string(),
            /** When the customer was told. */
            notice: civilDate,
            /** Storage so far; null where none was agreed, and without the right to see prices. */
            gross: seenAmount,
          }),
        ),
        reminders: z.int(),
        /** People who asked what is kept about them and have no answer yet. */
        privacy: z.array(
          z.strictObject({ id, customerId: id, customer: z.string(), answerBy: civilDate, late: z.boolean() }),
        ),
      }),
    }),
  ),
};
