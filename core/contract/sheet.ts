import { z } from 'zod';
import { orderCredit } from './account.ts';
import { atTheDoor } from './desk.ts';
import { findingFields, ownId } from './finding.ts';
import { act, ask } from './operation.ts';
import {
  amount,
  changeOf,
  civilDate,
  done,
  id,
  instant,
  mileage,
  needed,
  price,
  quantity,
  reduction,
  revision,
  strokes,
  words,
} from './scalars.ts';
import { jobFields, lineFields, spoken, wholeOrder } from './whole-order.ts';

/** A line's id, or a name such as `supplies` or `fixed-price:` and a job's id. */
const creditedId = z.string().min(1).max(80);

/** The head of an order as it may be changed on the sheet. */
const headChange = z
  .strictObject({
    complaint: needed(4000),
    when: z.array(words(40)).max(12),
    door: atTheDoor,
    promiseAt: instant.nullable(),
    promiseWords: words(80),
    ownMaximum: price.nullable(),
    poNumber: words(60),
    payerId: id.nullable(),
    oldPartsAnswer: z.enum(['', 'returned', 'shown', 'core', 'refused', 'disposed']),
  })
  .partial();

export const decisionInput = z.strictObject({
  orderId: id,
  /** Which of our quotes it answers; null when it answers the sheet as it stands. */
  quotePaperId: id.nullable().default(null),
  jobs: z
    .array(
      z.strictObject({
        jobId: id,
        answer: z.enum(['yes', 'no', 'later']),
        risk: words(300).default(''),
        unsafe: z.boolean().default(false),
        askAgainDays: z.int().min(0).max(3650).nullable().default(null),
        askAgainDistance: z.int().min(0).max(1_000_000).nullable().default(null),
      }),
    )
    .min(1)
    .max(40),
  /** For all jobs said yes to so far, tax in: a total, or so much more than the last ceiling. */
  upTo: z.union([z.strictObject({ total: price }), z.strictObject({ plus: price })]).nullable(),
  spoken,
  way: z.enum(['signed', 'phone', 'message', 'person']),
  /** Number rung, address it came from, or who else heard it. */
  reached: words(120).default(''),
  words: words(1000).default(''),
  strokes: strokes.nullable().default(null),
  oldParts: z.enum(['show', 'return', 'dispose']).nullable().default(null),
  /** When it was said; an earlier time than now is shown as entered late. */
  at: instant.nullable().default(null),
});

export const sheetRoom = {
  'order.get': ask('crew', z.strictObject({ id }), wholeOrder),
  'order.change': act('desk', z.strictObject({ id, revision, change: headChange }), done),
  'order.arrive': act(
    'desk',
    z.strictObject({
      id,
      revision,
      mileage: mileage.nullable(),
      mileageDoubt: z.enum(['none', 'as-typed', 'clock-replaced', 'owner-told']).default('none'),
      door: atTheDoor.optional(),
    }),
    done,
  ),
  'order.mileageOut': act('crew', z.strictObject({ id, revision, mileage }), done),
  'order.handOver': act('desk', z.strictObject({ id, revision, to: words(120) }), done),
  /** Cancelled by the customer; what was taken apart is charged only with a yes to it (TRADE 3). */
  'order.cancel': act('desk', z.strictObject({ id, revision, why: needed(300) }), done),
  'finding.add': act('crew', findingFields.extend({ orderId: id, id: ownId }), done),
  'finding.change': act(
    'crew',
    z.strictObject({
      id,
      revision,
      ...changeOf(findingFields).shape,
      jobId: id.nullable().optional(),
    }),
    done,
  ),
  'job.add': act(
    'desk',
    z.strictObject({
      orderId: id,
      job: jobFields,
      lines: z.array(lineFields).max(100).default([]),
      findingId: id.nullable().default(null),
    }),
    z.strictObject({ id, revision, letter: z.string(), lineIds: z.array(id) }),
  ),
  'job.fromBook': act(
    'desk',
    /** With a finding the job is the one that mends it. */
    z.strictObject({ orderId: id, bookJobId: id, findingId: id.nullable().default(null) }),
    z.strictObject({ id, revision, letter: z.string(), lineIds: z.array(id) }),
  ),
  'job.change': act('desk', z.strictObject({ id, revision, change: changeOf(jobFields) }), done),
  /** Out of the sheet (a job nobody said yes to and nobody worked on); undone by job.putBack. */
  'job.takeOut': act('desk', z.strictObject({ id, revision }), done),
  'job.putBack': act('desk', z.strictObject({ id, revision }), done),
  'job.give': act('desk', z.strictObject({ id, revision, given: z.boolean(), why: words(200).default('') }), done),
  /** To a new order of the same car: one way out of an excess. */
  'job.moveOut': act('desk', z.strictObject({ id, revision }), z.strictObject({ orderId: id, number: z.int() })),
  /** Without a price the shop's markup on its cost is taken; where there is none, the price is asked for. */
  'line.add': act(
    'desk',
    z.strictObject({ jobId: id, line: lineFields.extend({ unitPrice: price.nullable() }) }),
    done,
  ),
  'line.change': act('desk', z.strictObject({ id, revision, change: changeOf(lineFields) }), done),
  'line.takeOut': act('desk', z.strictObject({ id, revision }), done),
  'line.putBack': act('desk', z.strictObject({ id, revision }), done),
  'line.give': act('desk', z.strictObject({ id, revision, given: z.boolean(), why: words(200).default('') }), done),
  'discount.add': act(
    'desk',
    z.strictObject({ orderId: id, on: z.enum(['labour', 'parts', 'all']), reduction, words: words(120).default('') }),
    done,
  ),
  'discount.takeOut': act('desk', z.strictObject({ id, revision: revision.optional() }), z.strictObject({ id })),
  'quote.issue': act(
    'desk',
    z.strictObject({ orderId: id, validUntil: civilDate.nullable().default(null) }),
    z.strictObject({ paperId: id, number: z.int(), version: z.int(), gross: amount }),
  ),
  /** A yes is recorded also where it is over the account's limit: it is told, and the work waits for the owner. */
  'decision.record': act(
    'desk',
    decisionInput,
    z.strictObject({ id, ceiling: amount.nullable(), credit: orderCredit.nullable() }),
  ),
  'decision.tried': act(
    'crew',
    z.strictObject({
      orderId: id,
      way: z.enum(['phone', 'message', 'person']),
      reached: words(120),
      words: words(300).default(''),
      at: instant.nullable().default(null),
    }),
    z.strictObject({ id }),
  ),
  'invoice.issue': act(
    'desk',
    z.strictObject({
      orderId: id,
      /** What the sheet came to as the person saw it, tax in: where it comes to another sum now, nothing is issued. */
      seen: amount.nullable().default(null),
      overrides: z
        .array(z.strictObject({ what: z.string().max(60), reason: needed(300) }))
        .max(20)
        .default([]),
    }),
    z.strictObject({ paperId: id, number: z.int(), gross: amount, toPay: amount }),
  ),
  /** What an invoice bills, row by row, and how much of each is left to credit; quantities in thousandths. */
  'creditNote.left': ask(
    'desk',
    z.strictObject({ invoicePaperId: id }),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          /** Of a line; or the name under which what stands on none is credited. */
          lineId: creditedId,
          what: z.enum(['line', 'supplies', 'waste-fee', 'fixed-price']),
          /** Of its job; '' for what rules added. */
          letter: z.string(),
          words: z.string(),
          unit: z.string(),
          quantity,
          left: quantity,
          /** As billed, less discounts, in the invoice's prices. */
          amount,
        }),
      ),
    }),
  ),
  'creditNote.issue': act(
    'desk',
    z.strictObject({
      invoicePaperId: id,
      reason: needed(300),
      lines: z
        .array(z.strictObject({ lineId: creditedId, quantity }))
        .min(1)
        .max(1000),
    }),
    z.strictObject({ paperId: id, number: z.int(), net: amount, tax: amount, gross: amount }),
  ),
};
