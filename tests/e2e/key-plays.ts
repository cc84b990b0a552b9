import { type Does, PLACE_KEYS } from '../../renderer/frame/key-map.ts';
import { PLACES } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import type { KeyStage } from './key-stage.ts';
import { expect } from './shop-fixture.ts';
import { field, sheetOf } from './window.ts';

/** What the shop holds for the plays. */
export interface Ids {
  /** An order with a job of two lines that waits for a yes, and a quote. */
  readonly orderId: string;
  /** One with a job of the book that was said yes to. */
  readonly benchId: string;
  readonly bookJobId: string;
}
type Play = (stage: KeyStage, ids: Ids) => Promise<void>;

const title = (stage: KeyStage) => stage.page.getByRole('heading', { level: 1 });
const yesForm = (stage: KeyStage) => stage.page.getByRole('form', { name: t('decision.title') });
const find = (stage: KeyStage) => stage.page.getByRole('combobox', { name: t('frame.find') });

const everywhere = {
  find: async (stage) => {
    await stage.leadsTo('/', find(stage));
    await stage.press('Esc');
    await expect(find(stage)).not.toBeFocused();
    await stage.leadsTo('Ctrl+K', find(stage));
    await stage.press('Esc');
  },
  book: async (stage) => {
    await stage.press('N');
    await expect(title(stage)).toHaveText(t('intake.title'));
  },
  myClock: async (stage, { benchId }) => {
    const runs = async () => (await stage.garage.did('Odile', 'today.get', {})).open.length;
    await stage.at('orders', benchId);
    await expect(stage.page.getByRole('region', { name: t('bench.clocks') })).toBeVisible();
    await stage.press('Alt+S');
    await expect.poll(runs).toBe(1);
    await stage.at('money');
    await stage.press('Alt+S');
    await expect.poll(runs).toBe(0);
  },
  mainAction: async (stage, { orderId }) => {
    await stage.at('orders', orderId);
    await stage.press('Ctrl+Enter');
    await expect(yesForm(stage)).toBeVisible();
  },
  leave: async (stage) => {
    await expect(yesForm(stage)).toBeVisible();
    await stage.press('Esc');
    await expect(yesForm(stage)).toBeHidden();
    // The cell first: what was typed in it goes back.
    const cell = field(sheetOf(stage.page), t('sheet.jobTitle', { letter: 'A' }));
    await cell.fill('Something else');
    await stage.press('Esc');
    await expect(cell).toHaveValue('Find the whine');
    await expect(cell).not.toBeFocused();
  },
  theseKeys: async (stage) => {
    const sheet = stage.page.getByRole('dialog', { name: t('keys.title') });
    await stage.press('?');
    await expect(sheet).toBeVisible();
    await stage.press('Esc');
    await expect(sheet).toBeHidden();
  },
} as const satisfies Partial<Record<Does, Play>>;

/** The keys of the places, one after the other. */
export async function playPlaces(stage: KeyStage): Promise<void> {
  for (const place of PLACES.toReversed()) {
    await stage.press(PLACE_KEYS[place]);
    await expect(stage.page).toHaveURL(new RegExp(`#/${place}$`));
    await expect(stage.page.getByRole('main', { name: t(`frame.${place}`) })).toBeVisible();
  }
}

const LISTS = [
  ['today', 'a.today-row'],
  ['orders', 'a.order-row'],
  ['cars', '.list-rows a'],
  ['customers', '.list-rows a'],
  ['stock', 'a.stock-row'],
  ['job-book', '.book-table a'],
] as const;

const lists = {
  rows: async (stage) => {
    for (const [place, rows] of LISTS) {
      await stage.at(place);
      const row = (n: number) => stage.page.locator(rows).nth(n);
      await stage.leadsTo('ArrowDown', row(0));
      await stage.leadsTo('ArrowDown', row(1));
      await stage.leadsTo('ArrowUp', row(0));
    }
  },
  openRow: async (stage) => {
    for (const [place, rows] of LISTS) {
      await stage.at(place);
      await stage.leadsTo('ArrowDown', stage.page.locator(rows).first());
      const to = (await stage.page.locator(rows).first().getAttribute('href')) ?? '';
      await stage.press('Enter');
      expect(to).toMatch(/^#\/[a-z-]+\/./);
      await expect.poll(() => new URL(stage.page.url()).hash).toBe(to);
    }
  },
} as const satisfies Partial<Record<Does, Play>>;

const orders = {
  peek: async (stage) => {
    await stage.at('orders');
    await stage.leadsTo('ArrowDown', stage.page.locator('a.order-row').first());
    await stage.press('Space');
    await expect(stage.page.locator('.order-peek')).toHaveCount(1);
  },
  printRow: async (stage) => {
    await expect(stage.page.locator('.order-peek').getByRole('button').first()).toBeVisible();
    await stage.opensPaper('Alt+P');
  },
  filter: async (stage) => {
    await stage.leadsTo('F', stage.page.getByRole('combobox', { name: t('orders.which') }));
    await stage.page.keyboard.press('Escape');
    await stage.page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
  },
  weekOn: async (stage) => {
    const rows = stage.page.locator('a.order-row');
    const at = () => stage.page.evaluate(() => Number((document.activeElement as HTMLElement).dataset.at ?? 0));
    await rows.first().focus();
    const first = await at();
    await stage.press('PageDown');
    await expect.poll(at).toBeLessThanOrEqual(first - 7 * 86_400_000);
  },
  months: async (stage) => {
    const bar = stage.page.getByRole('slider', { name: t('orders.months') });
    const now = async () => Number(await bar.getAttribute('aria-valuenow'));
    const most = Number(await bar.getAttribute('aria-valuemax'));
    await bar.focus();
    await stage.press('Home');
    await expect.poll(now).toBe(0);
    await stage.press('ArrowDown');
    await expect.poll(now).toBe(1);
    await stage.press('ArrowUp');
    await expect.poll(now).toBe(0);
    await stage.press('PageDown');
    // Give or take a month, while the weeks on the way take the room that they need.
    await expect.poll(async () => Math.abs((await now()) - 12)).toBeLessThanOrEqual(1);
    await stage.press('PageUp');
    await expect.poll(now).toBeLessThanOrEqual(1);
    await stage.press('End');
    // The last months share the last screen.
    await expect.poll(now).toBeGreaterThan(most - 12);
  },
} as const satisfies Partial<Record<Does, Play>>;

const sheet = {
  nextCell: async (stage, { orderId }) => {
    await stage.at('orders', orderId);
    await field(stage.page, t('sheet.cellQuantity', { words: 'Road test' })).focus();
    await stage.leadsTo('Tab', field(stage.page, t('sheet.cellPrice', { words: 'Road test' })));
  },
  nextLine: async (stage) => {
    await field(stage.page, t('sheet.cellPrice', { words: 'Road test' })).focus();
    await stage.leadsTo('Enter', field(stage.page, t('sheet.cellPrice', { words: 'Plug washer' })));
  },
  lineAbove: async (stage) => {
    await stage.leadsTo('Shift+Enter', field(stage.page, t('sheet.cellPrice', { words: 'Road test' })));
  },
  undo: async (stage, { orderId }) => {
    const price = async () => (await stage.garage.order(orderId)).jobs[0]?.lines[0]?.unitPrice;
    const before = await price();
    const cell = field(stage.page, t('sheet.cellPrice', { words: 'Road test' }));
    await cell.fill('80');
    await stage.press('Tab');
    await expect.poll(price).toBe(8000);
    await expect(cell).toHaveValue('80.00');
    await stage.press('Ctrl+Z');
    await expect.poll(price).toBe(before);
  },
  newJob: async (stage) => {
    await stage.leadsTo('Alt+J', stage.page.getByRole('combobox', { name: t('sheet.newJob') }));
  },
  print: (stage) => stage.opensPaper('Alt+P'),
  bench: async (stage, { benchId }) => {
    await stage.at('orders', benchId);
    await stage.leadsTo('B', stage.page.getByRole('complementary', { name: t('bench.title') }));
  },
  tick: async (stage) => {
    const step = stage.page.getByRole('checkbox', { name: '2 Wipe it dry' });
    await step.focus();
    await stage.press('Space');
    await expect(step).toBeChecked();
  },
  recordYes: async (stage, { orderId }) => {
    await stage.at('orders', orderId);
    await stage.press('Alt+Y');
    await expect(yesForm(stage)).toBeVisible();
  },
} as const satisfies Partial<Record<Does, Play>>;

const yes = {
  answers: async (stage, { orderId }) => {
    await stage.at('orders', orderId, 'yes');
    const label = t('decision.answerOf', { letter: 'A', title: 'Find the whine' });
    const answers = stage.page.getByRole('group', { name: label });
    // From the field of the sum, which has the focus at first, back to the job.
    await expect(field(stage.page, t('decision.upToLabel'))).toBeFocused();
    await answers.getByRole('radio').first().focus();
    for (const [key, answer] of [
      ['N', 'no'],
      ['L', 'later'],
      ['Y', 'yes'],
    ] as const) {
      await stage.press(key);
      await expect(answers.getByRole('radio', { name: t(`decision.answer-${answer}`), exact: true })).toBeChecked();
    }
  },
} as const satisfies Partial<Record<Does, Play>>;

const MONDAY = '2026-11-16';

const bookings = {
  takeInHand: async (stage) => {
    const put = stage.page.getByRole('button', { name: t('plan.put') });
    await stage.at('today');
    await stage.page
      .getByRole('group', { name: t('today.strip') })
      .getByRole('link', { name: /HLM 93/ })
      .focus();
    await stage.press('Space');
    await expect(put).toBeVisible();
    await stage.press('Esc');
    await expect(put).toBeHidden();
    await stage.at('today', 'week', MONDAY);
    await stage.page.getByRole('button', { name: /^KTB 4471/ }).focus();
    await stage.press('Enter');
    await expect(put).toBeVisible();
  },
  moveBooking: async (stage) => {
    const place = (day: string, from: string) =>
      stage.page.getByText(t('plan.place', { bay: 'Bay 1', day, from, hours: '2' })).first();
    await stage.press('ArrowDown');
    await expect(place('Tue 17 Nov', '9:00')).toBeVisible();
    await stage.press('ArrowRight');
    await expect(place('Tue 17 Nov', '9:15')).toBeVisible();
    await stage.press('ArrowLeft');
    await expect(place('Tue 17 Nov', '9:00')).toBeVisible();
    await stage.press('ArrowUp');
    await expect(place('Mon 16 Nov', '9:00')).toBeVisible();
    await stage.press('ArrowDown');
  },
  putDown: async (stage, { orderId }) => {
    await stage.press('Enter');
    await expect.poll(async () => (await stage.garage.order(orderId)).booking?.day).toBe('2026-11-17');
  },
  week: async (stage) => {
    await stage.press('PageDown');
    await expect(stage.page.getByText('from 23 Nov 2026', { exact: false })).toBeVisible();
    await expect(stage.page).toHaveURL(/2026-11-23/);
    await stage.press('PageUp');
    await expect(stage.page).toHaveURL(/2026-11-16/);
  },
  moveMark: async (stage) => {
    await stage.at('today', 'book');
    await stage.page.getByRole('button', { name: t('intake.addMark') }).press('Enter');
    const mark = stage.page.getByRole('button', { name: /^Mark 1/ });
    await expect(mark).toBeFocused();
    const at = async () => {
      const box = await mark.boundingBox();
      return { x: Math.round(box?.x ?? 0), y: Math.round(box?.y ?? 0) };
    };
    const { x, y } = await at();
    await stage.press('ArrowRight');
    await expect.poll(async () => (await at()).x).toBeGreaterThan(x);
    await stage.press('ArrowLeft');
    await expect.poll(async () => (await at()).x).toBe(x);
    await stage.press('ArrowDown');
    await expect.poll(async () => (await at()).y).toBeGreaterThan(y);
    await stage.press('ArrowUp');
    await expect.poll(async () => (await at()).y).toBe(y);
  },
} as const satisfies Partial<Record<Does, Play>>;

// Its name says where a day came from that was filled in.
const until = (stage: KeyStage) => stage.page.getByRole('textbox', { name: t('quote.until') });
const day = (stage: KeyStage, name: string) =>
  stage.page.getByRole('dialog', { name: t('quote.until') }).getByRole('button', { name });

const days = {
  dayOn: async (stage, { orderId }) => {
    await stage.at('orders', orderId, 'quote');
    await until(stage).fill('18/11/2026');
    await stage.press('ArrowUp');
    await expect(until(stage)).toHaveValue('19/11/2026');
    await stage.press('ArrowDown');
    await expect(until(stage)).toHaveValue('18/11/2026');
  },
  month: (stage) => stage.opensOnto('Alt+ArrowDown', day(stage, '18 Nov 2026')),
  dayOfMonth: async (stage) => {
    await stage.leadsTo('ArrowRight', day(stage, '19 Nov 2026'));
    await stage.leadsTo('ArrowLeft', day(stage, '18 Nov 2026'));
    await stage.leadsTo('ArrowDown', day(stage, '25 Nov 2026'));
    await stage.leadsTo('ArrowUp', day(stage, '18 Nov 2026'));
  },
  monthOn: async (stage) => {
    await stage.leadsTo('Home', day(stage, '16 Nov 2026'));
    await stage.leadsTo('End', day(stage, '22 Nov 2026'));
    await stage.press('PageDown');
    await expect(day(stage, '22 Dec 2026')).toBeFocused();
    await stage.press('PageUp');
    await expect(day(stage, '22 Nov 2026')).toBeFocused();
  },
} as const satisfies Partial<Record<Does, Play>>;

const jobBook = {
  moveStep: async (stage, { bookJobId }) => {
    await stage.at('job-book', bookJobId);
    await stage.page.getByRole('button', { name: /^1 Clean it/ }).focus();
    await stage.press('Alt+ArrowDown');
    await expect(stage.page.getByRole('button', { name: /^2 Clean it/ })).toBeFocused();
    await stage.press('Alt+ArrowUp');
    await expect(stage.page.getByRole('button', { name: /^1 Clean it/ })).toBeFocused();
  },
  putStepBack: async (stage) => {
    await stage.press('Enter');
    await stage.page.getByRole('button', { name: t('jobBook.takeOutStep', { n: 1 }) }).press('Enter');
    await expect(stage.page.getByRole('button', { name: /Clean it/ })).toHaveCount(0);
    await stage.press('Ctrl+Z');
    await expect(stage.page.getByRole('button', { name: /^1 Clean it/ })).toBeVisible();
  },
} as const satisfies Partial<Record<Does, Play>>;

/** Of each row of the map what shows that it is so; a row without one does not compile. */
export const PLAYS: Readonly<Record<Does, Play>> = {
  ...{ ...everywhere, ...lists, ...orders, ...sheet },
  ...{ ...yes, ...bookings, ...days, ...jobBook },
};
