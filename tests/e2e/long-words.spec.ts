import type { Page } from '@playwright/test';
import { hrefOf, PLACES, type PlaceName } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expect, test } from './shop-fixture.ts';
import { enter } from './window.ts';

/**
 * A language with words twice as long, made of the words that stand there: a single word is stretched to at most 14
 * letters (what the design promises room for), more than one word are said twice. Returns what no longer fits: text that
 * leaves its page at the side, or is cut by what it stands in.
 */
function stretched(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const longer = (text: string): string => {
      const words = text.trim().split(/\s+/);
      if (words.length > 1) return `${text.trimEnd()} ${text.trim()}`;
      const [word = ''] = words;
      const room = Math.min(word.length * 2, 14) - word.length;
      return room > 0 && /^\p{L}{3,}$/u.test(word) ? text.replace(word, word + word.slice(-1).repeat(room)) : text;
    };
    const nodes: Text[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
      if (
        node instanceof Text &&
        node.data.trim() !== '' &&
        !node.parentElement?.closest('svg, script, style, kbd, .plate, .mark')
      )
        nodes.push(node);
    for (const node of nodes) node.data = longer(node.data);
    const out: string[] = [];
    for (const node of nodes) {
      const parent = node.parentElement;
      if (parent === null || parent.closest('.aloud') !== null) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const box = range.getBoundingClientRect();
      if (box.width === 0) continue;
      const holder = (
        parent.closest('.page, .desk, .rail, .dialog, .place-foot') ?? document.body
      ).getBoundingClientRect();
      const name = `${parent.tagName.toLowerCase()}.${parent.className} “${node.data.slice(0, 40)}”`;
      if (box.right > holder.right + 1 || box.left < holder.left - 1) out.push(`leaves the page: ${name}`);
      for (let at: Element | null = parent; at !== null && at !== document.body; at = at.parentElement) {
        const { overflowX, textOverflow } = getComputedStyle(at);
        // A list that ends a long name with its dots does so on purpose.
        if (overflowX === 'visible' || textOverflow === 'ellipsis') continue;
        if (overflowX !== 'auto' && box.right > at.getBoundingClientRect().right + 1) out.push(`is cut: ${name}`);
        break;
      }
    }
    for (const page of document.querySelectorAll('.page, .desk'))
      if (page.scrollWidth > page.clientWidth + 1)
        out.push(`the page scrolls sideways by ${page.scrollWidth - page.clientWidth}`);
    return out;
  });
}

const SIZES = [
  { what: '1280', width: 1280, height: 800, text: 100 },
  { what: '1920', width: 1920, height: 1080, text: 100 },
  { what: 'a tablet', width: 820, height: 1180, text: 100 },
  { what: 'text of 200 %', width: 1440, height: 900, text: 200 },
] as const;

const SHOP = ['garage', 'tax', 'rates', 'people', 'bays', 'reminding', 'yes', 'numbers', 'keys', 'program'] as const;

for (const { what, width, height, text } of SIZES)
  test(`words twice as long break no page: ${what}`, async ({ garage, page }) => {
    await page.setViewportSize({ width, height });
    const id = await garage.booked();
    await garage.job(id);
    const { customer, car } = await garage.order(id);
    await garage.did('Piet', 'reminder.add', { carId: car.id, words: 'Brake fluid', dueOn: '2020-01-01' });
    await enter(page, garage);
    await page.evaluate((textSize) => localStorage.setItem('crownwheel-machine', JSON.stringify({ textSize })), text);
    const pages: readonly [PlaceName, ...string[]][] = [
      ...PLACES.map((place): [PlaceName] => [place]),
      ['orders', id],
      ['cars', car.id],
      ['customers', customer.id],
      ['customers', 'reminders'],
      ...SHOP.map((part): [PlaceName, string] => ['shop', part]),
    ];
    for (const [place, ...path] of pages) {
      await page.goto(`${garage.door.host.address}/${hrefOf(place, ...path)}`);
      await page.reload();
      const main = page.getByRole('main', { name: t(`frame.${place}`), exact: true });
      await expect(main.getByRole('heading', { level: 1 }).first()).toBeVisible();
      await page.waitForLoadState('networkidle');
      await page.evaluate(() => document.fonts.ready);
      expect.soft(await stretched(page), `${what}, ${hrefOf(place, ...path)}`).toEqual([]);
    }
  });
