import { z } from 'zod';
import { DATE_ORDERS, FIELDS } from '../bring-in/fields.ts';
import { DECIMAL_MARKS } from '../bring-in/sum.ts';
import { act, ask } from './operation.ts';
import { id, instant, needed, words } from './scalars.ts';

const mapping = z.strictObject({
  columns: z.array(z.enum(FIELDS).nullable()).max(200),
  dates: z.enum(DATE_ORDERS),
  /** What parts the decimals of its sums; null reads each by itself and refuses what could be a thousand as well. */
  decimal: z.enum(DECIMAL_MARKS).nullable().default(null),
});

/** A piece of a file: rows as they stand in it. Small enough that no window waits. */
const rows = z
  .array(z.strictObject({ line: z.int().min(1), cells: z.array(z.string().max(4000)).max(200) }))
  .min(1)
  .max(500);

const badRow = z.strictObject({
  line: z.int(),
  problems: z.array(
    z.strictObject({
      field: z.enum(FIELDS),
      problem: z.string(),
      with: z.record(z.string(), z.union([z.string(), z.number()])).optional(),
    }),
  ),
});

const counts = z.strictObject({
  customers: z.int(),
  cars: z.int(),
  visits: z.int(),
  /** Rows that hold nothing that is not here already. */
  known: z.int(),
  bad: z.int(),
});

export const importRoom = {
  /** What a piece of a file would bring, without writing anything. */
  'import.try': ask(
    'desk',
    z.strictObject({ mapping, rows }),
    z.strictObject({
      /** Rows that would bring something, with what each would make, by names that are the same in every piece of a file. */
      would: z.array(
        z.strictObject({
          line: z.int(),
          makes: z.array(z.strictObject({ what: z.enum(['customer', 'car', 'visit', 'link']), name: z.string() })),
        }),
      ),
      known: z.int(),
      bad: z.array(badRow),
    }),
  ),
  /** Begins to bring a file in. What is brought in under it can be taken back by it. */
  'import.begin': act(
    'desk',
    z.strictObject({
      fileName: needed(200),
      /** SHA-256 of the file, hex; empty where the machine that read it cannot reckon one. */
      fileHash: z.string().regex(/^([0-9a-f]{64})?$/),
      mapping,
    }),
    z.strictObject({ id }),
  ),
  /** Brings in a piece of the file: what is new is made, what is here already is left as it is, bad rows are answered. */
  'import.put': act('desk', z.strictObject({ id, rows }), z.strictObject({ made: counts, bad: z.array(badRow) })),
  /**
   * Takes back a piece of what a file brought in, the last first: call again with `next` until it is null. What somebody
   * has worked with since stays.
   */
  'import.undo': act(
    'desk',
    z.strictObject({ id, after: words(64).nullable().default(null) }),
    z.strictObject({ gone: z.int(), kept: z.int(), next: z.string().nullable() }),
  ),
  /** The files that were brought in, the newest first. */
  'import.list': ask(
    'desk',
    z.strictObject({}),
    z.strictObject({
      runs: z.array(
        z.strictObject({
          id,
          fileName: z.string(),
          fileHash: z.string(),
          person: z.string(),
          at: instant,
          counts,
          undoneAt: instant.nullable(),
        }),
      ),
    }),
  ),
};
