import { quantityText } from '../../figures.ts';
import type { PaperCurrency } from '../../parts.ts';
import type { WorkSheetDocument, WorkSheetStep } from '../../work-sheet.ts';
import type { WorkSheetWords } from '../../work-sheet-words.ts';
import { type Block, block, type Item, type JobMark, rule, SIZE, setText, words } from '../block.ts';
import type { Shaper } from '../shape.ts';
import type { Span } from '../text.ts';
import { BOX, blank, box, oneLine } from './marks.ts';
import { torqueBlocks } from './rounds.ts';

/** What the parts of a bench copy need to set themselves. */
export interface SheetSetting {
  readonly document: WorkSheetDocument;
  readonly sheet: WorkSheetWords;
  readonly shaper: Shaper;
  /** Width between the margins, in points. */
  readonly width: number;
}

const TEXT = 44;
const SIGN = 54;
const BETWEEN = 10;
const WRITTEN = 18;
/** White above and below the words of a step, before it is drawn closer to save a page. */
const PADDING = 4;

/** Marks blocks of the steps: a page that begins inside them names the columns again. */
const IN_STEPS: JobMark = { letter: '', title: '', heads: false };

/** The heading over the steps; `first`: with a heavy rule above it. */
export function stepsHead({ document, sheet, shaper, width }: SheetSetting, first: boolean): Block {
  const small = { y: 3, width: SIGN, size: SIZE.small };
  const second = setText(shaper, words(sheet.second), { ...small, x: width - SIGN });
  const by = setText(shaper, words(sheet.doneBy), { ...small, x: width - 2 * SIGN - BETWEEN });
  const source = first && document.source !== '' ? `. ${sheet.from(document.source)}` : '';
  const step = setText(shaper, words(`${sheet.step}${source}`), {
    ...{ ...small, x: TEXT, width: width - 2 * (SIGN + BETWEEN) - TEXT },
  });
  const above = first ? [rule(0, 0.9, width, 1.8)] : [];
  return block(step.height + 5, [...above, ...step.items, ...by.items, ...second.items], { keep: true });
}

/** A step: its box and words, who did it and who else, what is written down, and a box a bolt and round. */
export function stepBlocks(setting: SheetSetting, step: WorkSheetStep): readonly Block[] {
  const { shaper, width, sheet, document } = setting;
  const signs = width - 2 * SIGN - BETWEEN;
  const room = signs - BETWEEN - TEXT;
  const pad = PADDING * shaper.openness;
  const text = setText(shaper, stepSpans(step, sheet, document.currency), {
    x: TEXT,
    y: pad + 1.5,
    width: room,
    size: SIZE.body,
  });
  const tall = Math.max(text.height, BOX) + 2 * pad;
  const number = oneLine(shaper, words(String(step.n), 'head'), SIZE.job, 22, pad + 12);
  const head = block(
    tall,
    [
      rule(0, 0.28, width, 0.56),
      ...box(0, pad, step.done !== ''),
      number,
      ...text.items,
      ...signed(setting, step, signs, tall - pad),
    ],
    { keep: true },
  );
  const after = [...writtenDown(setting, step, room)];
  if (step.torque !== null)
    after.push(...torqueBlocks(step.torque, { shaper, sheet, x: TEXT, width: width - TEXT, made: step.made }));
  const all = [head, ...after].map((one) => ({ ...one, job: IN_STEPS }));
  // The words stay with what is written down and with the first boxes.
  return all.map((one, at) => ({ ...one, keep: at < all.length - 1 && (at < 2 || one.keep) }));
}

/** Who has done it or will, and the second person's word with a line of its own. */
function signed({ shaper, sheet, width }: SheetSetting, step: WorkSheetStep, x: number, foot: number): readonly Item[] {
  const by =
    step.done === ''
      ? [blank(x, foot, SIGN)]
      : setText(shaper, words(step.done), { x, y: foot - 13, width: SIGN, size: SIZE.small }).items;
  if (step.second === '') {
    const none = oneLine(shaper, words('—'), SIZE.body, 0, foot - 4);
    return [...by, { ...none, x: width - (SIGN + none.width) / 2 }];
  }
  const does = oneLine(shaper, words(sheet.secondDoes[step.second]), SIZE.small, width - SIGN, 9.5);
  return [...by, does, blank(width - SIGN, foot, SIGN)];
}

function stepSpans(step: WorkSheetStep, sheet: WorkSheetWords, currency: PaperCurrency): readonly Span[] {
  const litres = (quantity: number) => quantityText(quantity, currency);
  const figure = (value: number) => String(value).replace('.', currency.decimal);
  const bold = (text: string): Span => ({ text: ` ${text}`, style: 'bold' });
  const plain = (text: string): Span => ({ text: ` ${text}`, style: 'body' });
  const { torque, measure, fluidIn, fluidOut, sample } = step;
  const rounds = torque === null ? 0 : torque.stages.length + (torque.checkRound ? 1 : 0);
  return [
    { text: /[.!?]$/.test(step.do) ? step.do : `${step.do}.`, style: 'body' } as const,
    ...(step.hold === '' ? [] : [bold(`${sheet.hold}: ${step.hold}.`)]),
    ...(step.care === '' ? [] : [bold(`${capital(step.care)}.`)]),
    ...(step.tool === '' ? [] : [plain(sheet.tool(step.tool))]),
    ...step.oneTime.map(({ part, count }) => plain(sheet.fresh(count, part))),
    ...(fluidOut === null ? [] : [plain(sheet.out(fluidOut.what, litres(fluidOut.quantity)))]),
    ...(sample === null ? [] : [plain(sheet.sample(sample.millilitres, sample.words))]),
    ...(fluidIn === null ? [] : [plain(sheet.into(fluidIn.what, litres(fluidIn.quantity)))]),
    ...(step.level === '' ? [] : [plain(sheet.level(step.level))]),
    ...(measure === null
      ? []
      : [bold(`${capital(sheet.between(measure.what, figure(measure.least), figure(measure.most), measure.unit))}.`)]),
    ...(torque === null
      ? []
      : [bold(torque.what === '' ? '' : `${torque.what},`), plain(groupWords(torque, rounds, sheet))]),
    ...(torque?.extension == null
      ? []
      : [plain(`${capital(sheet.lengthened(torque.extension.length, torque.extension.angle))}.`)]),
    ...(step.source === '' ? [] : [plain(`${sheet.from(step.source)}.`)]),
  ].filter(({ text }) => text.trim() !== '');
}

const capital = (text: string): string => text.slice(0, 1).toLocaleUpperCase() + text.slice(1);

function groupWords(torque: NonNullable<WorkSheetStep['torque']>, rounds: number, sheet: WorkSheetWords): string {
  const thread = torque.thread === null ? '' : `, ${torque.thread.words}`;
  const said = torque.pattern === 'free' ? sheet.asNumbered : sheet.crosswise;
  return `${said(torque.count * torque.sides, rounds)}${thread}.`;
}

/** Lines and boxes for what is measured, filled, drained, sampled, photographed and handed out. */
function writtenDown({ sheet, shaper }: SheetSetting, step: WorkSheetStep, room: number): readonly Block[] {
  const wanted: { readonly label: string; readonly line: number }[] = [
    ...(step.measure === null
      ? []
      : Array.from({ length: step.measure.places }, (_, place) => ({
          label: step.measure?.places === 1 ? step.measure.what : String(place + 1),
          line: 40,
        }))),
    ...(step.fluidOut === null ? [] : [{ label: sheet.litresOut, line: 48 }]),
    ...(step.sample === null ? [] : [{ label: sheet.sampleLabel, line: 72 }]),
    ...(step.fluidIn === null
      ? []
      : [
          { label: sheet.litresIn, line: 48 },
          { label: sheet.strokes(step.fluidIn.strokes), line: 40 },
        ]),
    ...(step.photoWanted ? [{ label: sheet.photo, line: 0 }] : []),
    ...(step.recheckCard ? [{ label: sheet.card, line: 0 }] : []),
  ];
  const rows: Item[][] = [];
  let x = Number.POSITIVE_INFINITY;
  for (const { label, line } of wanted) {
    const text = oneLine(shaper, words(label), SIZE.small, 0, 12);
    const wide = text.width + 4 + (line === 0 ? BOX : line);
    if (x + wide > room) {
      rows.push([]);
      x = 0;
    }
    rows
      .at(-1)
      ?.push(
        { ...text, x: TEXT + x },
        ...(line === 0 ? box(TEXT + x + text.width + 4, 1) : [blank(TEXT + x + text.width + 4, 13, line)]),
      );
    x += wide + 14;
  }
  return rows.map((items) => block(WRITTEN, items));
}
