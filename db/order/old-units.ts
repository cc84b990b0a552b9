import { sql } from 'kysely';
import type { Context } from '../context.ts';
import { kept } from '../kept.ts';

/** How far back an old unit is looked for; what has not come back by then does not. */
const CORE_DAYS = 400;
const DAY = 86_400_000;

/** Lines that credit notes gave back of these invoices. */
async function creditedLines(context: Context, invoiceIds: readonly string[]): Promise<Set<string>> {
  if (invoiceIds.length === 0) return new Set();
  const notes = await context.tx.selectFrom('paper').select('sheet').where('corrects', 'in', invoiceIds).execute();
  return new Set(
    notes.flatMap(({ sheet }) =>
      ((JSON.parse(sheet) as { credited?: { lineId: string }[] }).credited ?? []).map((one) => one.lineId),
    ),
  );
}

/** Charges on old units, with the papers of their orders; from the index that holds such lines alone. */
const chargedCores = kept((tx: Context['tx'], { since }: { since: number }) =>
  tx
    .selectFrom('line')
    // Crossed, so that the few such lines lead to their papers and not all papers to their lines.
    .crossJoin('job')
    .innerJoin('work_order', 'work_order.id', 'job.work_order_id')
    .innerJoin('paper', 'paper.work_order_id', 'work_order.id')
    .innerJoin('customer', 'customer.id', 'paper.customer_id')
    .select(['line.id', 'line.words', 'work_order.id as orderId', 'work_order.number', 'customer.name'])
    .select(['paper.issued_at', 'paper.id as paperId', 'paper.kind'])
    // A literal, so that the index is seen to fit.
    .where('line.kind', '=', sql.lit('core' as const))
    .whereRef('job.id', '=', 'line.job_id')
    .where('paper.issued_at', '>', since)
    .where('line.taken_out', '=', 0)
    .where('line.unit_price', '>', 0)
    .where('job.taken_out', '=', 0)
    .orderBy('paper.issued_at'),
);

/** Core charges that were invoiced and not credited: the old unit is not back yet. The oldest first. */
export async function oldUnitsOut(context: Context) {
  const rows = await chargedCores(context.tx, { since: context.now - CORE_DAYS * DAY });
  // The kind is looked at here: asked for, it would lead the database through all papers of the kind.
  const invoiced = rows.filter(({ kind }) => kind === 'invoice');
  const credited = await creditedLines(context, [...new Set(invoiced.map(({ paperId }) => paperId))]);
  return invoiced.filter(({ id }) => !credited.has(id));
}
