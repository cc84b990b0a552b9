import type { PaperDate, PaperDocument } from '../document.ts';
import { amountText, quantityText, rateText, wholeText } from '../figures.ts';
import { type PaperWords, paperWords } from '../words.ts';
import { type Block, block, setText } from './block.ts';
import type { Shaper } from './shape.ts';
import type { Span } from './text.ts';

/** Points a millimetre: 72 points an inch, 25.4 mm an inch. */
const MM = 72 / 25.4;
/** White on all four sides, in points. */
export const MARGIN = 15 * MM;

/** Width and height in points: ISO 216 A4 (210 x 297 mm), and Letter (8.5 x 11 in). */
export const PAGE = { A4: [210 * MM, 297 * MM], Letter: [612, 792] } as const;

/** All that the parts of a paper need to set themselves: its words, its figures, its fonts, its width. */
export interface Setting<D extends PaperDocument = PaperDocument> {
  readonly document: D;
  readonly words: PaperWords;
  readonly shaper: Shaper;
  /** Width between the margins, in points. */
  readonly width: number;
  readonly amount: (minor: number) => string;
  readonly quantity: (thousandths: number) => string;
  readonly rate: (ppm: number) => string;
  readonly whole: (value: number) => string;
  readonly date: (date: PaperDate) => string;
  /** Without the year where it is the year of the paper. */
  readonly shortDate: (date: PaperDate) => string;
}

export function settingOf<D extends PaperDocument>(document: D, shaper: Shaper): Setting<D> {
  const words = paperWords(document.language, document.dateForm);
  const { currency } = document;
  return {
    document,
    words,
    shaper,
    width: PAGE[document.size][0] - 2 * MARGIN,
    amount: (minor) => amountText(minor, currency),
    quantity: (thousandths) => quantityText(thousandths, currency),
    rate: (ppm) => rateText(ppm, currency),
    whole: (value) => wholeText(value, currency),
    date: (date) => words.date(date, false),
    shortDate: (date) => words.date(date, date.slice(0, 4) === document.date.slice(0, 4)),
  };
}

/** A paragraph that may break between pages: a block a line, never one line alone at its start. */
export function paragraph(
  shaper: Shaper,
  spans: readonly Span[],
  at: { x: number; width: number; size: number; leading?: number; after?: number },
): readonly Block[] {
  const { items, height } = setText(shaper, spans, { ...at, y: 0 });
  const step = height / items.length;
  return items.map((item, index) =>
    block(step + (index === items.length - 1 ? (at.after ?? 0) : 0), [{ ...item, y: item.y - index * step }], {
      keep: index === 0 && items.length > 1,
    }),
  );
}

/** White between parts. */
export function space(height: number): Block {
  return block(height, []);
}
