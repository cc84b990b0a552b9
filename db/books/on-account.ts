import type { Tx } from '../context.ts';
import { eachOf } from '../order/load-rows.ts';

/**
 * Which orders are on an account, said here and nowhere else: an order is on the account of whoever its invoice is made out
 * to; while it has none, of whoever it would be made out to, which is the payer that it names, else the customer. What an
 * order says of its payer later moves no invoice, as no paper changes. Entries that were joined into an account are it, too.
 */
export interface OnAccount {
  readonly id: string;
  readonly cancelledAt: number | null;
  /** Open on its papers, minor units: below zero what stands in their favour. */
  readonly owed: number;
  readonly invoiced: boolean;
}

/** A customer's entry and those that were joined into it. */
export async function accountIds(tx: Tx, customerId: string): Promise<readonly string[]> {
  const joined = await tx.selectFrom('customer').select('id').where('joined_into', '=', customerId).execute();
  return [customerId, ...joined.map(({ id }) => id)];
}

/** The orders of an account with these entries; `unsettled`: only those without an invoice, or with something open on it. */
export async function ordersOfAccount(
  tx: Tx,
  ids: readonly string[],
  which: 'all' | 'unsettled',
): Promise<readonly OnAccount[]> {
  const billed = await tx
    .selectFrom('paper')
    .innerJoin('work_order', 'work_order.id', 'paper.work_order_id')
    .innerJoin('order_balance', 'order_balance.work_order_id', 'paper.work_order_id')
    .select(['work_order.id', 'work_order.cancelled_at', 'order_balance.owed', 'paper.kind'])
    .where('paper.customer_id', 'in', ids)
    .$if(which === 'unsettled', (query) => query.where((on) => on('order_balance.owed', '<>', on.lit(0))))
    .execute();
  const unbilled = () =>
    tx
      .selectFrom('work_order')
      .innerJoin('order_balance', 'order_balance.work_order_id', 'work_order.id')
      .select(['work_order.id', 'work_order.cancelled_at', 'order_balance.owed'])
      .where((on) => on('order_balance.invoiced', '=', on.lit(0)));
  const open = [
    ...(await unbilled().where('work_order.payer_id', 'in', ids).execute()),
    ...(await unbilled().where('work_order.customer_id', 'in', ids).where('work_order.payer_id', 'is', null).execute()),
  ];
  const shown = (row: (typeof open)[number], invoiced: boolean): OnAccount => ({
    ...{ id: row.id, cancelledAt: row.cancelled_at, owed: row.owed, invoiced },
  });
  return [
    // The kind is looked at here: asked for, it would lead the database through all invoices.
    ...billed.filter(({ kind }) => kind === 'invoice').map((row) => shown(row, true)),
    ...open.map((row) => shown(row, false)),
  ];
}

/** The same rule asked the other way round: whose account each of these orders is on, by the entry that holds now. */
export async function holdersOf(tx: Tx, orderIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await eachOf(orderIds, (some) =>
    tx
      .selectFrom('work_order')
      .leftJoin('paper as invoice', (join) =>
        join.onRef('invoice.work_order_id', '=', 'work_order.id').on('invoice.kind', '=', 'invoice'),
      )
      .innerJoin('customer', (join) =>
        join.on((on) =>
          on(
            'customer.id',
            '=',
            on.fn.coalesce('invoice.customer_id', 'work_order.payer_id', 'work_order.customer_id'),
          ),
        ),
      )
      .select(['work_order.id', 'customer.id as customerId', 'customer.joined_into'])
      .where('work_order.id', 'in', some)
      .execute(),
  );
  return new Map(rows.map((row) => [row.id, row.joined_into ?? row.customerId]));
}
