import type { Context } from '../context.ts';
import { kept } from '../kept.ts';

/** Which orders the desk has before it: each question by an index that holds only such orders (schemas 5 and 11). */

type Tx = Context['tx'];

/** Cars that are here or still to come, and those called off that were brought all the same; by the day of opening. */
export const ordersHere = kept((tx: Tx) =>
  tx
    .selectFrom('work_order')
    .select('id')
    .where('handed_over_at', 'is', null)
    .where((on) => on.or([on('cancelled_at', 'is', null), on('arrived_at', 'is not', null)]))
    .orderBy('opened_at'),
);

/** Called off before the car came, not longer ago than this. */
export const calledOffSince = kept((tx: Tx, { since }: { since: number }) =>
  tx
    .selectFrom('work_order')
    .select('id')
    .where('handed_over_at', 'is', null)
    .where('arrived_at', 'is', null)
    .where('cancelled_at', 'is not', null)
    .where('cancelled_at', '>', since),
);

/** Called off before the car came, with a sum open, however long ago: somebody's deposit is here. */
export const calledOffOwing = kept((tx: Tx) =>
  tx
    .selectFrom('order_balance')
    .innerJoin('work_order', 'work_order.id', 'order_balance.work_order_id')
    .select('work_order.id')
    // A literal, so that the index that holds only these rows is seen to fit; so below.
    .where((on) => on('order_balance.owed', '<>', on.lit(0)))
    .where('order_balance.gone_at', 'is', null)
    .where('work_order.arrived_at', 'is', null)
    .where('work_order.cancelled_at', 'is not', null),
);

/** Gone not longer ago than this, and no invoice was made. */
export const goneUninvoiced = kept((tx: Tx, { since }: { since: number }) =>
  tx
    .selectFrom('order_balance')
    .select('work_order_id as id')
    .where((on) => on('invoiced', '=', on.lit(0)))
    .where('gone_at', 'is not', null)
    .where('gone_at', '>', since)
    .orderBy('gone_at'),
);

/** Gone not longer ago than this, invoiced, and not settled: all that a list shows of them. */
export const goneUnsettled = kept((tx: Tx, { since }: { since: number }) =>
  tx
    .selectFrom('order_balance')
    .innerJoin('work_order', 'work_order.id', 'order_balance.work_order_id')
    .innerJoin('car', 'car.id', 'work_order.car_id')
    .innerJoin('customer', 'customer.id', 'work_order.customer_id')
    .select(['work_order.id', 'work_order.number', 'car.plate', 'car.words', 'customer.name'])
    .select(['work_order.complaint', 'work_order.promise_at', 'work_order.promise_words'])
    .select(['work_order.handed_over_at', 'order_balance.owed'])
    .where((on) => on('order_balance.owed', '<>', on.lit(0)))
    .where((on) => on('order_balance.invoiced', '=', on.lit(1)))
    .where('order_balance.gone_at', '>', since),
);

/** Titles of jobs of all orders that are invoiced and not settled, in their order. */
export const unsettledTitles = kept((tx: Tx) =>
  tx
    .selectFrom('order_balance')
    .innerJoin('job', 'job.work_order_id', 'order_balance.work_order_id')
    .select(['job.work_order_id', 'job.title'])
    .where((on) => on('order_balance.owed', '<>', on.lit(0)))
    .where((on) => on('order_balance.invoiced', '=', on.lit(1)))
    .where('job.taken_out', '=', 0)
    .where('job.moved_to', 'is', null)
    .orderBy('job.place'),
);

/** Papers of all orders that are invoiced and not settled, as they were issued. */
export const unsettledPapers = kept((tx: Tx) =>
  tx
    .selectFrom('order_balance')
    .innerJoin('paper', 'paper.work_order_id', 'order_balance.work_order_id')
    // The kind is looked at by whoever asks: asked for here, it would lead through all papers of the kind.
    .select(['paper.work_order_id', 'paper.kind', 'paper.issued_at'])
    .where((on) => on('order_balance.owed', '<>', on.lit(0)))
    .where((on) => on('order_balance.invoiced', '=', on.lit(1)))
    .orderBy('paper.issued_at'),
);

/** Clocks that run, with whose and on what. */
export const runningClocks = kept((tx: Tx) =>
  tx
    .selectFrom('clock_open')
    .innerJoin('person', 'person.id', 'clock_open.person_id')
    .leftJoin('job', 'job.id', 'clock_open.job_id')
    .leftJoin('work_order', 'work_order.id', 'job.work_order_id')
    .select(['clock_open.person_id', 'person.name', 'clock_open.job_id', 'clock_open.kind', 'clock_open.on_at'])
    .select(['work_order.id as order_id', 'work_order.number']),
);
