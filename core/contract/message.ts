import { z } from 'zod';
import { act, ask } from './operation.ts';
import { id, instant, needed, seenAmount, words } from './scalars.ts';

export const messageAbout = z.enum(['ready', 'found', 'part-late', 'reminder', 'other']);
export const messageWay = z.enum(['phone', 'message', 'mail', 'letter', 'person']);

export const messageRoom = {
  /** A text for the customer from the shop's own wording with the order's or the reminder's figures. Nothing is sent by it. */
  'message.draft': ask(
    'desk',
    z.strictObject({
      about: messageAbout.exclude(['other']),
      orderId: id.nullable().default(null),
      reminderId: id.nullable().default(null),
    }),
    z.strictObject({
      customerId: id,
      name: z.string(),
      phone: z.string(),
      email: z.string(),
      tellBy: z.string(),
      language: z.enum(['en', 'de']),
      subject: z.string(),
      text: z.string(),
      /** Figures that the wording asks for and that are not known: they stand as … in the text. */
      missing: z.array(z.string()),
    }),
  ),
  /** What was said or written, to the customer or by them. */
  'message.record': act(
    'desk',
    z.strictObject({
      customerId: id,
      orderId: id.nullable().default(null),
      about: messageAbout,
      way: messageWay,
      direction: z.enum(['out', 'in']).default('out'),
      reached: z.boolean(),
      words: needed(4000),
      /** When it was, where it is written down later. */
      at: instant.nullable().default(null),
    }),
    z.strictObject({ id }),
  ),
  /**
   * The contact log of a customer, or of one order: messages, tries to reach them, what they answered, papers and statements sent,
   * reminders; newest first.
   */
  'message.list': ask(
    'desk',
    z.strictObject({
      customerId: id.nullable().default(null),
      orderId: id.nullable().default(null),
      most: z.int().min(1).max(500).default(100),
    }),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          id,
          kind: z.enum(['message', 'try', 'paper', 'statement', 'reminder', 'answer']),
          at: instant,
          /**
           * Of a message its about; of a paper its kind; of a reminder its outcome; of an answer yes or no; of a statement
           * sent, or what was done with it before: made as a PDF, or its mail opened.
           */
          about: z.string(),
          way: z.string(),
          direction: z.enum(['out', 'in']),
          reached: z.boolean().nullable(),
          /** Of a paper its number; of a statement its last day. */
          words: z.string(),
          /** Of a yes: up to what sum. */
          upTo: seenAmount,
          orderId: id.nullable(),
          number: z.int().nullable(),
          by: z.string(),
        }),
      ),
    }),
  ),
  /** Keys given out of the shop before the car is fetched: to whom, and which. */
  'key.handOut': act(
    'desk',
    z.strictObject({ orderId: id, toWhom: needed(120), words: words(200).default('') }),
    z.strictObject({ id }),
  ),
  'key.list': ask(
    'crew',
    z.strictObject({ orderId: id }),
    z.strictObject({
      rows: z.array(z.strictObject({ id, at: instant, toWhom: z.string(), words: z.string(), by: z.string() })),
    }),
  ),
};
