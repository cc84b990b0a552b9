import { type Unwritten, unwritten } from '../../core/order/written-estimate.ts';
import type { Context } from '../context.ts';
import { settingsOf } from '../people.ts';
import type { KeptSheet } from './issue.ts';
import type { Loaded } from './load.ts';
import type { Reckoned } from './reckon.ts';

/** What the last yes of an order lacks in writing, by the shop's own setting; null where nothing, or for whoever sees no prices. */
export async function unwrittenOf(context: Context, loaded: Loaded, { yes }: Reckoned): Promise<Unwritten | null> {
  const rule = settingsOf(context).writtenEstimate;
  const last = loaded.decisions.findLast(({ ceiling }) => ceiling !== null);
  if (rule === null || last === undefined || !context.seesPrices) return null;
  const quotes = await context.tx
    .selectFrom('paper')
    .select(['id', 'sheet'])
    .where('work_order_id', '=', loaded.order.id)
    .where('kind', '=', 'quote')
    .execute();
  return unwritten(
    rule.above,
    { ceiling: yes.ceiling, jobIds: [...yes.covered], way: last.way, quotePaperId: last.quote_paper_id },
    quotes.map(({ id, sheet }) => ({
      paperId: id,
      jobIds: (JSON.parse(sheet) as KeptSheet).sheet.jobs.map((job) => job.id),
    })),
  );
}
