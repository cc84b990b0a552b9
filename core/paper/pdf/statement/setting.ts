import { amountText } from '../../figures.ts';
import type { StatementAbout, StatementDocument } from '../../statement.ts';
import { type StatementWords, statementWords } from '../../statement-words.ts';
import { type PaperWords, paperWords } from '../../words.ts';
import { type Block, block, type Item, type JobMark, rule, SIZE, setText, words } from '../block.ts';
import type { Style } from '../fonts.ts';
import { MARGIN, PAGE } from '../setting.ts';
import type { Shaper } from '../shape.ts';
import { textWidth } from '../text.ts';

/** What the parts of a statement need to set themselves. */
export interface StatementSetting {
  readonly document: StatementDocument;
  readonly words: PaperWords;
  readonly said: StatementWords;
  readonly shaper: Shaper;
  /** Width between the margins, in points. */
  readonly width: number;
  readonly amount: (minor: number) => string;
  readonly date: (date: string) => string;
}

export function statementSetting(document: StatementDocument, shaper: Shaper): StatementSetting {
  const paper = paperWords(document.language, document.dateForm);
  return {
    ...{ document, words: paper, said: statementWords(document.language), shaper },
    width: PAGE[document.size][0] - 2 * MARGIN,
    amount: (minor) => amountText(minor, document.currency),
    date: (date) => paper.date(date, false),
  };
}

/** 'KTB 4471, order 1187'. */
export const aboutText = ({ said }: StatementSetting, { plate, orderNumber }: StatementAbout): string =>
  [plate, said.order(String(orderNumber))].filter((part) => part !== '').join(', ');

/** A column: where it begins and how wide it is, in points. Figures stand at its right edge. */
export interface Column {
  readonly x: number;
  readonly width: number;
  readonly figure: boolean;
}

/** The width of a column of figures in points: the widest, and never less than its heading wants. */
export const figureWidth = ({ shaper }: StatementSetting, figures: readonly string[]): number =>
  Math.max(52, ...figures.map((figure) => textWidth(shaper, figure, 'bold', SIZE.body)));

/** Columns from the left: words by their share of what the figures, each of a fixed width in points, leave. */
export function columnsOf(
  width: number,
  shares: readonly number[],
  figures: number,
  figureWidth: number,
): readonly Column[] {
  const gap = 10;
  const all = shares.reduce((sum, share) => sum + share, 0);
  const free = width - figures * (figureWidth + gap) - (shares.length - 1) * gap;
  const columns: Column[] = [];
  let x = 0;
  for (const share of shares) {
    const wide = (free * share) / all;
    columns.push({ x, width: wide, figure: false });
    x += wide + gap;
  }
  for (let n = 0; n < figures; n += 1) {
    columns.push({ x, width: figureWidth, figure: true });
    x += figureWidth + gap;
  }
  return columns;
}

/** A row of a table, its cells from the left; as tall as the tallest of them. */
export function tableRow(
  { shaper, width }: StatementSetting,
  columns: readonly Column[],
  cells: readonly string[],
  more: { style?: Style; size?: number; ruled?: number; keep?: boolean; mark?: JobMark | null } = {},
): Block {
  const { style = 'body', size = SIZE.body, ruled = 0.4, keep = false, mark = null } = more;
  const sets = columns.map(({ x, width: wide, figure }, at) =>
    setText(shaper, words(cells[at] ?? '', style), {
      ...{ x, y: 3, width: wide, size, align: figure ? 'right' : 'left' },
    }),
  );
  const height = Math.max(...sets.map((set) => set.height)) + 6;
  const items: Item[] = ruled === 0 ? [] : [rule(0, 0, width, ruled)];
  return block(height, [...items, ...sets.flatMap((set) => set.items)], { keep, job: mark });
}
