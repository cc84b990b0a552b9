import { reorder } from '../../core/stock/reorder.ts';
import type { Context, Handlers } from '../context.ts';
import { foldPlate, foldText } from '../fold.ts';

/** Lines of orders on which work goes on that draw on a part of stock and that nobody said no to. */
async function wantedLines(context: Context) {
  const lines = await context.tx
    .selectFrom('line')
    .innerJoin('job', 'job.id', 'line.job_id')
    .innerJoin('work_order', 'work_order.id', 'job.work_order_id')
    .select(['line.id', 'line.part_id', 'line.quantity', 'line.job_id', 'job.offered'])
    .where('line.part_id', 'is not', null)
    .where('line.taken_out', '=', 0)
    .where('job.taken_out', '=', 0)
    .where('work_order.handed_over_at', 'is', null)
    .where('work_order.cancelled_at', 'is', null)
    .where((on) =>
      on.not(
        on.exists(
          on
            .selectFrom('paper')
            .select('paper.id')
            .whereRef('paper.work_order_id', '=', 'work_order.id')
            .where('paper.kind', '=', 'invoice'),
        ),
      ),
    )
    .execute();
  const jobIds = [...new Set(lines.map((line) => line.job_id))];
  const answers = new Map<string, string>();
  if (jobIds.length > 0) {
    const said = await context.tx
      .selectFrom('decision_job')
      .innerJoin('decision', 'decision.id', 'decision_job.decision_id')
      .select(['decision_job.job_id', 'decision_job.answer'])
      .where('decision_job.job_id', 'in', jobIds)
      .orderBy('decision.number')
      .execute();
    for (const { job_id, answer } of said) answers.set(job_id, answer);
  }
  return lines.filter((line) => {
    const answer = answers.get(line.job_id);
    return answer === 'yes' || (answer === undefined && line.offered === 0);
  });
}

/** By part: what is wanted and not yet drawn, thousandths. */
async function spokenFor(context: Context): Promise<Map<string, number>> {
  const lines = await wantedLines(context);
  const drawn = new Map<string, number>();
  if (lines.length > 0) {
    const moves = await context.tx
      .selectFrom('part_move')
      .select(['line_id', 'quantity'])
      .where(
        'line_id',
        'in',
        lines.map((line) => line.id),
      )
      .where('what', 'in', ['issued', 'put-back'])
      .execute();
    for (const { line_id, quantity } of moves)
      if (line_id !== null) drawn.set(line_id, (drawn.get(line_id) ?? 0) - quantity);
  }
  const byPart = new Map<string, number>();
  for (const { id, part_id, quantity } of lines) {
    if (part_id === null) continue;
    byPart.set(part_id, (byPart.get(part_id) ?? 0) + Math.max(0, quantity - (drawn.get(id) ?? 0)));
  }
  return byPart;
}

/** What was ordered for lines and has not come. */
const awaitedRows = (context: Context) =>
  context.tx
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
    .orderBy('awaited.id')
    .execute();

export const stockListHandlers: Handlers = {
  'stock.get': async ({ text, most }, context) => {
    const parts = await context.tx.selectFrom('part').selectAll().orderBy('bin').orderBy('number').execute();
    const wanted = foldText(text);
    const found = parts.filter(
      (row) => wanted === '' || foldText(row.words).includes(wanted) || row.find_number.includes(foldPlate(text)),
    );
    const spoken = await spokenFor(context);
    const awaited = await awaitedRows(context);
    const coming = new Map<string, number>();
    for (const { part_id, quantity } of awaited)
      if (part_id !== null) coming.set(part_id, (coming.get(part_id) ?? 0) + quantity);
    return {
      count: found.length,
      rows: found.slice(0, most).map((row) => {
        const level = {
          onHand: row.on_hand,
          reserved: spoken.get(row.id) ?? 0,
          onOrder: coming.get(row.id) ?? 0,
          keepAtLeast: row.keep_at_least,
          keepAtMost: row.keep_at_least,
          pack: 1,
        };
        const { free, order } = reorder(level);
        return {
          id: row.id,
          revision: row.revision,
          number: row.number,
          words: row.words,
          unit: row.unit,
          bin: row.bin,
          oneTime: row.one_time === 1,
          price: context.seesPrices ? row.price : null,
          value: context.seesCost ? row.value : null,
          onHand: row.on_hand,
          spokenFor: level.reserved,
          onTheWay: level.onOrder,
          free,
          keepAtLeast: row.keep_at_least,
          buy: order,
        };
      }),
      onTheWay: awaited.map((row) => ({
        id: row.id,
        orderId: row.orderId,
        orderNumber: row.number,
        words: row.words,
        quantity: row.quantity,
        unit: row.unit,
        kind: row.kind,
        supplier: row.supplier,
        reference: row.reference,
        dueOn: row.due_on,
        late: row.due_on !== null && row.due_on < context.today,
      })),
    };
  },
  'part.moves': async ({ partId, most }, context) => {
    const rows = await context.tx
      .selectFrom('part_move')
      .innerJoin('person', 'person.id', 'part_move.person_id')
      .leftJoin('job', 'job.id', 'part_move.job_id')
      .leftJoin('work_order', 'work_order.id', 'job.work_order_id')
      .select(['part_move.id', 'part_move.at', 'part_move.what', 'part_move.quantity', 'part_move.value'])
      .select(['part_move.note', 'person.name as person', 'work_order.id as orderId', 'work_order.number'])
      .where('part_move.part_id', '=', partId)
      .orderBy('part_move.at', 'desc')
      .orderBy('part_move.id', 'desc')
      .limit(most)
      .execute();
    return {
      rows: rows.map(({ orderId, number, value, ...row }) => ({
        ...row,
        value: context.seesCost ? value : null,
        order: orderId === null || number === null ? null : { id: orderId, number },
      })),
    };
  },
};
