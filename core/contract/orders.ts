import { z } from 'zod';
import { ask } from './operation.ts';
import { id, instant, seenAmount, words } from './scalars.ts';
import { nextMove } from './whole-order.ts';

/** Which orders: one sentence over the list. */
const filter = z.strictObject({
  which: z.enum(['open', 'unpaid', 'refused', 'cameBack', 'lab', 'oldUnit', 'past', 'all']).default('open'),
  /** Opened in this year of the shop's calendar. */
  year: z.int().min(1990).max(2199).nullable().default(null),
  /** Of a plate, a name, the customer's words, the title of a job, or the order's number. */
  text: words(60).default(''),
});

export const ordersRoom = {
  /** How many orders there are, week by week, the newest first; weeks without any are left out. */
  'order.weeks': ask(
    'crew',
    z.strictObject({ filter }),
    z.strictObject({
      weeks: z.array(z.strictObject({ from: instant, to: instant, n: z.int() })),
      total: z.int(),
    }),
  ),
  /** Of all orders, whatever the filter. */
  'order.counts': ask(
    'crew',
    z.strictObject({}),
    z.strictObject({
      /** When the first was opened. */
      first: instant.nullable(),
      open: z.int(),
      unpaid: z.int(),
      /** With a job that somebody said no to. */
      refused: z.int(),
      /** With a job that came back from an earlier one. */
      cameBack: z.int(),
      /** With a sample that has no result yet. */
      lab: z.int(),
      /** Charged for an old unit that is not back. */
      oldUnit: z.int(),
    }),
  ),
  /** The orders that were opened from an instant on and before another, the newest first; go on from `next`. */
  'order.page': ask(
    'crew',
    z.strictObject({
      filter,
      /** null: from the first on, to the last. */
      from: instant.nullable().default(null),
      to: instant.nullable().default(null),
      before: z.strictObject({ at: instant, id }).nullable().default(null),
      most: z.int().min(1).max(500).default(300),
    }),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          id,
          number: z.int(),
          openedAt: instant,
          plate: z.string(),
          car: z.string(),
          customer: z.string(),
          complaint: z.string(),
          titles: z.array(z.string()),
          gross: seenAmount,
          next: nextMove,
        }),
      ),
      next: z.strictObject({ at: instant, id }).nullable(),
    }),
  ),
};
