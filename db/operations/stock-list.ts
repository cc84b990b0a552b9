import { reorder } from '../../core/stock/reorder.ts';
import type { Context, Handlers } from '../context.ts';
import { foldPlate, foldText } from '../fold.ts';
import { eachOf } from '../order/load-rows.ts';
import * as questions from './stock-questions.ts';

/** Lines of orders on which work goes on that draw on a part of stock and that nobody said no to. */
async function wantedLines(context: Context) {
  const orders = await questions.ordersInWork(context.tx, {});
  const jobs = await eachOf(
    orders.map(({ id }) => id),
    (ids) => questions.jobsOf(context.tx, { ids }),
  );
  const offered = new Map(jobs.map((job) => [job.id, job.offered]));
  const lines = (
    await eachOf(
      jobs.map(({ id }) => id),
      (ids) => questions.stockLinesOf(context.tx, { ids }),
    )
  ).map((line) => ({ ...line, offered: offered.get(line.job_id) ?? 0 }));
  const jobIds = [...new Set(lines.map((line) => line.job_id))];
  const answers = new Map<string, string>();
  // In the order of the yes and the no, each order's being together in one stretch.
  for (const { job_id, answer } of await eachOf(jobIds, (ids) => questions.answersOf(context.tx, { ids })))
    answers.set(job_id, answer);
  return lines.filter((line) => {
    const answer = answers.get(line.job_id);
    return answer === 'yes' || (answer === undefined && line.offered === 0);
  });
}

/** By part: what is wanted and not yet drawn, thousandths. */
async function spokenFor(context: Context): Promise<Map<string, number>> {
  const lines = await wantedLines(context);
  const drawn = new Map<string, number>();
  const jobIds = [...new Set(lines.map((line) => line.job_id))];
  for (const { line_id, quantity } of await eachOf(jobIds, (ids) => questions.drawnOn(context.tx, { ids })))
    if (line_id !== null) drawn.set(line_id, (drawn.get(line_id) ?? 0) - quantity);
  const byPart = new Map<string, number>();
  for (const { id, part_id, quantity } of lines) {
    if (part_id === null) continue;
    byPart.set(part_id, (byPart.get(part_id) ?? 0) + Math.max(0, quantity - (drawn.get(id) ?? 0)));
  }
  return byPart;
}

/** So many parts as are shown, by their places, and how many there are; a text is looked for in their numbers and words. */
async function partsOf(context: Context, text: string, most: number) {
  if (text === '') {
    const [count] = await questions.partCount(context.tx, {});
    return { count: Number(count?.n ?? 0), parts: await questions.partsByBin(context.tx, { most }) };
  }
  const words = foldText(text);
  const number = foldPlate(text);
  const all = await questions.partsByBin(context.tx, { most: Number.MAX_SAFE_INTEGER });
  const found = all.filter((row) => foldText(row.words).includes(words) || row.find_number.includes(number));
  return { count: found.length, parts: found.slice(0, most) };
}

export const stockListHandlers: Handlers = {
  'stock.get': async ({ text, most }, context) => {
    const { count, parts } = await partsOf(context, text, most);
    const spoken = await spokenFor(context);
    const awaited = await questions.onTheWay(context.tx, {});
    const coming = new Map<string, number>();
    for (const { part_id, quantity } of awaited)
      if (part_id !== null) coming.set(part_id, (coming.get(part_id) ?? 0) + quantity);
    return {
      count,
      rows: parts.map((row) => {
        const level = {
          onHand: row.on_hand,
          reserved: spoken.get(row.id) ?? 0,
          onOrder: coming.get(row.id) ?? 0,
          keepAtLeast: row.keep_at_least,
          keepAtMost: Math.max(row.keep_at_least, row.keep_at_most ?? 0),
          pack: row.pack ?? 1,
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
          keepAtMost: row.keep_at_most,
          pack: row.pack,
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
