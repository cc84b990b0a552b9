import { sql } from 'kysely';
import type { OutputOf } from '../../core/contract/index.ts';
import { wallToInstant } from '../../core/time/instant.ts';
import type { Context, Handlers } from '../context.ts';
import { nextOf } from '../order/facts.ts';
import { filteredOrders, type OrderFilter } from '../order/filter.ts';
import { loadOrders } from '../order/load.ts';
import { reckonOrder } from '../order/reckon.ts';
import { settingsOf } from '../people.ts';

type Row = OutputOf<'order.page'>['rows'][number];

const WEEK = 7 * 86_400_000;

/** A Monday at three in the morning long ago: between weeks counted from then nobody opens an order. */
const firstWeek = (zone: string) => wallToInstant('1990-01-01T03:00', zone);

export const ordersHandlers: Handlers = {
  'order.weeks': async ({ filter }, context) => {
    const base = firstWeek(settingsOf(context).zone);
    const rows = await (await filteredOrders(context, filter))
      .select((on) => [
        sql<number>`(work_order.opened_at - ${sql.lit(base)}) / ${sql.lit(WEEK)}`.as('week'),
        on.fn.countAll<number>().as('n'),
      ])
      .groupBy('week')
      .orderBy('week', 'desc')
      .execute();
    const weeks = rows.map(({ week, n }) => ({ from: base + week * WEEK, to: base + (week + 1) * WEEK, n: Number(n) }));
    return { weeks, total: weeks.reduce((sum, { n }) => sum + n, 0) };
  },
  'order.counts': async (_input, context) => {
    const first = await context.tx
      .selectFrom('work_order')
      .select('opened_at')
      .orderBy('opened_at')
      .limit(1)
      .executeTakeFirst();
    const count = async (which: OrderFilter['which']) => {
      const all = await filteredOrders(context, { which, year: null, text: '' });
      const row = await all.select((on) => on.fn.countAll<number>().as('n')).executeTakeFirstOrThrow();
      return Number(row.n);
    };
    return {
      first: first?.opened_at ?? null,
      open: await count('open'),
      unpaid: await count('unpaid'),
      refused: await count('refused'),
      cameBack: await count('cameBack'),
      lab: await count('lab'),
      oldUnit: await count('oldUnit'),
    };
  },
  'order.page': async ({ filter, from, to, before, most }, context) => {
    let query = (await filteredOrders(context, filter))
      .select(['id', 'number', 'opened_at', 'handed_over_at', 'car_id', 'customer_id', 'complaint'])
      .orderBy('opened_at', 'desc')
      .orderBy('id', 'desc')
      .limit(most);
    if (from !== null) query = query.where('opened_at', '>=', from);
    if (to !== null) query = query.where('opened_at', '<', to);
    if (before !== null)
      query = query.where((on) =>
        on.or([on('opened_at', '<', before.at), on.and([on('opened_at', '=', before.at), on('id', '<', before.id)])]),
      );
    const found = await query.execute();
    const settled = await settledOf(
      context,
      found.flatMap((row) => (row.handed_over_at === null ? [] : [row.id])),
    );
    const others = await standingOf(
      context,
      found.flatMap((row) => (settled.has(row.id) ? [] : [row.id])),
    );
    const names = await namesOf(context, found);
    const last = found.at(-1);
    return {
      rows: found.map((row): Row => {
        const gross = context.seesPrices ? (settled.get(row.id) ?? null) : null;
        const since = row.handed_over_at ?? row.opened_at;
        return {
          ...{ id: row.id, number: row.number, openedAt: row.opened_at, complaint: row.complaint },
          ...names(row),
          ...(others.get(row.id) ?? {
            gross,
            next: { whose: 'nobody', what: 'settled', with: {}, since, promise: 'none' },
          }),
        };
      }),
      next: last !== undefined && found.length === most ? { at: last.opened_at, id: last.id } : null,
    };
  },
};

/** Where orders that are not settled stand: the sheet's sum and the next move, from all that is recorded. */
async function standingOf(context: Context, ids: readonly string[]): Promise<Map<string, Pick<Row, 'gross' | 'next'>>> {
  const settings = settingsOf(context);
  return new Map(
    (await loadOrders(context, ids)).map((loaded) => {
      const reckoned = reckonOrder(loaded, settings);
      const gross = context.seesPrices ? reckoned.totals.gross : null;
      return [loaded.order.id, { gross, next: nextOf(loaded, reckoned, context) }];
    }),
  );
}

const orNone = (ids: readonly string[]) => (ids.length === 0 ? [''] : ids);

/** Of cars that are gone: the orders that were invoiced and whose papers and payments come to nought, with what was invoiced. */
async function settledOf({ tx }: Context, ids: readonly string[]): Promise<Map<string, number>> {
  const rows = await tx
    .selectFrom('paper')
    .innerJoin('order_balance', 'order_balance.work_order_id', 'paper.work_order_id')
    .select(['paper.work_order_id', 'paper.kind', 'paper.gross'])
    .where('paper.work_order_id', 'in', orNone(ids))
    .where('order_balance.owed', '=', 0)
    .where('order_balance.invoiced', '=', 1)
    .execute();
  const invoiced = new Map<string, number>();
  // The kind is looked at here: asked for, it would be searched by, through all papers of that kind.
  for (const { work_order_id: id, kind, gross } of rows)
    if (kind === 'invoice' || kind === 'credit-note')
      invoiced.set(id, (invoiced.get(id) ?? 0) + (kind === 'invoice' ? gross : -gross));
  return invoiced;
}

type Named = Pick<Row, 'plate' | 'car' | 'customer' | 'titles'>;

/** Cars, customers and titles of jobs, each table asked once. */
async function namesOf(
  { tx }: Context,
  orders: readonly { readonly id: string; readonly car_id: string; readonly customer_id: string }[],
): Promise<(order: (typeof orders)[number]) => Named> {
  const ids = (of: 'id' | 'car_id' | 'customer_id') => orNone([...new Set(orders.map((order) => order[of]))]);
  const cars = await tx.selectFrom('car').select(['id', 'plate', 'words']).where('id', 'in', ids('car_id')).execute();
  const people = await tx.selectFrom('customer').select(['id', 'name']).where('id', 'in', ids('customer_id')).execute();
  const jobs = await tx
    .selectFrom('job')
    .select(['work_order_id', 'title'])
    .where('work_order_id', 'in', ids('id'))
    .where('taken_out', '=', 0)
    .where('moved_to', 'is', null)
    .orderBy('place')
    .execute();
  const car = new Map(cars.map((row) => [row.id, row]));
  const customer = new Map(people.map((row) => [row.id, row.name]));
  const titles = Map.groupBy(jobs, (job) => job.work_order_id);
  return (order) => ({
    plate: car.get(order.car_id)?.plate ?? '',
    car: car.get(order.car_id)?.words ?? '',
    customer: customer.get(order.customer_id) ?? '',
    titles: (titles.get(order.id) ?? []).map((job) => job.title),
  });
}
