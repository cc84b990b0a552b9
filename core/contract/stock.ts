import { z } from 'zod';
import { ask } from './operation.ts';
import { civilDate, id, instant, quantity, revision, seenAmount, words } from './scalars.ts';

/** What lies in stock against what is wanted of it; quantities in thousandths of the part's unit. */
export const stockRoom = {
  'stock.get': ask(
    'crew',
    z.strictObject({ text: words(60).default(''), most: z.int().min(1).max(500).default(200) }),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          id,
          revision,
          number: z.string(),
          words: z.string(),
          unit: z.string(),
          bin: z.string(),
          oneTime: z.boolean(),
          price: seenAmount,
          value: seenAmount,
          onHand: z.int(),
          /** Still to be drawn by lines of open orders that nobody said no to. */
          spokenFor: quantity,
          /** Ordered for lines, not arrived. */
          onTheWay: quantity,
          /** On hand less what is spoken for; below zero when more is promised than lies there. */
          free: z.int(),
          keepAtLeast: quantity,
          keepAtMost: quantity.nullable(),
          pack: quantity.nullable(),
          /** What to buy once the least is not there: up to the most, in whole packs. */
          buy: quantity,
        }),
      ),
      /** How many fit the text in all. */
      count: z.int(),
      onTheWay: z.array(
        z.strictObject({
          id,
          orderId: id,
          orderNumber: z.int(),
          words: z.string(),
          quantity,
          unit: z.string(),
          kind: z.enum(['part', 'outside']),
          supplier: z.string(),
          reference: z.string(),
          dueOn: civilDate.nullable(),
          late: z.boolean(),
        }),
      ),
    }),
  ),
  /** Parts on hand that have not moved since `since`, the longest lying first; `worth` is what they cost in all. */
  'stock.still': ask(
    'crew',
    z.strictObject({}),
    z.strictObject({
      since: civilDate,
      worth: seenAmount,
      rows: z.array(
        z.strictObject({
          id,
          number: z.string(),
          words: z.string(),
          unit: z.string(),
          onHand: quantity,
          value: seenAmount,
          movedOn: civilDate.nullable(),
        }),
      ),
    }),
  ),
  /** What came in and went out of one part, newest first. */
  'part.moves': ask(
    'crew',
    z.strictObject({ partId: id, most: z.int().min(1).max(200).default(50) }),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          id,
          at: instant,
          what: z.enum(['received', 'issued', 'put-back', 'waste']),
          /** Below zero where it went out. */
          quantity: z.int(),
          /** Cost of the move, minor units, with the quantity's sign. */
          value: seenAmount,
          person: z.string(),
          order: z.strictObject({ id, number: z.int() }).nullable(),
          note: z.string(),
        }),
      ),
    }),
  ),
};
