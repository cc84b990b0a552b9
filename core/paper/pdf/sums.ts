import type { CreditNotePaper, InvoicePaper, PaperSums, PaperTaxRow, QuotePaper } from '../document.ts';
import { taxName } from '../figures.ts';
import { type Block, block, type Item, rule, SIZE, setText, stacked, words } from './block.ts';
import type { Style } from './fonts.ts';
import type { Setting } from './setting.ts';
import { textWidth } from './text.ts';

/** Width of the sums, in points. */
export const SUMS_WIDTH = 225;

type Priced = QuotePaper | InvoicePaper | CreditNotePaper;

/** The sums as one block that is never broken; every figure is taken from the document. */
export function sumsBlock(setting: Setting<Priced>): Block {
  const { document, words: w, amount } = setting;
  const { sums } = document;
  const rows: Block[] = [];
  const row = (label: string, minor: number): void => void rows.push(sumRow(setting, label, amount(minor), 'body'));
  for (const one of sums.rows) {
    const label = one.words ?? w.sum[one.kind];
    row(one.hours === null ? label : `${label}, ${w.hours(setting.quantity(one.hours))}`, one.amount);
  }
  for (const one of sums.discounts) row(one.words === '' ? w.discount : one.words, -one.amount);
  const total =
    document.kind === 'invoice'
      ? ruledRow(setting, w.total, amount(sums.total))
      : lastRow(setting, document.kind === 'quote' ? w.total : w.toCredit, amount(sums.total));
  rows.push(...withTaxes(setting, sums, total));
  if (document.kind === 'invoice') rows.push(...invoiceEnd(setting, document));
  return stacked(rows);
}

/** Tax that is added stands before the total; tax that the prices hold is named after it. */
function withTaxes(setting: Setting, sums: PaperSums, total: Block): readonly Block[] {
  const { words: w, amount, rate } = setting;
  const exempt = sums.exempt === '' ? [] : [sumRow(setting, sums.exempt, '', 'body')];
  const net = sumRow(setting, w.net, amount(sums.net), 'body');
  const taxRow = (tax: PaperTaxRow): Block => {
    const label = tax.oldUnits ? w.taxOnOldUnits : sums.prices === 'inclusive' ? w.taxHeld : w.taxAdded;
    return sumRow(
      setting,
      label(taxName(tax.name, rate(tax.ratePpm)), rate(tax.ratePpm), amount(tax.base)),
      amount(tax.amount),
      'body',
    );
  };
  const taxes = sums.taxes.filter((tax) => !tax.oldUnits).map(taxRow);
  const onTop = sums.taxes.filter((tax) => tax.oldUnits).map(taxRow);
  if (sums.prices === 'inclusive') return [...onTop, total, ...(taxes.length > 0 ? [net, ...taxes] : []), ...exempt];
  return [...(sums.discounts.length > 0 ? [net] : []), ...taxes, ...onTop, ...exempt, total];
}

function invoiceEnd(setting: Setting<Priced>, document: InvoicePaper): readonly Block[] {
  const { words: w, amount, shortDate } = setting;
  const rows = document.taken.map((one) => {
    const parts = [w.taken[one.what], one.method ? w.method[one.method] : '', shortDate(one.date)];
    return sumRow(setting, parts.filter((part) => part !== '').join(', '), amount(-one.amount), 'body');
  });
  if (document.cashRounding !== 0) rows.push(sumRow(setting, w.cashRounding, amount(document.cashRounding), 'body'));
  const favour = document.toPay < 0;
  rows.push(lastRow(setting, favour ? w.inYourFavour : w.toPay, amount(Math.abs(document.toPay))));
  return rows;
}

function sumRow({ shaper }: Setting, label: string, figure: string, style: Style): Block {
  const room = SUMS_WIDTH - textWidth(shaper, figure, style, SIZE.body) - 12;
  const text = setText(shaper, words(label, style), { x: 0, y: 0, width: room, size: SIZE.body });
  const sum = setText(shaper, words(figure, style), { x: 0, y: 0, width: SUMS_WIDTH, size: SIZE.body, align: 'right' });
  return block(Math.max(text.height, sum.height) + 1.2 * shaper.openness, [...text.items, ...sum.items]);
}

function ruledRow(setting: Setting, label: string, figure: string): Block {
  const row = sumRow(setting, label, figure, 'bold');
  const items: Item[] = row.items.map((item) => ({ ...item, y: item.y + 2.5 }));
  return block(row.height + 2.5, [rule(0, 0.3, SUMS_WIDTH, 0.56), ...items]);
}

/** The one figure that matters, in the accent. Where label and figure do not fit side by side they stand apart. */
function lastRow({ shaper, document }: Setting, label: string, figure: string): Block {
  const size = SIZE.toPay;
  const sign = document.currency.sign;
  const signX = textWidth(shaper, label, 'bold', size) + 6;
  const signWidth = textWidth(shaper, sign, 'body', SIZE.body);
  const beside = signX + signWidth + 12 + textWidth(shaper, figure, 'bold', size) <= SUMS_WIDTH;
  const set = { x: 0, width: SUMS_WIDTH, size, leading: 1.2 };
  const text = setText(shaper, words(label, 'bold', true), { ...set, y: 8 });
  const y = beside ? 8 : 8 + text.height;
  const sum = setText(shaper, words(figure, 'bold', true), { ...set, y, align: 'right' });
  // Set smaller, on the same foot line as the label.
  const foot = text.items.at(-1)?.y ?? 0;
  const unit = setText(shaper, words(sign), { x: signX, y: 0, foot, width: SUMS_WIDTH - signX, size: SIZE.body });
  return block(y + sum.height, [rule(0, 4, SUMS_WIDTH, 2.25, true), ...text.items, ...unit.items, ...sum.items]);
}
