import { ageing, USUAL_EDGES } from '../../core/books/ageing.ts';
import { money, sum, ZERO } from '../../core/money/money.ts';
import { addDays, daysBetween } from '../../core/time/civil.ts';
import { wallToInstant } from '../../core/time/instant.ts';
import type { Context, Handlers } from '../context.ts';
import { kept } from '../kept.ts';
import { settingsOf } from '../people.ts';

const WAYS = ['cash', 'card', 'transfer'] as const;

/** Papers of orders that are not settled to the last cent, by the day they fall due. */
const notSettled = kept((tx: Context['tx']) =>
  tx
    .selectFrom('order_balance')
    // Crossed, so that what is open leads to its papers and not all papers to what is open.
    .crossJoin('paper as invoice')
    .innerJoin('work_order', 'work_order.id', 'order_balance.work_order_id')
    .innerJoin('car', 'car.id', 'work_order.car_id')
    .innerJoin('customer', 'customer.id', 'invoice.customer_id')
    .select(['invoice.id', 'invoice.kind', 'invoice.number', 'invoice.gross', 'invoice.issued_on', 'invoice.due_on'])
    .select(['work_order.id as orderId', 'work_order.number as orderNumber', 'car.plate'])
    .select(['customer.id as customerId', 'customer.name as customer', 'order_balance.owed as open'])
    // A literal, so that the index that holds only what is open is seen to fit.
    .where((on) => on('order_balance.owed', '<>', on.lit(0)))
    .whereRef('invoice.work_order_id', '=', 'order_balance.work_order_id')
    .orderBy('invoice.due_on')
    .orderBy('invoice.number'),
);

/** Deposits less what was paid back, on orders without an invoice. */
async function depositsHeld(context: Context): Promise<number> {
  const row = await context.tx
    .selectFrom('order_balance')
    .select(({ fn }) => fn.sum<number | null>('owed').as('sum'))
    .where((on) => on.and([on('invoiced', '=', on.lit(0)), on('owed', '<>', on.lit(0))]))
    .executeTakeFirst();
  return -Number(row?.sum ?? 0);
}

/** What came in and went back on the shop's present day, by way. Rounding to coins is no way of paying. */
async function takenToday(context: Context) {
  const { zone } = settingsOf(context);
  const rows = await context.tx
    .selectFrom('payment')
    .select(['way', 'amount'])
    .where('at', '>=', wallToInstant(`${context.today}T00:00`, zone))
    .where('at', '<', wallToInstant(`${addDays(context.today, 1)}T00:00`, zone))
    .where('way', '<>', '')
    .execute();
  const ways = WAYS.map((way) => {
    const mine = rows.filter((row) => row.way === way).map((row) => row.amount);
    return {
      way,
      in: sum(mine.filter((amount) => amount > 0)),
      back: money(-sum(mine.filter((amount) => amount < 0))),
      count: mine.length,
    };
  });
  const cash = ways.find(({ way }) => way === 'cash');
  return {
    ways: ways.filter(({ count }) => count > 0),
    in: sum(ways.map((way) => way.in)),
    back: sum(ways.map((way) => way.back)),
    drawer: (cash?.in ?? 0) - (cash?.back ?? 0),
  };
}

export const moneyHandlers: Handlers = {
  'money.get': async (_input, context) => {
    // The kind is looked at here: asked for, it could lead the database through all invoices there are.
    const rows = (await notSettled(context.tx, {})).filter(({ kind }) => kind === 'invoice');
    const owing = rows.filter((row) => row.open > 0);
    const items = owing.map((row) => ({ dueOn: row.due_on ?? row.issued_on, open: money(row.open) }));
    const { buckets } = ageing(items, ZERO, context.today);
    return {
      asOf: context.today,
      unpaid: owing.map((row) => {
        const dueOn = row.due_on ?? row.issued_on;
        return {
          paperId: row.id,
          number: row.number,
          orderId: row.orderId,
          orderNumber: row.orderNumber,
          customerId: row.customerId,
          customer: row.customer,
          plate: row.plate,
          issuedOn: row.issued_on,
          dueOn,
          age: daysBetween(row.issued_on, context.today),
          daysPastDue: daysBetween(dueOn, context.today),
          gross: row.gross,
          open: row.open,
        };
      }),
      owed: sum(items.map((item) => item.open)),
      ageing: buckets.map((bucket, at) => ({ upTo: USUAL_EDGES[at] ?? null, sum: bucket })),
      inFavour: rows
        .filter((row) => row.open < 0)
        .map((row) => ({
          paperId: row.id,
          number: row.number,
          orderId: row.orderId,
          customer: row.customer,
          sum: -row.open,
        })),
      deposits: await depositsHeld(context),
      today: await takenToday(context),
    };
  },
};
