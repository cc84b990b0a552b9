import type { CreditNotePaper, InvoicePaper, QuotePaper } from '../document.ts';
import { type Block, block, type Item, rule, setText, words } from './block.ts';
import { paragraph, type Setting } from './setting.ts';
import type { Span } from './text.ts';

const SIZE_CLOSE = 9.45;
const SIGN_WIDTH = 127.5;
const GAP = 18;

/** Sentences of the shop and of local law, above the close. */
export function noticeBlocks(setting: Setting): readonly Block[] {
  const { document, shaper, width } = setting;
  return document.notices
    .filter((notice) => notice !== '')
    .flatMap((notice) => paragraph(shaper, words(notice), { x: 0, width, size: 9, leading: 1.36, after: 4 }));
}

/** The last block of a paper: how to pay, what is warranted, where to sign. Stands at the foot of its page. */
export function closeBlock(setting: Setting<QuotePaper | InvoicePaper | CreditNotePaper>): readonly Block[] {
  const { document, words: w, shaper, width } = setting;
  const signed = document.kind === 'invoice' ? w.received : document.kind === 'quote' ? w.sayYes : '';
  const first = firstColumn(setting);
  const second = secondColumn(setting);
  if (first.length === 0 && second.length === 0 && signed === '') return [];
  const free = width - (signed === '' ? GAP : SIGN_WIDTH + 2 * GAP);
  const firstWidth = first.length === 0 ? 0 : second.length === 0 ? free + GAP : free * 0.4;
  const secondX = firstWidth === 0 ? 0 : firstWidth + GAP;
  const column = (
    paragraphs: readonly (readonly Span[])[],
    x: number,
    wide: number,
  ): { items: Item[]; bottom: number } => {
    const items: Item[] = [];
    let bottom = 7;
    for (const spans of paragraphs) {
      const set = setText(shaper, spans, { x, y: bottom, width: wide, size: SIZE_CLOSE, leading: 1.4 });
      items.push(...set.items);
      bottom += set.height + 2;
    }
    return { items, bottom };
  };
  const secondWidth = width - secondX - (signed === '' ? 0 : SIGN_WIDTH + GAP);
  const parts = [column(first, 0, firstWidth), column(second, secondX, secondWidth)];
  if (signed !== '') {
    const x = width - SIGN_WIDTH;
    const sign = column([words(signed)], x, SIGN_WIDTH);
    const y = Math.max(sign.bottom + 24, 44);
    parts.push({ items: [...sign.items, rule(x, y, SIGN_WIDTH, 0.56)], bottom: y + 2 });
  }
  const height = Math.max(...parts.map((part) => part.bottom));
  const items = [rule(0, 0.3, width, 0.56), ...parts.flatMap((part) => part.items)];
  return [
    block(
      height + 10,
      items.map((item) => ({ ...item, y: item.y + 10 })),
      { atFoot: true },
    ),
  ];
}

function firstColumn(setting: Setting<QuotePaper | InvoicePaper | CreditNotePaper>): readonly (readonly Span[])[] {
  const { document, words: w, shortDate, date } = setting;
  if (document.kind === 'credit-note') return document.settlement === '' ? [] : [words(document.settlement)];
  if (document.kind === 'quote') {
    const holds = document.validUntil ? [words(capital(w.validUntil(date(document.validUntil))), 'bold')] : [];
    return document.offered.length > 0 ? [...holds, words(w.offeredNote)] : holds;
  }
  if (document.toPay <= 0) return [words(w.paid, 'bold')];
  const [bold, rest] = w.payBy(
    document.payBy ? shortDate(document.payBy) : '',
    String(document.number),
    document.payTerms,
  );
  return [
    [
      { text: `${bold} `, style: 'bold' },
      { text: rest, style: 'body' },
    ],
  ];
}

function secondColumn({ document, words: w, date, whole }: Setting): readonly (readonly Span[])[] {
  if (document.kind !== 'quote' && document.kind !== 'invoice') return [];
  const titled = (title: string, text: string): readonly Span[] => [
    { text: `${title}. `, style: 'bold' },
    { text, style: 'body' },
  ];
  const due =
    document.kind === 'invoice'
      ? document.nextDue.map((one) =>
          w.due(
            one.what,
            one.date ? date(one.date) : '',
            one.mileage === null ? '' : `${whole(one.mileage)}\u00a0${document.mileage.unit}`,
          ),
        )
      : [];
  return [
    ...(document.warranty === '' ? [] : [titled(w.warranty, document.warranty)]),
    ...(due.length > 0 ? [titled(w.nextDue, `${due.join('; ')}.`)] : []),
    ...(document.oldParts === '' ? [] : [titled(w.oldParts, document.oldParts)]),
  ];
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
