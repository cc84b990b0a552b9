import type { Tx } from './context.ts';
import { canonical, sha256 } from './digest.ts';
import type { TrailRow } from './tables.ts';
import type { Change } from './writer.ts';

/** What the first row of every trail points back at. */
export const TRAIL_START = '0'.repeat(64);

/** The hash of a trail row: SHA-256 over everything in it but the hash, the hash before it included. */
export const trailHash = (row: Omit<TrailRow, 'hash'>): string =>
  sha256(canonical([row.n, row.at, row.person_id, row.device, row.operation, row.request, row.changes, row.before]));

/** Adds one row to the chain; returns its number and hash. */
export async function recordTrail(
  tx: Tx,
  entry: {
    at: number;
    personId: string | null;
    device: string;
    operation: string;
    request: string;
    changes: readonly Change[];
  },
): Promise<{ n: number; hash: string }> {
  const last = await tx.selectFrom('trail').select(['n', 'hash']).orderBy('n', 'desc').limit(1).executeTakeFirst();
  const row = {
    n: (last?.n ?? 0) + 1,
    at: entry.at,
    person_id: entry.personId,
    device: entry.device,
    operation: entry.operation,
    request: entry.request,
    changes: JSON.stringify(entry.changes),
    before: last?.hash ?? TRAIL_START,
  };
  const hash = trailHash(row);
  await tx
    .insertInto('trail')
    .values({ ...row, hash })
    .execute();
  return { n: row.n, hash };
}
