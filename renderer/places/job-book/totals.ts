import type { OutputOf } from '../../../core/contract/index.ts';
import type { SheetLine } from '../../../core/money/line.ts';
import { money } from '../../../core/money/money.ts';
import { type MoneySettings, rulesOf } from '../../../core/money/shop-rules.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import type { BookLine, Content } from './draft.ts';

export type StockParts = OutputOf<'part.list'>['rows'];

/** What a line costs each: its own price, else the price of the part in stock that has its number; null for none. */
export function eachOf(line: BookLine, parts: StockParts): number | null {
  if (line.unitPrice !== null) return line.unitPrice;
  return line.partNumber === '' ? null : (parts.find((part) => part.number === line.partNumber)?.price ?? null);
}

/** The job on a sheet of its own at a rate an hour, minor units: by line, and the whole before and with tax. */
export function reckonJob(content: Content, rate: number, parts: StockParts, settings: MoneySettings) {
  const labour: SheetLine = {
    id: 'labour',
    kind: 'labour',
    quantity: content.bookHours,
    unitPrice: money(rate),
    given: false,
  };
  const lines = content.lines.map(
    (line, at): SheetLine => ({
      id: `line ${at}`,
      kind: line.kind,
      quantity: line.quantity,
      unitPrice: money(eachOf(line, parts) ?? 0),
      given: false,
    }),
  );
  const fixedPrice = content.fixedPrice === null ? undefined : money(content.fixedPrice);
  const job = { id: 'job', given: false, fixedPrice, lines: [labour, ...lines] };
  const totals = reckonSheet({ jobs: [job], discounts: [], exempt: false }, rulesOf(settings));
  const byLine = new Map(totals.lines.map((line) => [line.lineId, line.amount]));
  return {
    net: totals.net,
    gross: totals.gross,
    labour: byLine.get('labour') ?? 0,
    line: (at: number) => byLine.get(`line ${at}`) ?? 0,
  };
}
