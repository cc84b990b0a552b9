import type { OutputOf } from '../../core/contract/index.ts';
import type { Handlers } from '../context.ts';
import { nextOf } from '../order/facts.ts';
import { loadOrder } from '../order/load.ts';
import { reckonOrder } from '../order/reckon.ts';
import { settingsOf } from '../people.ts';
import { expectedOf, leftRunning, waitingOf } from '../waiting.ts';

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
    // Gone, and perhaps not settled: not paid, not invoiced, or with a deposit that is still here.
    const gone = await context.tx
      .selectFrom('work_order')
      .select('id')
      .where('handed_over_at', '>', context.now - 400 * 86_400_000)
      .orderBy('handed_over_at')
      .execute();
    const rows: Row[] = [];
    for (const { id } of [...ids, ...gone]) {
      const loaded = await loadOrder(context, id);
      const reckoned = reckonOrder(loaded, settings);
      const next = nextOf(loaded, reckoned, context);
      if (next.whose === 'nobody') continue;
      rows.push({
        orderId: id,
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
