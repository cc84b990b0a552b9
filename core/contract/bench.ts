import { z } from 'zod';
import { act, ask } from './operation.ts';
import { bookJobContent, procedureWarning } from './procedure.ts';
import {
  amount,
  changeOf,
  civilDate,
  done,
  id,
  instant,
  needed,
  price,
  quantity,
  revision,
  seenAmount,
  words,
} from './scalars.ts';

/** What the same job took last times, with its spread and its count. */
/** What does not agree: where, and what was found there. */
const fault = z.strictObject({ what: z.string(), table: z.string(), row: z.string(), detail: z.string() });

export const lastTimes = z.strictObject({
  count: z.int(),
  hours: z.strictObject({ least: quantity, middle: quantity, most: quantity, booked: quantity }).nullable(),
  lines: z.array(
    z.strictObject({ words: z.string(), unit: z.string(), least: quantity, most: quantity, count: z.int() }),
  ),
  /** What the job came to on invoices, before sheet discounts, in the shop's prices; null without the right to see them. */
  prices: z.strictObject({ least: amount, middle: amount, most: amount, count: z.int() }).nullable(),
  found: z.array(z.strictObject({ text: z.string(), count: z.int() })),
});

const partFields = z.strictObject({
  number: needed(40),
  words: needed(200),
  unit: words(8),
  price,
  bin: words(20).default(''),
  oneTime: z.boolean().default(false),
  keepAtLeast: quantity.default(0),
  /** Bought up to so much, at least to `keepAtLeast`; null: to that. */
  keepAtMost: quantity.min(1).nullable().default(null),
  /** Bought in packs of so many; null: any quantity. */
  pack: quantity.min(1).nullable().default(null),
});

export const benchRoom = {
  'jobBook.list': ask(
    'crew',
    z.strictObject({}),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          id,
          title: z.string(),
          car: z.string(),
          /** The version that the bench gets; 0 while there is none. */
          version: z.int(),
          /** A newer one that is not put to use; null where there is none. */
          draft: z.int().nullable(),
          bookHours: quantity,
          steps: z.int(),
          /** Things to mend: all torques without a source are one. */
          warnings: z.int(),
        }),
      ),
    }),
  ),
  'jobBook.get': ask(
    'crew',
    /** The newest version, a draft too; or the one that the bench gets. */
    z.strictObject({ id, used: z.boolean().default(false) }),
    z.strictObject({
      id,
      versionId: id,
      version: z.int(),
      /** The version that the bench gets; 0 while there is none. */
      inUse: z.int(),
      content: bookJobContent,
      warnings: z.array(procedureWarning),
      lastTimes,
    }),
  ),
  /** The version that an order began with, steps and all. */
  'jobBook.version': ask(
    'crew',
    z.strictObject({ versionId: id }),
    z.strictObject({ versionId: id, bookJobId: id, version: z.int(), content: bookJobContent }),
  ),
  'jobBook.save': act(
    'desk',
    /**
     * Kept as a new version after the newest one. A draft may be wrong; what is put to use may not hold a wrong order of
     * the plugs, nor a torque without a source.
     */
    z.strictObject({
      id: id.nullable(),
      basedOn: z.int().min(0),
      content: bookJobContent,
      draft: z.boolean().default(false),
    }),
    z.strictObject({
      id,
      versionId: id,
      version: z.int(),
      inUse: z.int(),
      warnings: z.array(procedureWarning),
    }),
  ),
  'clock.on': act(
    'crew',
    z.strictObject({
      jobId: id.nullable(),
      kind: z.enum(['work', 'break']).default('work'),
      personId: id.nullable().default(null),
      /** When it was tapped, where the shop was out of reach then: not to come, nor before the person's last entry ended. */
      at: instant.nullable().default(null),
    }),
    z.strictObject({ closed: id.nullable() }),
  ),
  'clock.off': act(
    'crew',
    z.strictObject({ personId: id.nullable().default(null), at: instant.nullable().default(null) }),
    z.strictObject({ closed: id }),
  ),
  /** Sets a running clock aside as forgotten: it counts nothing and holds the close-out until corrected. */
  'clock.forgotten': act('crew', z.strictObject({ personId: id }), z.strictObject({ id })),
  /** A new entry with a reason that takes the place of an old one; the old stays. */
  'clock.correct': act(
    'crew',
    z.strictObject({ entryId: id, on: instant, off: instant, jobId: id.nullable(), why: needed(300) }),
    z.strictObject({ id }),
  ),
  'step.tick': act(
    'crew',
    z.strictObject({
      jobId: id,
      n: z.int(),
      state: z.enum(['done', 'not-needed', 'failed', 'open']),
      why: words(300).default(''),
      /** What was measured, one figure a place. */
      reading: z.array(z.number()).max(16).default([]),
      second: z
        .strictObject({ personId: id, code: z.string().max(40) })
        .nullable()
        .default(null),
      at: instant.nullable().default(null),
    }),
    z.strictObject({ reopened: z.array(z.int()) }),
  ),
  'part.add': act('desk', partFields.extend({ cost: price, onHand: quantity.default(0) }), done),
  /** What is kept of a part; its quantity and cost change by moves alone. */
  'part.change': act('desk', z.strictObject({ id, revision, change: changeOf(partFields) }), done),
  'part.list': ask(
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
          price: seenAmount,
          bin: z.string(),
          onHand: z.int(),
          value: seenAmount,
          keepAtLeast: quantity,
          oneTime: z.boolean(),
        }),
      ),
    }),
  ),
  'part.receive': act(
    'desk',
    z.strictObject({ partId: id, quantity, cost: price, note: words(200).default('') }),
    z.strictObject({ id, onHand: z.int() }),
  ),
  /** Out of stock onto a job's line. Held while the job has no yes. */
  'part.issue': act(
    'crew',
    z.strictObject({ jobId: id, lineId: id.nullable(), partId: id, quantity, waste: z.boolean().default(false) }),
    z.strictObject({ id, onHand: z.int(), warning: z.enum(['', 'below-zero']) }),
  ),
  'part.putBack': act('crew', z.strictObject({ moveId: id, quantity }), z.strictObject({ id, onHand: z.int() })),
  'awaited.order': act(
    'desk',
    z.strictObject({
      lineId: id,
      kind: z.enum(['part', 'outside']),
      supplier: needed(80),
      reference: words(60).default(''),
      dueOn: civilDate.nullable(),
    }),
    z.strictObject({ id }),
  ),
  'awaited.arrive': act('desk', z.strictObject({ id, cost: price.nullable() }), z.strictObject({ id })),
  'paper.read': ask('desk', z.strictObject({ id }), z.strictObject({ name: z.string(), base64: z.string() })),
  'paper.sent': act(
    'desk',
    z.strictObject({ id, how: needed(120), at: instant.nullable().default(null) }),
    z.strictObject({ id }),
  ),
  'care.verify': ask(
    'owner',
    z.strictObject({}),
    z.strictObject({
      sound: z.boolean(),
      checked: z.record(z.string(), z.int()),
      faults: z.array(fault),
    }),
  ),
  /** Makes a piece of the papers again and compares them with their files: call again with `next` until it is null. */
  'care.papers': ask(
    'owner',
    z.strictObject({ after: id.nullable().default(null), most: z.int().min(1).max(50).default(20) }),
    z.strictObject({ of: z.int(), looked: z.int(), faults: z.array(fault), next: id.nullable() }),
  ),
  /** Makes the PDF of a paper anew from what was stored; the file that was there is kept beside it. */
  'paper.makeAnew': act('owner', z.strictObject({ id }), z.strictObject({ id })),
  'trail.list': ask(
    'owner',
    z.strictObject({ before: z.int().nullable().default(null), most: z.int().min(1).max(200).default(50) }),
    z.strictObject({
      rows: z.array(
        z.strictObject({ n: z.int(), at: instant, person: z.string(), operation: z.string(), changes: z.string() }),
      ),
    }),
  ),
};
