import type { Context } from './context.ts';
import { notFound } from './refusal.ts';
import type { Series } from './tables.ts';

/** Takes the next number of a series, in the transaction that issues the paper: a rolled-back paper leaves no gap. */
export async function nextNumber(context: Context, series: Series): Promise<number> {
  const row = await context.tx.selectFrom('number_series').selectAll().where('id', '=', series).executeTakeFirst();
  if (!row) throw notFound('number_series', series);
  await context.write.update('number_series', series, { next: row.next + 1 });
  return row.next;
}
