import { wholeText } from '../../figures.ts';
import { paperWords } from '../../words.ts';
import { type Block, block, type Item, rule, SIZE, setText, stacked, words } from '../block.ts';
import { practiceMark } from '../head.ts';
import { space } from '../setting.ts';
import { textWidth } from '../text.ts';
import { blank, oneLine, warning } from './marks.ts';
import type { SheetSetting } from './steps.ts';

const TITLE = 24;

/** "Order 1187, B", or where the copy is from when no visit is named. */
function aboutWords({ document, sheet }: SheetSetting): readonly [string, string] {
  const { visit } = document;
  return visit === null ? [sheet.fromBook, ''] : [sheet.order, `${visit.order}, ${visit.letter}`];
}

/** Title and order, the car and the job, mileage to fill in, cautions. */
export function sheetHead(setting: SheetSetting): readonly Block[] {
  const { document, shaper, width } = setting;
  return [
    ...(document.practice ? [practiceMark({ words: paperWords(document.language), shaper, width, document })] : []),
    titleRow(setting),
    facts(setting),
    ...cautions(setting),
  ];
}

function titleRow(setting: SheetSetting): Block {
  const { sheet, shaper, width } = setting;
  const [what, number] = aboutWords(setting);
  const about = `${what} ${number}`.trim();
  const title = setText(shaper, words(sheet.title, 'head'), { x: 0, y: 0, width, size: TITLE, leading: 1.2 });
  const order = setText(shaper, words(about, 'figure'), {
    ...{ x: 0, y: 0, width, size: TITLE, leading: 1.2 },
    align: 'right',
  });
  return block(title.height + 8, [...title.items, ...order.items, rule(0, title.height + 3, width, 1.8)]);
}

function facts(setting: SheetSetting): Block {
  const { document, sheet, shaper, width } = setting;
  const { visit } = document;
  const date = (day: string) => paperWords(document.language, document.dateForm).date(day, true);
  const plate = visit === null || visit.plate === '' ? 0 : textWidth(shaper, visit.plate, 'bold', SIZE.job) + 16;
  const mileage = visit === null ? 0 : 128;
  const left = plate === 0 ? 0 : plate + 14;
  const middle = 112;
  const column = (
    lines: readonly string[],
    x: number,
    wide: number,
    boldFirst: boolean,
  ): { items: Item[]; y: number } => {
    const items: Item[] = [];
    let y = 5;
    lines.forEach((line, at) => {
      const style = boldFirst && at === 0 ? 'bold' : 'body';
      const set = setText(shaper, words(line, style), { x, y, width: wide, size: SIZE.body });
      items.push(...set.items);
      y += set.height;
    });
    return { items, y };
  };
  const some = (text: string) => (text === '' ? [] : [text]);
  const job = [
    document.title,
    ...some(visit?.car ?? ''),
    ...(visit === null || visit.vin === '' ? [] : [`VIN ${visit.vin}`]),
  ];
  const version = [
    ...some(visit?.bay ?? ''),
    ...(visit === null || visit.yesOn === '' ? [] : [sheet.yesOn(date(visit.yesOn))]),
    ...(document.version === 0 ? [] : [sheet.version(document.version)]),
  ];
  const jobWide = width - left - middle - mileage - 24;
  const one = column(job, left, jobWide, true);
  const two = column(version, left + jobWide + 12, middle, false);
  const height = Math.max(one.y, two.y, visit === null ? 0 : 56) + 5;
  const items: Item[] = [...one.items, ...two.items, rule(0, height, width, 0.56)];
  if (visit !== null && plate > 0) {
    items.push({ kind: 'frame', x: 0, y: 7, width: plate, height: 21 });
    items.push(oneLine(shaper, words(visit.plate, 'bold'), SIZE.job, 8, 21.5));
  }
  if (visit !== null) {
    const x = width - mileage;
    const { unit, in: at } = visit.mileage;
    [sheet.before(unit), sheet.after(unit)].forEach((label, row) => {
      const text = oneLine(shaper, words(label), SIZE.small, x, 17 + row * 17);
      items.push(text, blank(x + text.width + 5, 19 + row * 17, Math.max(30, mileage - text.width - 5)));
    });
    if (at !== null)
      items.push(oneLine(shaper, words(sheet.atTheDoor(wholeText(at, document.currency))), SIZE.small, x, 52));
  }
  return block(height, items);
}

/** All cautions beside their sign, in two columns. */
function cautions({ document, shaper, width }: SheetSetting): readonly Block[] {
  if (document.cautions.length === 0) return [space(8)];
  const x = 34;
  const gap = 18;
  const wide = (width - x - gap) / 2;
  const half = Math.ceil(document.cautions.length / 2);
  const items: Item[] = [];
  let tall = 24;
  document.cautions.forEach((caution, at) => {
    const right = at >= half;
    const above = document.cautions.slice(right ? half : 0, at);
    const set = (text: string, y: number) =>
      setText(shaper, words(/[.!?]$/.test(text) ? text : `${text}.`, 'bold'), {
        ...{ x: right ? x + wide + gap : x, y, width: wide, size: SIZE.body },
      });
    const y = above.reduce((down, one) => down + set(one, 0).height, 6);
    const one = set(caution, y);
    items.push(...one.items);
    tall = Math.max(tall, y + one.height);
  });
  return [stacked([block(tall, [...warning(2, 7), ...items]), space(6)])];
}

/** The head from page 2 on. */
export function sheetShortHead(setting: SheetSetting): Block {
  const { document, shaper, width, sheet } = setting;
  const about = [aboutWords(setting).join(' ').trim(), document.visit?.plate ?? '', document.title]
    .filter((text) => text !== '')
    .join(', ');
  const title = oneLine(shaper, words(sheet.title, 'head'), SIZE.job, 0, 11);
  const line = setText(shaper, words(about), {
    x: title.width + 14,
    y: 0,
    width: width - title.width - 14,
    size: SIZE.body,
  });
  return block(26, [title, ...line.items.slice(0, 1), rule(0, 18, width, 1.125)]);
}
