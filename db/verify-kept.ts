import type { Tx } from './context.ts';

/** How a fault is told. */
export type Say = (what: string, table: string, row: string, detail: string) => void;

/** What is kept as open on each order, added up again from its papers and payments. Returns how many were. */
export async function orderBalances(tx: Tx, fault: Say): Promise<number> {
  const kept = new Map(
    (await tx.selectFrom('order_balance').selectAll().execute()).map((row) => [row.work_order_id, row]),
  );
  const owed = new Map<string, number>();
  const invoiced = new Set<string>();
  const add = (id: string, sum: number) => owed.set(id, (owed.get(id) ?? 0) + sum);
  for await (const paper of tx.selectFrom('paper').select(['work_order_id', 'kind', 'gross']).stream()) {
    if (paper.kind === 'invoice') invoiced.add(paper.work_order_id);
    if (paper.kind === 'invoice') add(paper.work_order_id, paper.gross);
    if (paper.kind === 'credit-note') add(paper.work_order_id, -paper.gross);
  }
  for await (const payment of tx.selectFrom('payment').select(['work_order_id', 'amount']).stream())
    add(payment.work_order_id, -payment.amount);
  for (const { id, handed_over_at } of await tx.selectFrom('work_order').select(['id', 'handed_over_at']).execute()) {
    const row = kept.get(id);
    kept.delete(id);
    if (!row) fault('row-missing', 'order_balance', id, 'no balance is kept of this order');
    else if (row.owed !== (owed.get(id) ?? 0) || (row.invoiced === 1) !== invoiced.has(id))
      fault('balance-off', 'order_balance', id, `kept as ${row.owed}, adds up to ${owed.get(id) ?? 0}`);
    else if (row.gone_at !== handed_over_at)
      fault('balance-off', 'order_balance', id, `kept as gone at ${row.gone_at}, the order says ${handed_over_at}`);
  }
  for (const id of kept.keys()) fault('row-unknown', 'order_balance', id, 'of no order');
  return owed.size;
}

/** Papers that are kept as waiting to be sent, worked out again from what was issued and sent. Returns how many wait. */
export async function papersToSend(tx: Tx, fault: Say): Promise<number> {
  const kept = new Map(
    (await tx.selectFrom('to_send').selectAll().execute()).map((row) => [row.paper_id, row.issued_at]),
  );
  const sent = new Set<string>();
  for await (const row of tx.selectFrom('paper_sent').select('paper_id').stream()) sent.add(row.paper_id);
  const waiting = new Map<string, number>();
  /** Of each order the quote that stands, until its invoice is out. */
  const quotes = new Map<string, { readonly id: string; readonly version: number; readonly issuedAt: number }>();
  const invoiced = new Set<string>();
  for await (const row of tx
    .selectFrom('paper')
    .select(['id', 'kind', 'version', 'work_order_id', 'issued_at'])
    .stream()) {
    if (row.kind === 'invoice') invoiced.add(row.work_order_id);
    if (row.kind !== 'quote') {
      if (!sent.has(row.id)) waiting.set(row.id, row.issued_at);
    } else if ((quotes.get(row.work_order_id)?.version ?? -1) < (row.version ?? 0))
      quotes.set(row.work_order_id, { id: row.id, version: row.version ?? 0, issuedAt: row.issued_at });
  }
  for (const [orderId, { id, issuedAt }] of quotes)
    if (!invoiced.has(orderId) && !sent.has(id)) waiting.set(id, issuedAt);
  for (const [id, at] of waiting) {
    if (!kept.has(id)) fault('row-missing', 'to_send', id, 'was not sent, and is not kept as to be sent');
    else if (kept.get(id) !== at)
      fault('row-changed', 'to_send', id, `kept as issued at ${kept.get(id)}, the paper says ${at}`);
    kept.delete(id);
  }
  for (const id of kept.keys()) fault('row-unknown', 'to_send', id, 'is not to be sent');
  return waiting.size;
}
