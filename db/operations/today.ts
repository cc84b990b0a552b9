import type { OutputOf } from '../../core/contract/index.ts';
import { afterInvoice } from '../../core/order/next.ts';
import type { Context, Handlers } from '../context.ts';
import { moveSeen, nextOf } from '../order/facts.ts';
import * as questions from '../order/in-view.ts';
import { loadOrders } from '../order/load.ts';
import { absentOf } from '../order/place.ts';
import { reckonOrder } from '../order/reckon.ts';
import { settingsOf } from '../people.ts';
import { awayToday } from '../presence.ts';
import { expectedOf, leftRunning, waitingOf } from '../waiting.ts';

/** What went longer ago than this is not for today any more. */
const GONE_DAYS = 400;
const DAY = 86_400_000;

const RANK = { late: 0, soon: 1, fine: 2, none: 3 } as const;

type Row = OutputOf<'today.get'>['rows'][number];

/** What will be late stands with what is promised soon. */
const rank = ({ next, expected }: Row) =>
  expected?.late ? Math.min(RANK.soon, RANK[next.promise]) : RANK[next.promise];

type Running = Awaited<ReturnType<typeof questions.runningClocks>>;

/** Orders that are read whole, since what is recorded says whose move it is. */
async function wholeIds({ tx, now }: Context): Promise<string[]> {
  const since = now - GONE_DAYS * DAY;
  const found = [
    ...(await questions.ordersHere(tx, {})),
    ...(await questions.calledOffSince(tx, { since })),
    ...(await questions.calledOffOwing(tx, {})),
    ...(await questions.goneUninvoiced(tx, { since })),
  ];
  return [...new Set(found.map(({ id }) => id))];
}

/** Gone, invoiced and not settled: what is kept of their balance says whose move it is. */
async function unsettledRows(context: Context, running: Running): Promise<Row[]> {
  const { tx, now, seesPrices } = context;
  const orders = await questions.goneUnsettled(tx, { since: now - GONE_DAYS * DAY });
  if (orders.length === 0) return [];
  const titles = Map.groupBy(await questions.unsettledTitles(tx, {}), (row) => row.work_order_id);
  const papers = await questions.unsettledPapers(tx, {});
  const invoices = papers.filter(({ kind }) => kind === 'invoice');
  const invoiced = new Map(invoices.map((row) => [row.work_order_id, row.issued_at]));
  return orders.map((row) => {
    const invoicedAt = invoiced.get(row.id) ?? 0;
    const next = afterInvoice({ invoicedAt, handedOverAt: row.handed_over_at, balance: row.owed });
    return {
      ...{ orderId: row.id, number: row.number, plate: row.plate, car: row.words, customer: row.name },
      ...{ complaint: row.complaint, promiseAt: row.promise_at, promiseWords: row.promise_words },
      titles: (titles.get(row.id) ?? []).map(({ title }) => title),
      next: moveSeen(next, seesPrices),
      expected: null,
      absent: null,
      clocks: running
        .filter((clock) => clock.order_id === row.id)
        .map(({ name, on_at }) => ({ person: name, on: on_at })),
    };
  });
}

export const todayHandlers: Handlers = {
  'today.get': async (_input, context) => {
    const settings = settingsOf(context);
    const running = await questions.runningClocks(context.tx, {});
    const rows = await unsettledRows(context, running);
    const away = await awayToday(context);
    for (const loaded of await loadOrders(context, await wholeIds(context))) {
      const reckoned = reckonOrder(loaded, settings);
      const next = nextOf(loaded, reckoned, context);
      if (next.whose === 'nobody') continue;
      rows.push({
        orderId: loaded.order.id,
        number: loaded.order.number,
        plate: loaded.car.plate,
        car: loaded.car.words,
        customer: loaded.customer.name,
        complaint: loaded.order.complaint,
        titles: loaded.jobs.map((job) => job.title),
        promiseAt: loaded.order.promise_at,
        promiseWords: loaded.order.promise_words,
        next,
        expected: expectedOf(context, loaded, reckoned, away),
        absent: absentOf(loaded, context),
        clocks: loaded.running.map((clock) => ({
          person: loaded.people.get(clock.person_id)?.name ?? '',
          on: clock.on_at,
        })),
      });
    }
    rows.sort(
      (a, b) =>
        rank(a) - rank(b) ||
        (a.promiseAt ?? Number.MAX_SAFE_INTEGER) - (b.promiseAt ?? Number.MAX_SAFE_INTEGER) ||
        a.number - b.number,
    );
    return {
      now: context.now,
      rows,
      open: running.map((row) => ({
        personId: row.person_id,
        person: row.name,
        orderId: row.order_id,
        orderNumber: row.number,
        jobId: row.job_id,
        kind: row.kind,
        on: row.on_at,
        left: leftRunning(context, row.on_at),
      })),
      waiting: await waitingOf(context),
    };
  },
};
