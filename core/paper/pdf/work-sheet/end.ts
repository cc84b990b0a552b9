import { timeShown } from '../../../time/time-shown.ts';
import { quantityText } from '../../figures.ts';
import { paperWords } from '../../words.ts';
import { type Block, block, type Item, rule, SIZE, setText, words } from '../block.ts';
import { blank, line, oneLine } from './marks.ts';
import type { SheetSetting } from './steps.ts';

const ROW = 22;
/** Times to go on and off that have a place in a row. */
const TIMES = 6;

/** Under the steps: the clocks as they really ran beside what was found, then the wrench, the tools and who keyed it in. */
export function sheetEnd(setting: SheetSetting): readonly Block[] {
  const { sheet, shaper, width } = setting;
  const table = clockTable(setting, width * 0.6);
  const x = width * 0.6 + 18;
  const found = setText(shaper, words(sheet.found, 'head'), { x, y: 5, width: width - x, size: SIZE.section });
  const lines = Array.from({ length: 3 }, (_, at) => blank(x, 46 + at * ROW, width - x));
  const beside = block(
    Math.max(table.height, 100),
    [rule(0, 0.9, width, 1.8), ...table.items, ...found.items, ...lines],
    { keep: true },
  );
  const third = (width - 2 * 18) / 3;
  const foot = [sheet.wrench, sheet.tools, sheet.keyedIn].flatMap((label, at): Item[] => {
    const left = at * (third + 18);
    return [
      blank(left, 24, third),
      ...setText(shaper, words(label), { x: left, y: 26, width: third, size: SIZE.small }).items,
    ];
  });
  return [beside, block(52, foot)];
}

function clockTable({ document, sheet, shaper }: SheetSetting, wide: number): Block {
  const hours = (thousandths: number) => quantityText(thousandths, document.currency);
  const named = document.people.map(({ name, hours: of }) => (of === null ? name : `${name}, ${hours(of)}`));
  const rows = [...named, '', ''].slice(0, Math.max(2, named.length));
  const head = setText(shaper, words(sheet.clocks, 'head'), { x: 0, y: 5, width: wide, size: SIZE.section });
  const top = 5 + head.height + 3;
  const first = wide * 0.28;
  const column = (wide - first) / TIMES;
  const items: Item[] = [...head.items];
  const bottom = top + 14 + rows.length * ROW;
  for (const y of [top, top + 14, ...rows.map((_, at) => top + 14 + (at + 1) * ROW)]) items.push(rule(0, y, wide, 0.7));
  const uprights = [0, ...Array.from({ length: TIMES + 1 }, (_, at) => first + at * column)];
  for (const x of uprights) items.push(line(x, top, 0, bottom - top, 0.7));
  const labels = [sheet.who, ...Array.from({ length: TIMES }, (_, at) => (at % 2 === 0 ? sheet.on : sheet.off))];
  labels.forEach((label, at) => {
    items.push(oneLine(shaper, words(label), SIZE.small, (at === 0 ? 0 : first + (at - 1) * column) + 4, top + 10.5));
  });
  rows.forEach((name, at) => {
    const set = setText(shaper, words(name), { x: 4, y: top + 14 + at * ROW + 4, width: first - 8, size: SIZE.small });
    items.push(...set.items.slice(0, 1));
  });
  return block(bottom + 6, items);
}

/** The foot of every page: whose manual rules, when it was printed, which page. `y` 0 is the top of its line. */
export function sheetFoot({ document, sheet, shaper, width }: SheetSetting, page: number, of: number): readonly Item[] {
  const { date: dateOf, page: pageOf, practice } = paperWords(document.language, document.dateForm);
  const { date, time } = document.printed;
  const right = `${sheet.printed(dateOf(date, false), timeShown(time))}, ${pageOf(page, of)}`;
  const name = document.practice ? `${practice}, ${document.garage.name}` : document.garage.name;
  const printed = oneLine(shaper, words(right), SIZE.small, 0, 11);
  const left = setText(shaper, words(`${name}. ${sheet.manual}`), {
    ...{ x: 0, y: 0, width: width - printed.width - 12, size: SIZE.small, foot: 11 },
  });
  return [...left.items.slice(0, 1), { ...printed, x: width - printed.width }];
}
