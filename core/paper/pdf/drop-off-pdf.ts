import { BOX, type DrawnView, outlineOf } from '../../car/outline.ts';
import { timeShown } from '../../time/time-shown.ts';
import type { DropOffSlip } from '../drop-off.ts';
import { dropOffWords } from '../drop-off-words.ts';
import { amountText, wholeText } from '../figures.ts';
import type { PaperMoment } from '../parts.ts';
import { type PaperWords, paperWords } from '../words.ts';
import { type Block, block, type Item, moved, rule, SIZE, setText, words } from './block.ts';
import { flow } from './flow.ts';
import type { PaperFonts } from './fonts.ts';
import { garageHead, practiceMark } from './head.ts';
import type { PaperLayout } from './layout.ts';
import { makePdf } from './make-pdf.ts';
import { MARGIN, PAGE, paragraph, space } from './setting.ts';
import type { Shaper } from './shape.ts';

interface Setting {
  readonly document: DropOffSlip;
  readonly words: PaperWords;
  readonly slip: ReturnType<typeof dropOffWords>;
  readonly shaper: Shaper;
  readonly width: number;
}

/** Where the words of a row begin, in points. */
const LABEL = 105;
const FOOT = 20;
const GAP = 18;
/** A numbered mark on the drawing, its radius in points. */
const RADIUS = 6;
const PAD = { width: 230, height: 74 } as const;

/** A drop-off slip as the bytes of a PDF. Throws as makePdf does. */
export function dropOffPdf(document: DropOffSlip, fonts: PaperFonts): Promise<Uint8Array> {
  const about = { author: document.garage.name, language: document.language, at: document.madeAt };
  return makePdf((shaper) => lay(document, shaper), { ...about, title: dropOffName(document) }, fonts);
}

/** 'Drop-off slip 1187', as a file or a message calls it. */
export const dropOffName = ({ language, orderNumber }: Pick<DropOffSlip, 'language' | 'orderNumber'>): string =>
  `${dropOffWords(language).title} ${orderNumber}`;

function lay(document: DropOffSlip, shaper: Shaper): PaperLayout {
  const [width, height] = PAGE[document.size];
  const { language, dateForm } = document;
  const setting = { document, words: paperWords(language, dateForm), slip: dropOffWords(language), shaper };
  const whole: Setting = { ...setting, width: width - 2 * MARGIN };
  const blocks = [
    ...(document.practice ? [practiceMark(whole)] : []),
    garageHead(whole),
    titleBlock(whole),
    ...factRows(whole).map(([label, said]) => row(whole, label, said)),
    ...markBlocks(whole),
    ...document.notices.flatMap((notice) =>
      paragraph(shaper, words(notice), { x: 0, width: whole.width, size: SIZE.body, after: 4 }),
    ),
    signature(whole),
    ...paragraph(shaper, words(whole.slip.noOrder), { x: 0, width: whole.width, size: SIZE.body }),
  ];
  const pages = flow(blocks, { margin: MARGIN, bottom: height - MARGIN - FOOT, pageHead: () => [] });
  const foot = (page: number) =>
    setText(shaper, words(`${dropOffName(document)}, ${whole.words.page(page, pages.length)}`), {
      ...{ x: 0, y: 0, width: whole.width, size: SIZE.small, align: 'right' },
    }).items;
  return {
    width,
    height,
    pages: pages.map((page, at) => ({ items: [...page.items, ...moved(foot(at + 1), MARGIN, height - MARGIN - 12)] })),
  };
}

function titleBlock({ document, words: w, slip, shaper, width }: Setting): Block {
  const { car } = document;
  const title = setText(shaper, words(slip.title, 'head'), { x: 0, y: 8, width, size: SIZE.title, leading: 1.2 });
  const about = [
    [document.customer, document.phone],
    [car.name, car.plate === '' ? '' : w.plate(car.plate), car.vin === '' ? '' : w.vin(car.vin)],
    [slip.order(String(document.orderNumber))],
  ].map((parts) => parts.filter((part) => part !== '').join(', '));
  const under = setText(shaper, words(about.join('\u00a0\u00a0·\u00a0 ')), {
    ...{ x: 0, y: 8 + title.height, width, size: SIZE.body },
  });
  return block(8 + title.height + under.height + 8, [
    rule(0, 1.125, width, 2.25, true),
    ...title.items,
    ...under.items,
  ]);
}

/** What was taken over, label by label; what was not asked is left out. */
function factRows({ document, words: w, slip }: Setting): [label: string, said: string][] {
  const { currency, mileage, testDrive, oldParts, storage, booked, came } = document;
  const at = (moment: PaperMoment | null) =>
    moment === null
      ? ''
      : [w.date(moment.date, false), timeShown(moment.time)].filter((part) => part !== '').join(', ');
  const sum = (minor: number | null) => (minor === null ? '' : `${amountText(minor, currency)}\u00a0${currency.code}`);
  const rows: [string, string][] = [
    [document.night ? slip.cameAtNight : slip.came, at(came)],
    [slip.booked, booked === null ? '' : `${at(booked)}, ${booked.bay}`],
    [slip.says, document.complaint === '' ? '' : `${w.quotes[0]}${document.complaint}${w.quotes[1]}`],
    [slip.mileage, mileage.in === null ? '' : `${wholeText(mileage.in, currency)}\u00a0${mileage.unit}`],
    [slip.keys, slip.keysAt(document.keys === null ? '' : String(document.keys), document.keysWhere)],
    [slip.wheelLock, document.wheelLockKey],
    [slip.fuel, document.fuel],
    [slip.left, document.valuables],
    [slip.drive, testDrive === null ? '' : slip.driveWords(testDrive, document.testDriveLimit)],
    [slip.oldParts, oldParts === 'unasked' ? '' : slip.oldPartsWords[oldParts]],
    [slip.yes, document.yesUpTo === null ? '' : slip.upTo(sum(document.yesUpTo))],
    [slip.deposit, sum(document.deposit)],
    [slip.promise, [at(document.promiseAt), document.promise].filter((part) => part !== '').join(', ')],
    [
      slip.storage,
      storage === null
        ? document.storageTold
          ? slip.storageTold
          : ''
        : slip.storageWords(sum(storage.perDay), storage.freeWorkingDays),
    ],
  ];
  return rows.filter(([, said]) => said !== '');
}

function row({ shaper, width }: Setting, label: string, said: string): Block {
  const left = setText(shaper, words(label), { x: 0, y: 3, width: LABEL - 8, size: SIZE.body });
  const right = setText(shaper, words(said, 'bold'), { x: LABEL, y: 3, width: width - LABEL, size: SIZE.body });
  const height = Math.max(left.height, right.height) + 6;
  return block(height, [rule(0, 0, width, 0.4), ...left.items, ...right.items]);
}

/** The sides on which something is drawn, and a number for each mark; below them its words. */
function markBlocks(setting: Setting): readonly Block[] {
  const { document, slip, shaper, width } = setting;
  const { marks, otherMarks, shape } = document;
  const text = (said: string, style: 'head' | 'body', size: number, after = 1) =>
    paragraph(shaper, words(said, style), { x: 0, width, size, after });
  const views = shape === null ? [] : (['top', 'left', 'right'] as const).filter((view) => hasMark(document, view));
  const wide = (width - GAP) / 2;
  const pairs = views.flatMap((_, at) => (at % 2 === 0 ? [views.slice(at, at + 2)] : []));
  return [
    block(12, [rule(0, 0, width, 1.125)], { keep: true, lead: true }),
    ...text(slip.marks, 'head', SIZE.section, 3).map((one) => ({ ...one, keep: true })),
    ...pairs.map((pair) => {
      const drawings = pair.map((view) => drawing(setting, view, wide));
      const height = Math.max(...drawings.map((one) => one.height));
      return block(
        height + 8,
        drawings.flatMap((one, at) => moved(one.items, at * (wide + GAP), 0)),
      );
    }),
    ...(marks.length + otherMarks.length === 0 ? text(slip.noMarks, 'body', SIZE.body) : []),
    ...marks.flatMap((mark, at) => text(`${at + 1}.\u00a0 ${mark.words}`, 'body', SIZE.body)),
    ...otherMarks.flatMap((said) => text(said, 'body', SIZE.body)),
    space(10),
  ];
}

const hasMark = ({ marks }: DropOffSlip, view: DrawnView) => view === 'top' || marks.some((mark) => mark.view === view);

/** The car from one side, `wide` points wide, with its numbered marks. */
function drawing({ document, shaper }: Setting, view: DrawnView, wide: number): Block {
  const { shape, marks } = document;
  const scale = wide / BOX[view].width;
  const height = BOX[view].height * scale;
  const lines = shape === null ? [] : outlineOf(shape, view);
  const joined = (points: readonly (readonly [number, number])[], sx: number, sy: number, weight: number): Item[] =>
    points.slice(1).map(([x, y], at): Item => {
      const [fromX = 0, fromY = 0] = points[at] ?? [];
      return { kind: 'line', x: fromX * sx, y: fromY * sy, dx: (x - fromX) * sx, dy: (y - fromY) * sy, weight };
    });
  const numbered = marks.flatMap((mark, at): Item[] => {
    if (mark.view !== view) return [];
    const [x, y] = [(mark.x * wide) / 1000, (mark.y * height) / 1000];
    const figure = setText(shaper, words(String(at + 1), 'bold'), { x: 0, y: 0, width: 30, size: SIZE.small });
    const [first] = figure.items;
    return [
      { kind: 'circle', x, y, radius: RADIUS, weight: 0.9, blank: true },
      ...(first === undefined ? [] : [{ ...first, x: x - first.width / 2, y: y + SIZE.small * 0.34 }]),
    ];
  });
  return block(height, [...lines.flatMap((line) => joined(line, scale, scale, 0.5)), ...numbered]);
}

/** The strokes as they were signed over a line; an empty line to sign on paper; or why nobody signed. */
function signature({ document, slip, shaper, width }: Setting): Block {
  const by = document.by === '' ? '' : `. ${slip.takenBy(document.by)}`;
  if (document.night) {
    const said = setText(shaper, words(slip.unsigned + by.slice(1), 'bold'), { x: 0, y: 0, width, size: SIZE.body });
    return block(said.height + 10, said.items);
  }
  const strokes = (document.signature ?? []).flatMap((line) =>
    line.slice(1).map(([x, y], at): Item => {
      const [fromX = 0, fromY = 0] = line[at] ?? [];
      const [sx, sy] = [PAD.width / 1000, PAD.height / 1000];
      return { kind: 'line', x: fromX * sx, y: fromY * sy, dx: (x - fromX) * sx, dy: (y - fromY) * sy, weight: 1 };
    }),
  );
  const under = setText(shaper, words(`${slip.signed}${by}`), { x: 0, y: PAD.height + 4, width, size: SIZE.small });
  return block(PAD.height + under.height + 14, [...strokes, rule(0, PAD.height, PAD.width, 0.75), ...under.items]);
}
