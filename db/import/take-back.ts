import type { Context } from '../context.ts';
import type { ImportMadeRow } from '../tables.ts';
import type { BroughtIn } from '../writer.ts';

/** So many makings are taken back in one change. */
const PIECE = 250;

/**
 * Takes back what a file brought in, the last first, from below the making `after` on. What somebody changed since, or what
 * anything else names, stays.
 */
export async function takeBack(context: Context, runId: string, after: string | null) {
  let query = context.tx
    .selectFrom('import_made')
    .select(['id', 'made_table', 'made_id'])
    .where('import_run_id', '=', runId)
    .where('was_here', '=', 0)
    .orderBy('id', 'desc')
    .limit(PIECE);
  if (after !== null) query = query.where('id', '<', after);
  const rows = await query.execute();
  let gone = 0;
  let kept = 0;
  for (const row of rows) {
    const together = await whatGoes(context, row);
    if (together === null) continue;
    if (together.length > 0 && (await context.write.removeUnnamed(together))) gone += 1;
    else kept += 1;
  }
  return { gone, kept, next: rows.length === PIECE ? (rows.at(-1)?.id ?? null) : null };
}

/** The rows that go with one making; none where somebody changed it since, null where it has gone before. */
async function whatGoes(
  { tx }: Context,
  { made_table: table, made_id: id }: Pick<ImportMadeRow, 'made_table' | 'made_id'>,
): Promise<{ table: BroughtIn; id: string }[] | null> {
  if (table === 'customer' || table === 'car') {
    const row = await tx.selectFrom(table).select('revision').where('id', '=', id).executeTakeFirst();
    if (!row) return null;
    if (row.revision > 1) return [];
    if (table === 'customer') return [{ table, id }];
    const plates = await tx.selectFrom('car_plate').select('id').where('car_id', '=', id).execute();
    const owners = await tx.selectFrom('car_owner').select('id').where('car_id', '=', id).execute();
    return [
      ...plates.map((plate) => ({ table: 'car_plate' as const, id: plate.id })),
      ...owners.map((owner) => ({ table: 'car_owner' as const, id: owner.id })),
      { table, id },
    ];
  }
  const row = await tx.selectFrom(table).select('id').where('id', '=', id).executeTakeFirst();
  return row ? [{ table, id }] : null;
}
