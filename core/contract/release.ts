import { z } from 'zod';
import { act, ask } from './operation.ts';
import { civilDate, done, id, instant, mileage, needed, revision, words } from './scalars.ts';
import { jobFields } from './whole-order.ts';

const testDrive = z.strictObject({
  id,
  jobId: id.nullable(),
  /** `confirm`: the complaint, before anything is touched; `check`: the work, by somebody who did not do it. */
  purpose: z.enum(['confirm', 'check']),
  by: z.string(),
  out: mileage,
  in: mileage,
  outcome: z.enum(['fine', 'found', 'not-released']),
  words: z.string(),
  at: instant,
});

const quarantine = z.strictObject({
  id,
  revision,
  what: z.enum(['car', 'part']),
  partId: id.nullable(),
  words: z.string(),
  by: z.string(),
  at: instant,
  /** null while it stands. */
  lifted: z.strictObject({ at: instant, by: z.string(), why: z.string() }).nullable(),
});

const cover = z.strictObject({
  /** null where the first job has no day or reading to count from, or the shop names no terms. */
  covered: z.boolean().nullable(),
  repairedOn: civilDate.nullable(),
  repairedAt: mileage.nullable(),
  /** The last day and the last reading, edges included. */
  until: civilDate.nullable(),
  untilMileage: mileage.nullable(),
  unit: z.enum(['km', 'mi']),
});

export const releaseRoom = {
  /** What stands between a car and the road: what must not be used, who drove it, what was gone through. */
  'release.get': ask(
    'crew',
    z.strictObject({ orderId: id }),
    z.strictObject({
      quarantines: z.array(quarantine),
      drives: z.array(testDrive),
      /** The final lists that the jobs of the order want, and who went through them. */
      finalChecks: z.array(
        z.strictObject({
          jobId: id,
          letter: z.string(),
          checkListId: id,
          title: z.string(),
          done: z.strictObject({ by: z.string(), at: instant }).nullable(),
        }),
      ),
      /** Who did safety work here: a check drive and a final check are somebody else's. */
      doers: z.array(z.strictObject({ personId: id, name: z.string() })),
      comebacks: z.array(
        z.strictObject({
          jobId: id,
          letter: z.string(),
          firstJobId: id,
          firstTitle: z.string(),
          firstOrderId: id,
          firstOrderNumber: z.int(),
          cause: z.enum(['', 'part', 'work', 'other', 'misdiagnosis']),
        }),
      ),
    }),
  ),
  'quarantine.set': act(
    'crew',
    z.strictObject({
      orderId: id,
      what: z.enum(['car', 'part']),
      partId: id.nullable().default(null),
      words: needed(300),
    }),
    done,
  ),
  /** The owner alone, with a reason. */
  'quarantine.lift': act('owner', z.strictObject({ id, revision, why: needed(300) }), done),
  /** A drive with its odometer out and in. A check drive is held for whoever did the work. */
  'testDrive.record': act(
    'crew',
    z.strictObject({
      orderId: id,
      jobId: id.nullable().default(null),
      purpose: z.enum(['confirm', 'check']).default('check'),
      out: mileage,
      in: mileage,
      outcome: z.enum(['fine', 'found', 'not-released']),
      /** What was noticed; needed unless it was fine. `found` makes a finding of it, `not-released` a quarantine. */
      words: words(300).default(''),
      urgency: z.enum(['unsafe', 'soon', 'watch']).default('soon'),
      at: instant.nullable().default(null),
    }),
    z.strictObject({ id, findingId: id.nullable(), quarantineId: id.nullable() }),
  ),
  /** Jobs done on this car before, that a complaint may be a comeback of, the newest first, each with its cover. */
  'comeback.firstJobs': ask(
    'crew',
    z.strictObject({ orderId: id }),
    z.strictObject({
      rows: z.array(z.strictObject({ jobId: id, title: z.string(), orderId: id, orderNumber: z.int(), cover })),
    }),
  ),
  /** A job that takes up an earlier one again: at the shop's, a supplier's or a maker's cost, with the owner's yes. */
  'comeback.add': act(
    'desk',
    z.strictObject({
      orderId: id,
      firstJobId: id,
      title: jobFields.shape.title,
      kind: z.enum(['charged', 'warranty', 'goodwill']).default('warranty'),
      /** Who bears it. */
      bearer: words(80).default(''),
      cause: z.enum(['', 'part', 'work', 'other', 'misdiagnosis']).default(''),
    }),
    z.strictObject({ id, revision, letter: z.string() }),
  ),
};
