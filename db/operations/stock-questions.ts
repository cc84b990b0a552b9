import type { Context } from '../context.ts';
import { kept } from '../kept.ts';

/** What the stock page asks; from the orders in work to their lines, so that twenty years of others are never looked at. */

type Tx = Context['tx'];
interface Ids {
  readonly [name: string]: readonly string[];
  readonly ids: readonly string[];
}

/** By bin and number, as they lie. */
export const partsByBin = kept((tx: Tx, { most }: { most: number }) =>
  tx.selectFrom('part').selectAll().orderBy('bin').orderBy('number').limit(most),
);
export const partCount = kept((tx: Tx) => tx.selectFrom('part').select(({ fn }) => fn.countAll<number>().as('n')));

/** Not gone, not called off, and without an invoice. */
export const ordersInWork = kept((tx: Tx) =>
  tx
    .selectFrom('work_order')
    .innerJoin('order_balance', 'order_balance.work_order_id', 'work_order.id')
    .select('work_order.id')
    .where('work_order.handed_over_at', 'is', null)
    // Said twice, so that the index that holds only these is seen to fit.
    .where((on) => on.or([on('work_order.cancelled_at', 'is', null), on('work_order.arrived_at', 'is not', null)]))
    .where('work_order.cancelled_at', 'is', null)
    .where('order_balance.invoiced', '=', 0)
    .orderBy('work_order.opened_at'),
);
export const jobsOf = kept((tx: Tx, { ids }: Ids) =>
  tx.selectFrom('job').select(['id', 'offered']).where('work_order_id', 'in', ids).where('taken_out', '=', 0),
);
export const stockLinesOf = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('line')
    .select(['id', 'part_id', 'quantity', 'job_id'])
    .where('job_id', 'in', ids)
    .where('part_id', 'is not', null)
    .where('taken_out', '=', 0),
);
export const answersOf = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('decision_job')
    .innerJoin('decision', 'decision.id', 'decision_job.decision_id')
    .select(['decision_job.job_id', 'decision_job.answer'])
    .where('decision_job.job_id', 'in', ids)
    .orderBy('decision.number'),
);
/** What was drawn for lines of these jobs and put back. */
export const drawnOn = kept((tx: Tx, { ids }: Ids) =>
  tx
    .selectFrom('part_move')
    .select(['line_id', 'quantity'])
    .where('job_id', 'in', ids)
    .where('what', 'in', ['issued', 'put-back']),
);
/** What was ordered for lines and has not come. */
export const onTheWay = kept((tx: Tx) =>
  tx
    .selectFrom('awaited')
    .innerJoin('line', 'line.id', 'awaited.line_id')
    .innerJoin('job', 'job.id', 'line.job_id')
    .innerJoin('work_order', 'work_order.id', 'job.work_order_id')
    .select(['awaited.id', 'awaited.kind', 'awaited.supplier', 'awaited.reference', 'awaited.due_on'])
    .select(['line.words', 'line.quantity', 'line.unit', 'line.part_id', 'work_order.id as orderId'])
    .select('work_order.number')
    .where('awaited.arrived_at', 'is', null)
    .where('line.taken_out', '=', 0)
    .where('work_order.handed_over_at', 'is', null)
    .where('work_order.cancelled_at', 'is', null)
    .orderBy('awaited.due_on')
    .orderBy('awaited.id'),
);

/** Parts that lie there and have no move from `before` on; each looks at its own last moves only, by their index. */
export const stillParts = kept((tx: Tx, { before }: { before: number }) =>
  tx
    .selectFrom('part')
    .select(['id', 'number', 'words', 'unit', 'on_hand', 'value'])
    .select(({ selectFrom }) =>
      selectFrom('part_move')
        .select(({ fn }) => fn.max<number | null>('part_move.at').as('at'))
        .whereRef('part_move.part_id', '=', 'part.id')
        .as('moved'),
    )
    .where('on_hand', '>', 0)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('part_move')
            .select('part_move.id')
            .whereRef('part_move.part_id', '=', 'part.id')
            .where('part_move.at', '>=', before),
        ),
      ),
    )
    .orderBy('moved')
    .orderBy('number'),
);
