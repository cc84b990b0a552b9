import type { Kysely } from 'kysely';
import { newId } from './id.ts';
import type { Tables } from './tables.ts';
import { recordTrail } from './trail.ts';
import { Writer } from './writer.ts';

/** The operation under which the trail keeps that a copy was brought back. */
export const RESTORED = 'shop.restored';

/** How the invoice numbers stand after a copy was brought back. */
export interface Numbers {
  /** The last invoice in the copy; null where there is none. */
  readonly copied: number | null;
  /** The next that will be issued. */
  readonly next: number;
}

/**
 * Notes in the trail that this shop was brought back from a copy, and lifts the invoice numbers over the last one that
 * stands on paper (null: nobody knows), so that no number is given twice. Returns null where the shop is not set up.
 */
export async function recordRestored(
  db: Kysely<Tables>,
  lastInvoice: number | null,
  at: number,
): Promise<{ readonly numbers: Numbers; readonly trail: { n: number; hash: string } } | null> {
  return db.transaction().execute(async (tx) => {
    const series = await tx.selectFrom('number_series').select('next').where('id', '=', 'invoice').executeTakeFirst();
    if (!series) return null;
    const last = await tx
      .selectFrom('paper')
      .select((on) => on.fn.max('number').as('number'))
      .where('kind', '=', 'invoice')
      .executeTakeFirst();
    const next = Math.max(series.next, (lastInvoice ?? 0) + 1);
    const write = new Writer(tx);
    if (next > series.next) await write.update('number_series', 'invoice', { next });
    const entry = { at, personId: null, device: 'bringing back', operation: RESTORED, request: newId() };
    const trail = await recordTrail(tx, { ...entry, changes: write.changes });
    return { numbers: { copied: last?.number ?? null, next }, trail };
  });
}
