import { z } from 'zod';
import { ownId, reading, urgency } from './finding.ts';
import { act, ask } from './operation.ts';
import { changeOf, done, id, instant, needed, revision, words } from './scalars.ts';

export const checkItem = z.strictObject({
  words: needed(120),
  /** Where on the car: "front". */
  place: words(60).default(''),
  /** What is measured there, with its limits in thousandths of the unit, and where those come from. */
  measure: z
    .strictObject({
      what: needed(80),
      unit: words(16),
      least: reading.nullable().default(null),
      most: reading.nullable().default(null),
      source: words(200).default(''),
    })
    .nullable()
    .default(null),
});

export const checkListFields = z.strictObject({
  title: needed(120),
  kind: z.enum(['walk-round', 'final']),
  items: z.array(checkItem).min(1).max(60),
  takenOut: z.boolean().default(false),
});

/** What was seen at an item, or that nobody looked. */
export const seen = z.enum(['fine', 'not-seen', ...urgency.options]);

export const checkAnswer = z.strictObject({
  /** Its place in the list, from 0. */
  item: z.int().min(0).max(59),
  seen,
  words: words(400).default(''),
  /** In thousandths of the item's unit. */
  value: reading.nullable().default(null),
  /** Of the finding that it makes. */
  findingId: ownId,
});

export const checkDone = z.strictObject({
  id,
  title: z.string(),
  kind: z.enum(['walk-round', 'final']),
  at: instant,
  by: z.string(),
  answers: z.array(
    checkItem.extend({
      seen,
      said: z.string(),
      value: reading.nullable(),
      findingId: id.nullable(),
    }),
  ),
});

/** The shop's own lists of what to look at, and what was seen. */
export const checkRoom = {
  'checkList.add': act('desk', checkListFields, done),
  'checkList.change': act('desk', z.strictObject({ id, revision, change: changeOf(checkListFields) }), done),
  'checkList.list': ask(
    'crew',
    z.strictObject({}),
    z.strictObject({ rows: z.array(checkListFields.extend({ id, revision })) }),
  ),
  /** Every item of the list is answered once. What is unsafe, soon or to be watched becomes a finding of the order. */
  'check.record': act(
    'crew',
    z.strictObject({ orderId: id, checkListId: id, answers: z.array(checkAnswer).min(1).max(60) }),
    z.strictObject({ id, findings: z.array(z.strictObject({ item: z.int(), findingId: id })) }),
  ),
  'check.list': ask('crew', z.strictObject({ orderId: id }), z.strictObject({ rows: z.array(checkDone) })),
};
