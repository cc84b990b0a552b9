import type { OutputOf } from '../../core/contract/index.ts';
import type { Context, Handlers } from '../context.ts';
import { nextOf } from '../order/facts.ts';
import { loadOrders } from '../order/load.ts';
import { reckonOrder } from '../order/reckon.ts';
import { settingsOf } from '../people.ts';
import { expectedOf, leftRunning, waitingOf } from '../waiting.ts';

/** What went longer ago than this is not for today any more. */
const GONE_DAYS = 400;
const DAY = 86_400_000;

/** Orders whose car is gone and that are not settled: worked and not invoiced, or with a sum open either way. */
async function unsettled(context: Context): Promise<{ id: string }[]> {
  return (
    context.tx
      .selectFrom('order_balance')
      .innerJoin('work_order', 'work_order.id', 'order_balance.work_order_id')
      .select('work_order.id')
      // Literals, so that the indexes that hold only these rows are seen to fit.
      .where((on) => on.or([on('invoiced', '=', on.lit(0)), on('owed', '<>', on.lit(0))]))
      .where('handed_over_at', '>', context.now - GONE_DAYS * DAY)
      .orderBy('handed_over_at')
      .execute()
  );
}

const RANK = { late: 0, soon: 1, fine: 2, none: 3 } as const;

type Row = OutputOf<'today.get'>['rows'][number];

/** What will be late stands with what is promised soon. */
const rank = ({ next, expected }: Row) =>
  expected?.late ? Math.min(RANK.soon, RANK[next.promise]) : RANK[next.promise];

export const todayHandlers: Handlers = {
  'today.get': async (_input, context) => {
    const settings = settingsOf(context);
    const ids = await context.tx
      .selectFrom('work_order')
      .select('id')
      .where('handed_over_at', 'is', null)
      .orderBy('opened_at')
      .execute();
    const gone = await unsettled(context);
    const rows: Row[] = [];
    for (const loaded of await loadOrders(
      context,
      [...ids, ...gone].map(({ id }) => id),
    )) {
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
        expected: expectedOf(context, loaded, reckoned),
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
    const running = await context.tx
      .selectFrom('clock_open')
      .innerJoin('person', 'person.id', 'clock_open.person_id')
      .leftJoin('job', 'job.id', 'clock_open.job_id')
      .leftJoin('work_order', 'work_order.id', 'job.work_order_id')
      .select([
        'clock_open.person_id',
        'person.name',
        'clock_open.job_id',
        'clock_open.kind',
        'clock_open.on_at',
        'work_order.id as order_id',
        'work_order.number',
      ])
      .execute();
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
