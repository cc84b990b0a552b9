import type { StatementRow } from '../../statement.ts';
import { type Block, block, type Item, type JobMark, moved, rule, SIZE, setText, stacked, words } from '../block.ts';
import { paragraph, space } from '../setting.ts';
import { SUMS_WIDTH } from '../sums.ts';
import { textWidth } from '../text.ts';
import { aboutText, type Column, columnsOf, figureWidth, type StatementSetting, tableRow } from './setting.ts';

/** Marks a row of the table of moves; its title is the sum that a page which begins there carries over. */
export const MOVES = 'moves';

/** As wide as the widest figure wants it; days that are of two years want their year. */
function columnsFor(setting: StatementSetting): readonly Column[] {
  const { document, width, amount } = setting;
  const balances = [document.opening, ...document.rows.flatMap((row) => [row.amount, row.balance])];
  const day = oneYear(setting) ? 0.42 : 0.62;
  return columnsOf(width, [day, 1.2, 1.35], 3, figureWidth(setting, balances.map(amount)));
}

const oneYear = ({ document }: StatementSetting) => document.from.slice(0, 4) === document.until.slice(0, 4);

export function moveHeads(setting: StatementSetting): Block {
  const { column } = setting.said;
  const { sign } = setting.document.currency;
  const heads = [column.day, column.paper, column.about, column.owed, column.paid, `${column.balance} ${sign}`];
  return tableRow(setting, columnsFor(setting), heads, { size: SIZE.small, ruled: 0, keep: true });
}

/** What stood before a row on a later page. */
export const carriedRow = (setting: StatementSetting, { title }: JobMark): Block =>
  tableRow(setting, columnsFor(setting), ['', setting.said.carried, '', '', '', title], { ruled: 1.125 });

/** From what was owed before, move by move, to what is owed after. */
export function moveBlocks(setting: StatementSetting): readonly Block[] {
  const { document, said, shaper, width, amount, date } = setting;
  const columns = columnsFor(setting);
  const before = said.opening(date(document.from));
  const mark = (balance: number): JobMark => ({ letter: MOVES, title: amount(balance), heads: false });
  const opening = tableRow(setting, columns, ['', before, '', '', '', amount(document.opening)], {
    ...{ style: 'bold', ruled: 1.125, keep: document.rows.length > 0 },
  });
  let owed = document.opening;
  const rows = document.rows.map((row) => {
    const set = tableRow(setting, columns, cellsOf(setting, row), { mark: mark(owed) });
    owed = row.balance;
    return set;
  });
  const none = paragraph(shaper, words(said.nothingMoved), { x: 0, width, size: SIZE.body, after: 4 });
  return [space(10), moveHeads(setting), opening, ...(rows.length === 0 ? none : rows)];
}

function cellsOf(setting: StatementSetting, row: StatementRow): readonly string[] {
  const { words: w, said, amount } = setting;
  const method = row.method === null ? '' : `, ${w.method[row.method]}`;
  const name = [said.kind[row.kind], row.number === null ? '' : String(row.number)]
    .filter((one) => one !== '')
    .join(' ');
  const sum = amount(Math.abs(row.amount));
  const [owed, paid] = row.amount < 0 ? ['', sum] : [sum, ''];
  return [
    w.date(row.on, oneYear(setting)),
    `${name}${method}`,
    aboutText(setting, row.about),
    owed,
    paid,
    amount(row.balance),
  ];
}

/** Opening, what came and went, closing: kept together at the right; the sum that is owed in the accent. */
export function sumsBlock(setting: StatementSetting): readonly Block[] {
  const { document, said, width, amount } = setting;
  const { sums, closing } = document;
  const rows: [string, number][] = [
    [said.openingSum, document.opening],
    [said.invoiced, sums.invoiced],
    [said.credited, -sums.credited],
    [said.paid, -sums.paid],
    [said.back, sums.back],
    [said.rounding, sums.rounding],
  ];
  const shown = rows.filter(([, sum], at) => at === 0 || sum !== 0);
  const label = closing > 0 ? said.toPay : closing < 0 ? said.inYourFavour : said.settled;
  const sum = stacked([
    ...shown.map(([words, figure]) => sumRow(setting, words, amount(figure))),
    lastRow(setting, label, amount(Math.abs(closing))),
  ]);
  return [
    block(8, [rule(0, 0, width, 1.125)], { keep: true, lead: true }),
    block(sum.height, moved(sum.items, width - SUMS_WIDTH, 0)),
    space(10),
  ];
}

function sumRow({ shaper }: StatementSetting, label: string, figure: string): Block {
  const at = { x: 0, y: 0, width: SUMS_WIDTH, size: SIZE.body };
  const text = setText(shaper, words(label), at);
  const sum = setText(shaper, words(figure), { ...at, align: 'right' });
  return block(text.height + 1.2, [...text.items, ...sum.items]);
}

/** As the other papers set the one figure that matters. */
function lastRow({ shaper, document }: StatementSetting, label: string, figure: string): Block {
  const size = SIZE.toPay;
  const at = { x: 0, width: SUMS_WIDTH, size, leading: 1.2 };
  const { sign } = document.currency;
  const signX = textWidth(shaper, label, 'bold', size) + 6;
  const signWidth = textWidth(shaper, sign, 'body', SIZE.body);
  const beside = signX + signWidth + 12 + textWidth(shaper, figure, 'bold', size) <= SUMS_WIDTH;
  const text = setText(shaper, words(label, 'bold', true), { ...at, y: 8 });
  const y = beside ? 8 : 8 + text.height;
  const sum = setText(shaper, words(figure, 'bold', true), { ...at, y, align: 'right' });
  const unit = setText(shaper, words(sign), {
    ...{ x: signX, y: 0, foot: text.items[0]?.y ?? 0, width: SUMS_WIDTH - signX, size: SIZE.body },
  });
  const items: Item[] = [rule(0, 4, SUMS_WIDTH, 2.25, true), ...text.items, ...unit.items, ...sum.items];
  return block(y + sum.height, items);
}
