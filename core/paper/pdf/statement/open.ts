import { type Block, block, type Item, type JobMark, rule, SIZE, setText, words } from '../block.ts';
import { paragraph, space } from '../setting.ts';
import { aboutText, type Column, columnsOf, figureWidth, type StatementSetting, tableRow } from './setting.ts';

/** Marks a row of the list of open invoices. */
export const OPEN = 'open';
const MARK: JobMark = { letter: OPEN, title: '', heads: false };
/** A bar of the ageing: its height in points. */
const BAR = 6;

function columnsFor(setting: StatementSetting): readonly Column[] {
  const sums = setting.document.open.flatMap(({ gross, open }) => [setting.amount(gross), setting.amount(open)]);
  return columnsOf(setting.width, [0.55, 1.35, 0.8, 1.15], 2, figureWidth(setting, sums));
}

const partHead = ({ shaper, width }: StatementSetting, text: string): readonly Block[] => [
  block(10, [rule(0, 0, width, 1.125)], { keep: true, lead: true }),
  ...paragraph(shaper, words(text, 'head'), { x: 0, width, size: SIZE.section, after: 1 }).map((one) => ({
    ...one,
    keep: true,
  })),
];

export function openHeads(setting: StatementSetting): Block {
  const { said } = setting;
  const { openColumn, column, kind } = said;
  const heads = [kind.invoice, column.about, openColumn.due, openColumn.standing, openColumn.of, openColumn.open];
  return tableRow(setting, columnsFor(setting), heads, { size: SIZE.small, ruled: 0, keep: true });
}

/** What is open, oldest due first; how far past due; and what stands alone. */
export function openBlocks(setting: StatementSetting): readonly Block[] {
  const { document, said, amount, date } = setting;
  if (document.open.length === 0 && document.unapplied.length === 0) return [];
  const columns = columnsFor(setting);
  const standing = (days: number) => (days > 0 ? said.pastDue(days) : days === 0 ? said.dueToday : said.toGo(-days));
  const rows = document.open.map((one, at) =>
    tableRow(
      setting,
      columns,
      [
        one.number === null ? '' : String(one.number),
        ...[aboutText(setting, one.about), date(one.dueOn), standing(one.daysPastDue)],
        ...[amount(one.gross), amount(one.open)],
      ],
      // The last one stays with the sums by age.
      { mark: MARK, keep: at === document.open.length - 1 },
    ),
  );
  return [
    ...(rows.length === 0 ? [] : [...partHead(setting, said.open), openHeads(setting), ...rows, ageingBlock(setting)]),
    ...unappliedBlocks(setting),
    space(8),
  ];
}

/** The open sums by days past due, each with a bar as long as its share of the largest. */
function ageingBlock({ document, said, shaper, width, amount }: StatementSetting): Block {
  const { ageing } = document;
  const gap = 12;
  const wide = (width - gap * (ageing.length - 1)) / ageing.length;
  const most = Math.max(1, ...ageing.map(({ sum }) => sum));
  const heading = setText(shaper, words(said.ageing), { x: 0, y: 8, width, size: SIZE.small });
  const items: Item[] = [rule(0, 0, width, 0.56), ...heading.items];
  const top = 8 + heading.height + 2;
  let lowest = top;
  ageing.forEach(({ upTo, sum }, at) => {
    const x = at * (wide + gap);
    const before = ageing[at - 1]?.upTo ?? 0;
    const label = upTo === null ? said.above(before) : upTo === 0 ? said.notDue : said.upTo(before + 1, upTo);
    const name = setText(shaper, words(label), { x, y: top, width: wide, size: SIZE.small });
    const y = top + name.height;
    const figure = setText(shaper, words(amount(sum), sum === 0 ? 'body' : 'bold'), {
      ...{ x, y, width: wide, size: SIZE.body },
    });
    const barTop = y + figure.height + 2;
    items.push(...name.items, ...figure.items, rule(x, barTop + BAR, wide, 0.4));
    if (sum > 0) items.push({ kind: 'frame', x, y: barTop, width: Math.max(2, (wide * sum) / most), height: BAR });
    lowest = Math.max(lowest, barTop + BAR);
  });
  return block(lowest + 10, items);
}

/** Money on no invoice stands alone, and says so. */
function unappliedBlocks(setting: StatementSetting): readonly Block[] {
  const { document, said, shaper, width, amount } = setting;
  if (document.unapplied.length === 0) return [];
  const columns = columnsOf(
    width,
    [1],
    1,
    figureWidth(
      setting,
      document.unapplied.map(({ sum }) => amount(-sum)),
    ),
  );
  return [
    ...partHead(setting, said.unapplied),
    ...document.unapplied.map(({ about, sum }) =>
      tableRow(setting, columns, [about === null ? '' : said.unappliedOf(aboutText(setting, about)), amount(-sum)], {
        keep: true,
      }),
    ),
    ...paragraph(shaper, words(said.unappliedNote), { x: 0, width, size: SIZE.small, after: 2 }),
  ];
}
