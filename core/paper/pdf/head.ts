import type { PaperGarage, PaperMileage } from '../document.ts';
import { paperName } from '../words.ts';
import { type Block, block, type Item, rule, SIZE, setText, words } from './block.ts';
import type { Setting } from './setting.ts';
import { setLines, textWidth } from './text.ts';

const LOGO = 40;
const BESIDE_LOGO = 11;

/** The whole head of the first page: practice mark, garage, title and number, who and which car. */
export function fullHead(setting: Setting): readonly Block[] {
  return [
    ...(setting.document.practice ? [practiceMark(setting)] : []),
    garageHead(setting),
    titleRow(setting),
    facts(setting),
  ];
}

/** What the garage's own head needs to set itself. */
export type GarageSetting = Pick<Setting, 'words' | 'shaper' | 'width'> & {
  readonly document: { readonly garage: PaperGarage };
};

export function practiceMark({ words: w, shaper, width }: GarageSetting): Block {
  const wide = textWidth(shaper, w.practice, 'head', SIZE.garage) + 14;
  const mark = setText(shaper, words(w.practice, 'head'), { x: 0, y: 0, width: wide, size: SIZE.garage });
  const note = setText(shaper, words(w.practiceNote, 'body'), {
    x: 0,
    y: 0,
    width: width - wide - 24,
    size: SIZE.small,
  });
  const height = Math.max(mark.height, note.height) + 8;
  const place = (items: readonly Item[], tall: number, x: number): Item[] =>
    items.map((item) => ({ ...item, x: item.x + x, y: item.y + (height - tall) / 2 }));
  return block(height + 10, [
    { kind: 'frame', x: 0, y: 0, width, height },
    ...place(mark.items, mark.height, 10),
    ...place(note.items, note.height, wide + 12),
  ]);
}

export function garageHead({ document, words: w, shaper, width }: GarageSetting): Block {
  const { garage } = document;
  const x = garage.logo ? LOGO + BESIDE_LOGO : 0;
  const name = setText(shaper, words(garage.name, 'head'), {
    x,
    y: 0,
    width: width - x,
    size: SIZE.garage,
    leading: 1.2,
  });
  const contact = [
    garage.address.filter((line) => line !== '').join(', '),
    garage.phone,
    garage.email,
    garage.registration,
    garage.taxNumber === '' ? '' : w.taxNumber(garage.taxNumber),
  ].filter((part) => part !== '');
  const lines = setText(shaper, words(contact.join('\u00a0\u00a0·\u00a0 ')), {
    x,
    y: name.height,
    width: width - x,
    size: SIZE.body,
  });
  const tall = name.height + lines.height;
  const height = Math.max(tall, garage.logo ? LOGO : 0);
  const down = (height - tall) / 2;
  const items: Item[] = [...name.items, ...lines.items].map((item) => ({ ...item, y: item.y + down }));
  if (garage.logo)
    items.push({ kind: 'logo', x: 0, y: (height - LOGO) / 2, width: LOGO, height: LOGO, logo: garage.logo });
  return block(height + 10, items);
}

function titleRow({ document, words: w, shaper, width }: Setting): Block {
  const number = String(document.number);
  const room = width - textWidth(shaper, number, 'figure', SIZE.title) - 20;
  const large = { y: 8, size: SIZE.title, leading: 1.2 };
  const title = setText(shaper, words(w.title[document.kind], 'head'), { ...large, x: 0, width: room });
  const figure = setText(shaper, words(number, 'figure'), { ...large, x: 0, width, align: 'right' });
  const version = document.kind === 'quote' ? [w.version(String(document.version))] : [];
  const about = [...version, w.orderNumber(String(document.orderNumber))].join(', ');
  const end = Math.max(...title.items.map((item) => item.width)) + 12;
  const beside = end + textWidth(shaper, about, 'body', SIZE.body) <= room;
  const foot = title.items.at(-1)?.y ?? 0;
  const below = setText(shaper, words(about), {
    x: beside ? end : 0,
    y: large.y + title.height,
    ...(beside ? { foot } : {}),
    width: beside ? room - end : width,
    size: SIZE.body,
  });
  const height = large.y + title.height + (beside ? 0 : below.height) + 2;
  return block(height, [rule(0, 1.125, width, 2.25, true), ...title.items, ...below.items, ...figure.items]);
}

interface Fact {
  readonly label: string;
  readonly lines: readonly string[];
  readonly share: number;
  readonly boldFirst: boolean;
}

function facts(setting: Setting): Block {
  const { shaper, width } = setting;
  const columns = factsOf(setting).filter((fact) => fact.lines.length > 0);
  const gap = 15;
  const shares = columns.reduce((total, fact) => total + fact.share, 0);
  const free = width - gap * (columns.length - 1);
  const items: Item[] = [rule(0, 0, width, 0.56)];
  let x = 0;
  let lowest = 0;
  for (const fact of columns) {
    const column = (free * fact.share) / shares;
    const label = setText(shaper, words(fact.label), { x, y: 7, width: column, size: SIZE.small });
    items.push(...label.items);
    let y = 7 + label.height;
    fact.lines.forEach((line, index) => {
      const style = fact.boldFirst && index === 0 ? 'bold' : 'body';
      const set = setText(shaper, words(line, style), { x, y, width: column, size: SIZE.body, leading: 1.34 });
      items.push(...set.items);
      y += set.height;
    });
    lowest = Math.max(lowest, y);
    x += column + gap;
  }
  const height = lowest + 6;
  items.push(rule(0, height, width, 0.56));
  return block(height, items);
}

function factsOf(setting: Setting): readonly Fact[] {
  const { document, words: w } = setting;
  const { car } = document;
  const some = (condition: boolean, line: () => string): string[] => (condition ? [line()] : []);
  return [
    {
      label: w.facts.for,
      share: 1.1,
      boldFirst: true,
      lines: [
        ...document.billTo.filter((line) => line !== ''),
        ...some(document.billToTaxNumber !== '', () => w.taxNumber(document.billToTaxNumber)),
        ...some(document.purchaseOrder !== '', () => w.purchaseOrder(document.purchaseOrder)),
      ],
    },
    {
      label: w.facts.car,
      share: 1.35,
      boldFirst: true,
      lines: car
        ? [
            car.name,
            ...some(car.plate !== '', () => w.plate(car.plate)),
            ...some(car.vin !== '', () => w.vin(car.vin)),
          ].filter((line) => line !== '')
        : [],
    },
    { label: w.facts.mileage, share: 0.75, boldFirst: false, lines: mileageLines(setting) },
    { label: w.facts.dates, share: 1.1, boldFirst: false, lines: dateLines(setting) },
  ];
}

function mileageLines({ document, words: w, whole }: Setting): readonly string[] {
  if (document.kind !== 'quote' && document.kind !== 'invoice') return [];
  const mileage: PaperMileage = document.mileage;
  const lines: string[] = [];
  if (mileage.in !== null) lines.push(w.mileageIn(`${whole(mileage.in)}\u00a0${mileage.unit}`));
  if (mileage.out !== null) lines.push(w.mileageOut(`${whole(mileage.out)}\u00a0${mileage.unit}`));
  return lines;
}

function dateLines({ document, words: w, date }: Setting): readonly string[] {
  const lines = [w.issued(date(document.date))];
  if (document.kind === 'quote') {
    if (document.validUntil) lines.push(w.validUntil(date(document.validUntil)));
    if (document.dates.in) lines.push(w.dateIn(date(document.dates.in)));
  }
  if (document.kind === 'invoice') {
    if (document.dates.in) lines.push(w.dateIn(date(document.dates.in)));
    if (document.dates.out) lines.push(w.dateOut(date(document.dates.out)));
  }
  return lines;
}

/** The head from page 2 on: one line and a rule. */
export function shortHead({ document, words: w, shaper, width }: Setting): Block {
  const right = [paperName(document), document.billTo[0] ?? '', document.car?.plate ?? '']
    .filter((part) => part !== '')
    .join(' · ');
  const half = (width - 20) / 2;
  const left = document.practice ? `${w.practice}, ${document.garage.name}` : document.garage.name;
  const name = firstLine(shaper, left, 'head', half, SIZE.job, 0);
  const about = firstLine(shaper, right, 'body', half, SIZE.body, width);
  return block(30, [...name, ...about, rule(0, 19, width, 1.125, true)]);
}

/** The foot of every page. `y` 0 is the top of its line. */
export function foot({ document, words: w, shaper, width }: Setting, page: number, of: number): readonly Item[] {
  const town = document.garage.address.filter((line) => line !== '').at(-1);
  const from = town ? `${document.garage.name}, ${town}` : document.garage.name;
  const left = document.practice ? `${w.practice}, ${from}` : from;
  const right = `${paperName(document)}, ${w.page(page, of)}`;
  const rightWidth = textWidth(shaper, right, 'body', SIZE.small);
  return [
    ...firstLine(shaper, left, 'body', width - rightWidth - 20, SIZE.small, 0),
    ...firstLine(shaper, right, 'body', width, SIZE.small, width),
  ];
}

/** Only as much as one line holds: what is cut here stands in full at the head of page 1. `rightEdge` 0: at the left. */
export function firstLine(
  shaper: Setting['shaper'],
  text: string,
  style: 'head' | 'body',
  width: number,
  size: number,
  rightEdge: number,
): readonly Item[] {
  const line = setLines(shaper, words(text, style), size, width)[0];
  if (!line) return [];
  const x = rightEdge === 0 ? 0 : rightEdge - line.width;
  return [{ kind: 'text', x, y: SIZE.job * 0.98, width: line.width, text: line.text, pieces: line.pieces }];
}

/** Height in points that the foot takes, with the white above it. */
export const FOOT_HEIGHT = 20;
/** How far above the margin the foot's line begins. */
export const FOOT_LINE = 14;
