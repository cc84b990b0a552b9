import type { PaperJob, PaperLine } from '../document.ts';
import { type Block, block, type Item, type JobMark, rule, SIZE, setText, words } from './block.ts';
import { paragraph, type Setting } from './setting.ts';
import { textWidth } from './text.ts';

/** Where the columns of the jobs stand: right edges in points from the left margin. */
export interface JobColumns {
  readonly quantity: number;
  readonly each: number;
  readonly amount: number;
  /** Width of the words before the first column of figures. */
  readonly words: number;
}

const INDENT = 22.5;
/** At least this wide a column, so that common papers look alike. */
const USUAL = { quantity: 66, each: 66, amount: 72 };
const ROW_GAP = 0.6;

/** Columns as wide as their widest figure, so that no two ever touch. */
export function jobColumns(setting: Setting, jobs: readonly PaperJob[]): JobColumns {
  const { shaper, width, words: w, document } = setting;
  const widest = (texts: readonly string[], style: 'body' | 'bold'): number =>
    Math.max(0, ...[...new Set(texts)].map((text) => textWidth(shaper, text, style, SIZE.body)));
  const lines = jobs.flatMap((job) => job.lines);
  const gap = 14;
  const amount = Math.max(
    USUAL.amount,
    gap + widest([document.currency.sign, ...jobs.map((job) => setting.amount(job.amount))], 'bold'),
    gap +
      widest(
        lines.map((line) => setting.amount(line.amount)),
        'body',
      ),
  );
  const each = Math.max(
    USUAL.each,
    gap + widest([w.columns.each, ...lines.map((line) => setting.amount(line.unitPrice))], 'body'),
  );
  const quantity = Math.max(
    USUAL.quantity,
    gap + widest([w.columns.quantity, ...lines.map((line) => quantityOf(setting, line))], 'body'),
  );
  return {
    amount: width,
    each: width - amount,
    quantity: width - amount - each,
    words: width - amount - each - quantity - INDENT,
  };
}

/** The words over the columns. */
export function columnHeads({ shaper, words: w, document }: Setting, columns: JobColumns): Block {
  const head = (text: string, right: number): readonly Item[] =>
    setText(shaper, words(text), { x: 0, y: 0, width: right, size: SIZE.small, align: 'right' }).items;
  return block(
    15,
    [
      ...head(w.columns.quantity, columns.quantity),
      ...head(w.columns.each, columns.each),
      ...head(document.currency.sign, columns.amount),
    ],
    { keep: true },
  );
}

/** What a page begins with that opens inside a job. */
export function continuedHead({ shaper, words: w, width }: Setting, mark: JobMark): Block {
  const letter = setText(shaper, words(mark.letter, 'head', true), { x: 0, y: 3, width: INDENT, size: SIZE.job });
  const title = setText(shaper, words(`${mark.title}, ${w.continued}`), {
    x: INDENT,
    y: 4,
    width: width - INDENT,
    size: SIZE.body,
  });
  return block(6 + title.height, [rule(0, 0, width, 0.56), ...letter.items, ...title.items]);
}

/** A job: its heading, kept with its first two lines, then its lines. */
export function jobBlocks(setting: Setting, job: PaperJob, columns: JobColumns): readonly Block[] {
  const mark = (heads: boolean): JobMark => ({ letter: job.letter, title: job.title, heads });
  const notes = [...(job.given ? [setting.words.given] : []), ...(job.note === '' ? [] : [job.note])];
  const blocks: Block[] = [jobHeading(setting, job)];
  for (const note of notes)
    blocks.push(
      ...paragraph(setting.shaper, words(note), { x: INDENT, width: columns.each - INDENT, size: SIZE.small }),
    );
  const firstLine = blocks.length;
  for (const line of job.lines) blocks.push(lineBlock(setting, job, line, columns));
  return blocks.map((one, index) => ({
    ...one,
    height: one.height + (index === blocks.length - 1 ? 4 : 0),
    keep: index < blocks.length - 1 && (one.keep || index <= firstLine),
    job: mark(index === 0),
  }));
}

function jobHeading({ shaper, width, amount }: Setting, job: PaperJob): Block {
  const figure = amount(job.amount);
  const figureWidth = textWidth(shaper, figure, 'bold', SIZE.body + 0.5);
  const letter = setText(shaper, words(job.letter, 'head', true), { x: 0, y: 3, width: INDENT, size: SIZE.job });
  const title = setText(shaper, words(job.title, 'head'), {
    x: INDENT,
    y: 3,
    width: width - INDENT - figureWidth - 16,
    size: SIZE.job,
  });
  const sum = setText(shaper, words(figure, 'bold'), { x: 0, y: 3.4, width, size: SIZE.body + 0.5, align: 'right' });
  return block(4 + title.height, [rule(0, 0, width, 0.56), ...letter.items, ...title.items, ...sum.items]);
}

function quantityOf({ quantity }: Setting, line: PaperLine): string {
  return line.unit === '' ? quantity(line.quantity) : `${quantity(line.quantity)}\u00a0${line.unit}`;
}

function lineBlock(setting: Setting, job: PaperJob, line: PaperLine, columns: JobColumns): Block {
  const { shaper, amount } = setting;
  const at = { y: ROW_GAP, size: SIZE.body };
  const right = (text: string, edge: number): readonly Item[] =>
    setText(shaper, words(text), { ...at, x: 0, width: edge, align: 'right' }).items;
  const text = setText(shaper, words(lineWords(setting, line)), { ...at, x: INDENT, width: columns.words });
  const items: Item[] = [...text.items, ...right(quantityOf(setting, line), columns.quantity)];
  if (!job.fixedPrice) {
    items.push(...right(amount(line.unitPrice), columns.each), ...right(amount(line.amount), columns.amount));
  }
  let height = text.height + 2 * ROW_GAP * shaper.openness;
  const small = lineRemarks(setting, line, job);
  if (small !== '') {
    const set = setText(shaper, words(small), {
      x: INDENT,
      y: height - ROW_GAP,
      width: columns.words,
      size: SIZE.small,
    });
    items.push(...set.items);
    height += set.height;
  }
  return block(height, items);
}

/** 'Ring-gear bolt, M10 fine, new, RG-1012': a condition that the words tell already is not told twice. */
function lineWords({ words: w }: Setting, line: PaperLine): string {
  const text = line.words === '' ? w.lineKind[line.kind] : line.words;
  const condition = line.condition === '' ? '' : w.condition[line.condition];
  const told = condition === '' || text.toLowerCase().includes(condition.toLowerCase());
  const outside = line.kind === 'outside' && !text.toLowerCase().includes(w.outsideWork.toLowerCase());
  return [text, told ? '' : condition, line.partNumber, outside ? w.outsideWork : '']
    .filter((part) => part !== '')
    .join(', ');
}

function lineRemarks({ words: w, amount }: Setting, line: PaperLine, job: PaperJob): string {
  return [
    line.given && !job.given ? w.given : '',
    line.estimated ? w.estimated : '',
    line.discount > 0 ? w.lineDiscount(amount(line.discount)) : '',
    line.note,
  ]
    .filter((part) => part !== '')
    .join('. ');
}
