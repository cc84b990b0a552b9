import type { AccountEntry, EntryKind } from '../../core/books/statement.ts';
import { money } from '../../core/money/money.ts';
import { addDays } from '../../core/time/civil.ts';
import { civilDateOf, wallToInstant } from '../../core/time/instant.ts';
import type { Settings, Tx } from '../context.ts';
import { eachOf } from '../order/load-rows.ts';

/** What a statement is read with: also in a thread with a connection of its own. */
export interface Books {
  readonly tx: Tx;
  readonly settings: Settings;
  readonly practice: boolean;
}

/** An entry with what papers and the window name it by. */
export interface ShownEntry extends AccountEntry {
  readonly item: string;
  readonly kind: EntryKind;
  /** Of the invoice, credit note or receipt. */
  readonly paperId: string | null;
  readonly number: number | null;
  readonly method: 'cash' | 'card' | 'transfer' | null;
  readonly orderNumber: number;
  readonly plate: string;
}

/** Everything that moved on these orders and was recorded by an instant, in the order in which it was. */
export async function entriesOf(
  { tx, settings }: Books,
  orderIds: readonly string[],
  asOf: number,
): Promise<readonly ShownEntry[]> {
  const papers = await eachOf(orderIds, (some) =>
    tx
      .selectFrom('paper')
      .innerJoin('work_order', 'work_order.id', 'paper.work_order_id')
      .innerJoin('car', 'car.id', 'work_order.car_id')
      .select(['paper.id', 'paper.kind', 'paper.number', 'paper.gross', 'paper.issued_on', 'paper.issued_at'])
      .select(['paper.due_on', 'paper.work_order_id', 'work_order.number as orderNumber', 'car.plate'])
      .where('paper.work_order_id', 'in', some)
      .where('paper.kind', 'in', ['invoice', 'credit-note'])
      .where('paper.issued_at', '<=', asOf)
      .execute(),
  );
  const payments = await eachOf(orderIds, (some) =>
    tx
      .selectFrom('payment')
      .innerJoin('work_order', 'work_order.id', 'payment.work_order_id')
      .innerJoin('car', 'car.id', 'work_order.car_id')
      .leftJoin('paper as receipt', 'receipt.id', 'payment.receipt_paper_id')
      .select(['payment.id', 'payment.kind', 'payment.way', 'payment.amount', 'payment.at'])
      .select(['payment.work_order_id', 'receipt.id as receiptId', 'receipt.number'])
      .select(['work_order.number as orderNumber', 'car.plate'])
      .where('payment.work_order_id', 'in', some)
      .where('payment.at', '<=', asOf)
      .execute(),
  );
  const all = [
    ...papers.map((row) => ({
      at: row.issued_at,
      id: row.id,
      entry: {
        ...{ kind: row.kind as EntryKind, on: row.issued_on, item: row.work_order_id, dueOn: row.due_on },
        amount: money(row.kind === 'invoice' ? row.gross : -row.gross),
        ...{ paperId: row.id, number: row.number, method: null, orderNumber: row.orderNumber, plate: row.plate },
      } satisfies ShownEntry,
    })),
    ...payments.map((row) => ({
      at: row.at,
      id: row.id,
      entry: {
        ...{ kind: row.kind, on: civilDateOf(row.at, settings.zone), item: row.work_order_id, dueOn: null },
        amount: money(0 - row.amount),
        ...{ paperId: row.receiptId, number: row.number, method: row.way === '' ? null : row.way },
        ...{ orderNumber: row.orderNumber, plate: row.plate },
      } satisfies ShownEntry,
    })),
  ];
  return all.sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1)).map(({ entry }) => entry);
}

/**
 * Orders on which something may be open on a civil day: what is open now, and what moved since. So nobody adds up twenty
 * years to know who owed at the end of last month.
 */
export async function ordersOpenOn({ tx, settings }: Books, day: string): Promise<readonly string[]> {
  const after = wallToInstant(`${addDays(day, 1)}T00:00`, settings.zone);
  const now = await tx
    .selectFrom('order_balance')
    .select('work_order_id as id')
    .where((on) => on('owed', '<>', on.lit(0)))
    .execute();
  const papers = await tx
    .selectFrom('paper')
    .select('work_order_id as id')
    .where('issued_at', '>=', after)
    .where('kind', 'in', ['invoice', 'credit-note'])
    .execute();
  const payments = await tx.selectFrom('payment').select('work_order_id as id').where('at', '>=', after).execute();
  return [...new Set([...now, ...papers, ...payments].map(({ id }) => id))];
}
