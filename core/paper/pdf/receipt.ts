import type { ReceiptPaper } from '../document.ts';
import { type Block, block, type Item, rule, SIZE, setText, words } from './block.ts';
import { paragraph, type Setting, space } from './setting.ts';
import type { Span } from './text.ts';

/** The middle of a receipt: what came in (or went back), for what, and what is still to pay. */
export function receiptBlocks(setting: Setting<ReceiptPaper>): readonly Block[] {
  const { document, words: w, shaper, width, amount, date } = setting;
  const { invoice, cash } = document;
  const about = invoice
    ? w.forInvoice(String(invoice.number), date(invoice.date), amount(invoice.total))
    : w.forOrder(String(document.orderNumber));
  const lines: (readonly Span[])[] = [
    words(`${capital(w.method[document.method])}, ${about}`),
    ...(cash ? [words(w.cash(amount(cash.handed), amount(cash.back)))] : []),
    ...(document.cashRounding === 0 ? [] : [words(`${w.cashRounding} ${amount(document.cashRounding)}`)]),
    ...(document.takenBy === '' ? [] : [words(w.takenBy(document.takenBy))]),
    ...(document.note === '' ? [] : [words(document.note)]),
  ];
  return [
    space(18),
    received(setting),
    ...lines.flatMap((spans) => paragraph(shaper, spans, { x: 0, width, size: SIZE.body, after: 1 })),
    ...(document.balance === null ? [] : [space(8), balance(setting, document.balance)]),
    space(10),
  ];
}

function received({ document, words: w, shaper, width, amount }: Setting<ReceiptPaper>): Block {
  const figure = `${document.currency.sign}\u00a0${amount(document.amount)}`;
  const set = { x: 0, y: 5, width, size: SIZE.toPay, leading: 1.2 };
  const label = setText(shaper, words(w.receiptFor[document.what], 'bold', true), { ...set, width: width * 0.5 });
  const sum = setText(shaper, words(figure, 'bold', true), { ...set, align: 'right' });
  const height = 5 + Math.max(label.height, sum.height) + 6;
  return block(height, [rule(0, 1, width, 2.25, true), ...label.items, ...sum.items], { keep: true });
}

function balance({ document, words: w, shaper, width, amount }: Setting<ReceiptPaper>, minor: number): Block {
  const figure = `${document.currency.sign}\u00a0${amount(Math.abs(minor))}`;
  const at = { x: 0, y: 4, width, size: SIZE.body };
  const label = minor < 0 ? w.inYourFavour : w.balance;
  const items: Item[] = [
    rule(0, 0.3, width, 0.56),
    ...setText(shaper, words(label, 'bold'), at).items,
    ...setText(shaper, words(figure, 'bold'), { ...at, align: 'right' }).items,
  ];
  return block(22, items);
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
