import { z } from 'zod';
import { ask } from './operation.ts';
import { amount, id, lineKind, quantity, seenAmount } from './scalars.ts';
import { jobKind, stop } from './whole-order.ts';

/** Hours sold against hours clocked: thousandths of an hour, and the clock in milliseconds. */
const hours = z.strictObject({
  /** null where nothing was quoted. */
  quoted: quantity.nullable(),
  charged: quantity,
  clocked: quantity,
  people: z.array(
    z.strictObject({ personId: id, name: z.string(), quoted: quantity.nullable(), clocked: z.int().min(0) }),
  ),
});

const closeOutLine = z.strictObject({
  lineId: id,
  kind: lineKind,
  words: z.string(),
  partNumber: z.string(),
  unit: z.string(),
  /** As it stood in the quote that the yes was said to, else in the newest; null when it stood in none. */
  quoted: z.strictObject({ quantity, total: seenAmount }).nullable(),
  /** Clocked, issued or arrived; null where nothing measures it. */
  used: z.strictObject({ quantity }).nullable(),
  charge: z.strictObject({ quantity, total: seenAmount, given: z.boolean() }),
});

const closeOutJob = z.strictObject({
  id,
  letter: z.string(),
  title: z.string(),
  kind: jobKind,
  covered: z.boolean(),
  given: z.boolean(),
  fixedPrice: z.boolean(),
  /** Before sheet discounts and tax (tax in where the shop's prices hold it). */
  quoted: seenAmount,
  charge: seenAmount,
  hours,
  lines: z.array(closeOutLine),
});

/** A way to bring the sheet back inside its yes (core/order/ways-out.ts says what each figure means). */
export const wayOut = z.strictObject({
  kind: z.enum(['yes', 'give', 'move']),
  mends: z.enum(['all', 'job', 'excess']),
  jobId: id.nullable(),
  lineId: id.nullable(),
  letter: z.string(),
  words: z.string(),
  amount: seenAmount,
  after: seenAmount,
  enough: z.boolean(),
  wants: z.enum(['', 'owner-yes']),
  /** Why it cannot be taken just now: '' or `job-worked-on` (a job with clocks or parts on it is not moved). */
  held: z.enum(['', 'job-worked-on']),
});

export const closeOutRoom = {
  /** The sheet against the work done: what was quoted, used and is charged; what stops the invoice; the ways out. */
  'closeOut.get': ask(
    'crew',
    z.strictObject({ orderId: id }),
    z.strictObject({
      orderId: id,
      number: z.int(),
      revision: z.int(),
      invoiced: z.boolean(),
      quote: z.strictObject({ paperId: id, number: z.int(), version: z.int() }).nullable(),
      jobs: z.array(closeOutJob),
      hours,
      /** Issued, not put back, and on no line of the sheet. */
      onNoLine: z.array(
        z.strictObject({
          moveId: id,
          jobId: id,
          letter: z.string(),
          partId: id,
          words: z.string(),
          unit: z.string(),
          quantity,
          worth: seenAmount,
        }),
      ),
      /** null without the right to see prices. Gross sums, tax in. */
      totals: z
        .strictObject({
          quoted: amount.nullable(),
          net: amount,
          tax: amount,
          charge: amount,
          ceiling: amount,
          allowed: amount,
          excess: amount,
          held: amount,
          ownMaximum: amount.nullable(),
          overMaximum: amount,
          taken: amount,
          toPay: amount,
        })
        .nullable(),
      /** null without the right to see cost. Net of tax; core charges are neither sold nor cost. */
      margin: z
        .strictObject({
          sold: amount,
          parts: amount,
          outside: amount,
          stray: amount,
          pay: amount,
          cost: amount,
          profit: amount,
          marginX10: z.int().nullable(),
          unknownCosts: z.int(),
        })
        .nullable(),
      stops: z.array(stop),
      waysOut: z.array(wayOut),
    }),
  ),
};
