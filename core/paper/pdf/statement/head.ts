import { timeShown } from '../../../time/time-shown.ts';
import { spanText } from '../../statement-words.ts';
import { type Block, block, type Item, rule, SIZE, setText, words } from '../block.ts';
import { firstLine } from '../head.ts';
import { textWidth } from '../text.ts';
import type { StatementSetting } from './setting.ts';

/** 'Statement' and its days, above who it is for, and what it was made from. */
export function titleRow({ document, said, shaper, width }: StatementSetting): Block {
  const span = spanText(document);
  const large = { y: 8, size: SIZE.title, leading: 1.2 };
  const title = setText(shaper, words(said.title, 'head'), { ...large, x: 0, width });
  const end = textWidth(shaper, said.title, 'head', SIZE.title) + 16;
  const beside = end + textWidth(shaper, span, 'figure', SIZE.toPay) <= width;
  const foot = title.items[0]?.y ?? 0;
  const days = setText(shaper, words(span, 'figure'), {
    ...{ x: 0, y: large.y + title.height, width, size: SIZE.toPay, align: 'right', leading: 1.2 },
    ...(beside ? { foot } : {}),
  });
  const height = large.y + title.height + (beside ? 0 : days.height) + 2;
  return block(height, [rule(0, 1.125, width, 2.25, true), ...title.items, ...days.items]);
}

/** For whom, which days, and as of when. */
export function facts({ document, words: w, said, shaper, width, date }: StatementSetting): Block {
  const { to, taxNumber, asOf } = document;
  const gap = 18;
  const left = width * 0.5;
  const column = (label: string, lines: readonly string[], x: number, wide: number, bold: boolean) => {
    const items: Item[] = [];
    let y = 7;
    const put = (text: string, style: 'body' | 'bold', size: number) => {
      const set = setText(shaper, words(text, style), { x, y, width: wide, size, leading: 1.34 });
      items.push(...set.items);
      y += set.height;
    };
    put(label, 'body', SIZE.small);
    lines.forEach((line, at) => void put(line, bold && at === 0 ? 'bold' : 'body', SIZE.body));
    return { items, bottom: y };
  };
  const named = [...to.filter((line) => line !== ''), ...(taxNumber === '' ? [] : [w.taxNumber(taxNumber)])];
  const parts = [
    column(w.facts.for, named, 0, left - gap, true),
    column(said.madeFrom, [said.asOf(date(asOf.date), timeShown(asOf.time))], left, width - left, false),
  ];
  const height = Math.max(...parts.map(({ bottom }) => bottom)) + 6;
  return block(height, [
    ...[rule(0, 0, width, 0.56), rule(0, height, width, 0.56)],
    ...parts.flatMap(({ items }) => items),
  ]);
}

/** The head from page 2 on: one line and a rule. */
export function shortHead({ document, words: w, said, shaper, width }: StatementSetting): Block {
  const { garage, practice, to } = document;
  const left = practice ? `${w.practice}, ${garage.name}` : garage.name;
  const right = [`${said.title} ${spanText(document)}`, to[0] ?? ''].filter((one) => one !== '').join(' · ');
  const wide = Math.min(textWidth(shaper, right, 'body', SIZE.body), width * 0.62);
  return block(30, [
    ...firstLine(shaper, left, 'head', width - wide - 20, SIZE.job, 0),
    ...firstLine(shaper, right, 'body', width * 0.62, SIZE.body, width),
    rule(0, 19, width, 1.125, true),
  ]);
}

/** The foot of every page. */
export function foot(
  { document, words: w, said, shaper, width, date }: StatementSetting,
  page: number,
  of: number,
): readonly Item[] {
  const { garage, practice, to, until } = document;
  const town = garage.address.filter((line) => line !== '').at(-1);
  const from = town ? `${garage.name}, ${town}` : garage.name;
  const named = [`${said.title} ${date(until)}`, to[0] ?? ''].filter((one) => one !== '').join(' · ');
  const right = `${named}, ${w.page(page, of)}`;
  const most = width * 0.62;
  const wide = Math.min(textWidth(shaper, right, 'body', SIZE.small), most);
  const pages = w.page(page, of);
  // A name longer than its place is cut, never the number of the page.
  const fits = textWidth(shaper, right, 'body', SIZE.small) <= most ? right : pages;
  return [
    ...firstLine(shaper, practice ? `${w.practice}, ${from}` : from, 'body', width - wide - 20, SIZE.small, 0),
    ...firstLine(shaper, fits, 'body', most, SIZE.small, width),
  ];
}
