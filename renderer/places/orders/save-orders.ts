import type { OutputOf } from '../../../core/contract/index.ts';
import { type Cell, writeCsv } from '../../../core/take-out/csv.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { saveText } from '../../parts/save-text.ts';
import { ask } from '../../state/call.ts';
import type { CallAnswer, CallError } from '../../state/transport.ts';
import { figureWords } from '../../words/error-sentence.ts';
import { amountText, type Writing } from '../../words/figures.ts';
import { t, tMaybe } from '../../words/t.ts';
import type { OrderRowOf } from './OrderRow.tsx';
import type { OrderFilter, Week } from './OrderWeek.tsx';

/** The orders that the sentence shows as a CSV file, a page after another. What went wrong, or null. */
export async function saveOrders(
  filter: OrderFilter,
  weeks: readonly Week[],
  writing: Writing,
  onProgress: (done: number) => void,
  stopped: () => boolean,
): Promise<CallError | null> {
  const [newest, oldest] = [weeks[0], weeks.at(-1)];
  if (newest === undefined || oldest === undefined) return null;
  const rows: Cell[][] = [];
  let before: { at: number; id: string } | null = null;
  do {
    const page: CallAnswer<OutputOf<'order.page'>> = await ask('order.page', {
      filter,
      from: oldest.from,
      to: newest.to,
      before,
      most: 500,
    });
    if (!page.ok) return page.error;
    if (stopped()) return null;
    rows.push(...page.output.rows.map((row) => cellsOf(row, writing)));
    onProgress(rows.length);
    before = page.output.next;
  } while (before !== null);
  const names = (['order', 'day', 'plate', 'customer', 'car', 'what', 'sum', 'stands'] as const).map((name) =>
    t(`orders.csv-${name}`),
  );
  saveText(t('orders.csvName'), writeCsv([names, ...rows], writing.decimal === ',' ? ';' : ','));
  return null;
}

function cellsOf(row: OrderRowOf, writing: Writing): Cell[] {
  return [
    { figure: String(row.number) },
    { figure: civilDateOf(row.openedAt, writing.zone) },
    ...[row.plate, row.customer, row.car, row.titles.join(', ')],
    { figure: amountText(row.gross, { ...writing, group: '' }) },
    tMaybe(`next.${row.next.what}`, figureWords(row.next.with, writing)) ?? row.next.what,
  ];
}
