import { wholeText } from '../figures.ts';
import { measuredText } from '../found-text.ts';
import type { PaperMoment } from '../parts.ts';
import type { PaperPicture, PaperSeen, PaperSeenRow, SeenPaper } from '../seen.ts';
import { type SeenWords, seenWords } from '../seen-words.ts';
import { type PaperWords, paperWords } from '../words.ts';
import { type Block, block, type Item, moved, rule, SIZE, setText, words } from './block.ts';
import { flow } from './flow.ts';
import type { PaperFonts } from './fonts.ts';
import { garageHead, practiceMark } from './head.ts';
import type { PaperLayout } from './layout.ts';
import { makePdf } from './make-pdf.ts';
import { MARGIN, PAGE, paragraph, space } from './setting.ts';
import type { Shaper } from './shape.ts';

const ORDER: readonly PaperSeen[] = ['unsafe', 'soon', 'watch', 'not-seen', 'fine'];
/** Height in points of a picture's place: two stand beside each other. */
const PICTURE = 150;
const GAP = 15;
const FOOT = 20;

interface Setting {
  readonly document: SeenPaper;
  readonly words: PaperWords;
  readonly seen: SeenWords;
  readonly shaper: Shaper;
  readonly width: number;
}

/** What was seen as the bytes of a PDF. Throws as makePdf does. */
export function seenPdf(document: SeenPaper, fonts: PaperFonts): Promise<Uint8Array> {
  const about = { author: document.garage.name, language: document.language, at: document.madeAt };
  return makePdf((shaper) => layoutSeen(document, shaper), { ...about, title: seenName(document) }, fonts);
}

/** 'What we saw 1187', as a file or a message calls the paper. */
export function seenName(document: Pick<SeenPaper, 'language' | 'title' | 'orderNumber'>): string {
  const said = seenWords(document.language);
  return `${document.title === '' ? said.photos : said.title} ${document.orderNumber}`;
}

function layoutSeen(document: SeenPaper, shaper: Shaper): PaperLayout {
  const [width, height] = PAGE[document.size];
  const setting: Setting = {
    document,
    words: paperWords(document.language, document.dateForm),
    seen: seenWords(document.language),
    shaper,
    width: width - 2 * MARGIN,
  };
  const blocks = [
    ...(document.practice ? [practiceMark(setting)] : []),
    garageHead(setting),
    ...titleBlocks(setting),
    ...ORDER.flatMap((each) => groupBlocks(setting, each)),
    ...pictureBlocks(setting, document.pictures),
    ...(document.rows.length === 0 ? [] : [space(12), ...text(setting, setting.seen.close)]),
  ];
  const pages = flow(blocks, { margin: MARGIN, bottom: height - MARGIN - FOOT, pageHead: () => [] });
  return {
    width,
    height,
    pages: pages.map((page, index) => ({
      items: [...page.items, ...moved(foot(setting, index + 1, pages.length), MARGIN, height - MARGIN - 12)],
    })),
  };
}

const text = ({ shaper, width }: Setting, said: string, after = 1) =>
  paragraph(shaper, words(said), { x: 0, width, size: SIZE.body, after });

function titleBlocks(setting: Setting): readonly Block[] {
  const { document, words: w, seen, shaper, width } = setting;
  const { car, mileage, customer, title } = document;
  const large = setText(shaper, words(title === '' ? seen.photos : seen.title, 'head'), {
    ...{ x: 0, y: 8, width, size: SIZE.title, leading: 1.2 },
  });
  const figure = (reading: number) => `${wholeText(reading, document.currency)}\u00a0${mileage.unit}`;
  const about = [
    customer,
    car.name,
    car.plate === '' ? '' : w.plate(car.plate),
    car.vin === '' ? '' : w.vin(car.vin),
    mileage.reading === null ? '' : figure(mileage.reading),
    seen.order(String(document.orderNumber)),
  ].filter((part) => part !== '');
  return [
    block(8 + large.height + 2, [rule(0, 1.125, width, 2.25, true), ...large.items]),
    ...text(setting, about.join('\u00a0\u00a0·\u00a0 '), 2),
    ...(title === '' ? [] : text(setting, seen.goneThrough(title, document.by, when(setting, document.at)), 2)),
  ];
}

const when = ({ words: w }: Setting, { date, time }: PaperMoment) =>
  time === '' ? w.date(date, false) : `${w.date(date, false)}, ${time}`;

function groupBlocks(setting: Setting, of: PaperSeen): readonly Block[] {
  const { document, seen, shaper, width } = setting;
  const rows = document.rows.filter((row) => row.seen === of);
  if (rows.length === 0) return [];
  const note = seen.note[of];
  const heading = paragraph(
    shaper,
    [{ text: seen.heading[of], style: 'head' }, ...(note === '' ? [] : [{ text: ` ${note}`, style: 'body' } as const])],
    { x: 0, width, size: SIZE.job, after: 3 },
  ).map((one) => ({ ...one, keep: true }));
  const top = block(13, [rule(0, 9, width, 0.56)], { keep: true, lead: true });
  // What is well, and what nobody said a word about, needs no line of its own.
  const plain = of === 'fine' || of === 'not-seen' ? rows.filter((row) => !saysMore(row)) : [];
  const names = plain.map((row) => [row.words, row.place].filter((part) => part !== '').join(' ')).join(', ');
  return [
    top,
    ...heading,
    ...rows.filter((row) => !plain.includes(row)).flatMap((row) => rowBlocks(setting, row)),
    ...(names === '' ? [] : text(setting, names)),
  ];
}

const saysMore = ({ said, measured, pictures }: PaperSeenRow) =>
  said !== '' || measured !== null || pictures.length > 0;

function rowBlocks(setting: Setting, row: PaperSeenRow): readonly Block[] {
  const { words: what, place, said, measured } = row;
  const more = [
    said,
    measured === null ? '' : measuredText(measured, setting.document.language, setting.document.currency),
  ]
    .filter((part) => part !== '')
    .join('; ');
  const spans = [
    { text: place === '' ? what : `${what}, ${place}`, style: 'bold' },
    ...(more === '' ? [] : [{ text: ` ${more}`, style: 'body' } as const]),
  ] as const;
  return [
    ...paragraph(setting.shaper, spans, { x: 0, width: setting.width, size: SIZE.body, after: 3 }),
    ...pictureBlocks(setting, row.pictures),
  ];
}

/** Two beside each other, each with its words below. */
function pictureBlocks(setting: Setting, pictures: readonly PaperPicture[]): readonly Block[] {
  const { shaper, seen } = setting;
  const wide = (setting.width - GAP) / 2;
  const pairs = pictures.flatMap((_, at) => (at % 2 === 0 ? [pictures.slice(at, at + 2)] : []));
  return pairs.map((pair) => {
    const captions = pair.map((picture, at) =>
      setText(
        shaper,
        words(
          [picture.words, seen.taken(when(setting, picture.taken), picture.by)]
            .filter((part) => part !== '')
            .join('. '),
        ),
        {
          ...{ x: at * (wide + GAP), y: 4 + PICTURE + 2, width: wide, size: SIZE.small },
        },
      ),
    );
    const items = pair.map(
      (picture, at): Item => ({ kind: 'picture', x: at * (wide + GAP), y: 4, width: wide, height: PICTURE, picture }),
    );
    const height = 4 + PICTURE + 2 + Math.max(...captions.map((caption) => caption.height)) + 6;
    return block(height, [...items, ...captions.flatMap((caption) => caption.items)]);
  });
}

function foot({ document, words: w, shaper, width }: Setting, page: number, of: number): readonly Item[] {
  const practice = document.practice ? `${w.practice}, ` : '';
  const said = `${practice}${seenName(document)}, ${w.page(page, of)}`;
  return setText(shaper, words(said), { x: 0, y: 0, width, size: SIZE.small, align: 'right' }).items;
}
