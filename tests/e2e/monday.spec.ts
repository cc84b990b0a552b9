import type { Page } from '@playwright/test';
import { STARTING_JOBS } from '../../core/bench/starting-jobs.ts';
import { t } from '../../renderer/words/t.ts';
import type { Garage } from './garage.ts';
import { Keys } from './keys.ts';
import { mondayMorning, VIN } from './monday-shop.ts';
import { expect, test } from './shop-fixture.ts';
import { SWAP_TITLE } from './swap.ts';
import { field, opensPaper, printsPaper, sheetOf } from './window.ts';

/** A Monday at the desk: a dozen calls one after the other, the keyboard and nothing else. Each has its ceiling of keys. */
test.use({ begins: '2026-11-09T09:00:00Z' });

/** The calls as they come, each with what it took. */
class Calls {
  readonly keys: Keys;
  readonly rows: { call: string; keystrokes: number; most: number }[] = [];

  constructor(page: Page) {
    this.keys = new Keys(page);
  }

  /** One call; `measured` keystrokes were counted once, 15 % more are its ceiling. */
  take(call: string, measured: number, answer: (keys: Keys) => Promise<void>): Promise<void> {
    return test.step(call, async () => {
      const before = this.keys.count;
      await answer(this.keys);
      this.rows.push({ call, keystrokes: this.keys.count - before, most: Math.floor(measured * 1.15) });
    });
  }

  /** The table, and which calls took more than they may. */
  get table(): string {
    const wide = Math.max(...this.rows.map(({ call }) => call.length));
    const total = this.rows.reduce((sum, { keystrokes }) => sum + keystrokes, 0);
    return [...this.rows, { call: 'all of them', keystrokes: total, most: Number.NaN }]
      .map(
        ({ call, keystrokes, most }) =>
          `${call.padEnd(wide)} ${`${keystrokes}`.padStart(5)}${most > 0 ? ` of ${most}` : ''}`,
      )
      .join('\n');
  }
  get tooMany(): string[] {
    return this.rows.filter(({ keystrokes, most }) => keystrokes > most).map(({ call }) => call);
  }
}

const heading = (page: Page) => page.getByRole('heading', { level: 1 });
const hits = (page: Page) => page.getByRole('listbox', { name: t('frame.findHits') }).getByRole('option');

/** What somebody remembers, into the find line; the hit that is meant stands so many rows down. */
async function find(page: Page, keys: Keys, text: string, first: RegExp, down = 0): Promise<void> {
  // Ctrl K also from a field, which / does not.
  await keys.press('Control+k');
  await keys.type(text);
  await expect(hits(page).nth(down)).toContainText(first);
  for (let row = 0; row < down; row += 1) await keys.press('ArrowDown');
  await keys.press('Enter');
}

const orderIdOf = (page: Page) => page.url().split('/').at(-1) ?? '';
const todayRow = (page: Page, plate: string) => page.locator('a.today-row', { hasText: plate });

async function newCustomerBooksASwap(page: Page, garage: Garage, keys: Keys): Promise<void> {
  await keys.press('n');
  await expect(field(page, t('intake.phone'))).toBeFocused();
  await keys.type('555-0170');
  await keys.to(field(page, t('intake.name')));
  await keys.type('Mara Dove');
  await keys.to(field(page, t('intake.plate')));
  await keys.type('DVM 20');
  await keys.to(field(page, t('intake.words')));
  await keys.type('Corvane R');
  await keys.to(field(page, t('intake.complaint')));
  await keys.type('Whines, wants the swap.');
  // Tomorrow, in the emptiest bay, for as long as the job book says.
  await keys.choose(page, t('intake.whichDay'), /^Tue 10/);
  await keys.to(field(page, t('intake.hours')));
  await keys.over('6.2');
  await keys.press('Control+Enter');
  await expect(sheetOf(page)).toContainText('DVM 20');
  await keys.press('Alt+j');
  await expect(page.getByRole('combobox', { name: t('sheet.newJob') })).toBeFocused();
  await keys.type(SWAP_TITLE);
  await keys.press('Enter');
  await expect(page.getByRole('textbox', { name: t('sheet.jobTitle', { letter: 'A' }) })).toHaveValue(SWAP_TITLE);
  const order = await garage.order(orderIdOf(page));
  expect(order).toMatchObject({
    ...{ customer: { name: 'Mara Dove' }, arrivedAt: null, jobs: [{ title: SWAP_TITLE }] },
    booking: { day: '2026-11-10', hours: 6200 },
  });
}

test('a Monday by keys alone: a dozen calls, two who do not come and a mechanic who is ill', async ({
  garage,
  page,
}) => {
  const shop = await mondayMorning(garage);
  const calls = new Calls(page);
  await calls.keys.enter(garage);

  await calls.take('somebody new books a swap', 154, (keys) => newCustomerBooksASwap(page, garage, keys));

  await calls.take('known by three letters, mid-plate, end of VIN, end of a number', 22, async (keys) => {
    await find(page, keys, 'van', /Ilse Vandermeer/);
    await expect(heading(page)).toContainText('Ilse Vandermeer');
    await find(page, keys, '447', /KTB 4471/);
    await expect(heading(page)).toContainText('KTB 4471');
    await find(page, keys, VIN.slice(-4), new RegExp(VIN));
    await expect(heading(page)).toContainText('KTB 4471');
    await find(page, keys, '0142', /Ilse Vandermeer/);
    await expect(heading(page)).toContainText('Ilse Vandermeer');
  });

  await calls.take('asks whether it is ready, and is told half past three', 21, async (keys) => {
    await find(page, keys, 'mrs', /Clunks|MRS 12|\d/, 1);
    await expect(sheetOf(page)).toContainText('MRS 12');
    await keys.to(page.getByRole('button', { name: t('edit.headOpen') }));
    await keys.press('Enter');
    await keys.to(field(page, t('edit.promise')));
    await keys.type('today 15:30');
    await keys.press('Tab');
    const told = Date.parse('2026-11-09T15:30:00Z');
    await expect.poll(async () => (await garage.order(shop.ready)).promiseAt).toBe(told);
  });

  await calls.take('says yes by phone', 23, async (keys) => {
    await find(page, keys, 'nvo', /\d/, 1);
    await expect(sheetOf(page)).toContainText('NVO 31');
    await keys.press('Alt+y');
    const form = page.getByRole('form', { name: t('decision.title') });
    await expect(form).toBeVisible();
    await keys.choose(form, t('decision.how'), t('decision.way-phone'));
    await keys.to(field(form, t('decision.wordsLabel')));
    await keys.type('Go ahead.');
    await keys.press('Control+Enter');
    await expect(form).toBeHidden();
    // An hour and a half at 96.00, supplies 5 % of it, 20 % tax: 181.44, as reckoned beside the line.
    expect((await garage.order(shop.asked)).decisions).toMatchObject([{ way: 'phone', ceiling: 18_144 }]);
  });

  await calls.take('two who did not come', 58, async (keys) => {
    await keys.press('Alt+1');
    await keys.to(page.getByRole('link', { name: t('today.week') }));
    await keys.press('Enter');
    for (const plate of ['RIN 40', 'FLK 90']) {
      await keys.to(page.getByRole('button', { name: new RegExp(`^${plate}`) }));
      await keys.press('Enter');
      await keys.to(page.getByRole('button', { name: t('plan.noShow') }), 'Shift+Tab');
      await keys.press('Enter');
      await expect(page.getByText(t('plan.noted', { name: plate }))).toBeVisible();
    }
    for (const id of shop.missed) expect((await garage.order(id)).next.what).toBe('was-expected');
  });

  await calls.take('Runa is ill: the day holds less, and a promise turns', 22, async (keys) => {
    const free = async () =>
      (await garage.did('Odile', 'booking.capacity', { from: '2026-11-09', to: '2026-11-09' })).days[0]?.free ?? 0;
    const before = await free();
    await keys.press('Alt+1');
    const row = todayRow(page, 'OYB 902');
    await expect(row).not.toContainText(t('parts.soon'));
    await keys.to(page.getByRole('link', { name: t('today.week') }));
    await keys.press('Enter');
    const monday = page.getByRole('region', { name: t('plan.dayOf', { day: 'Mon 9 Nov' }) });
    await keys.to(monday.getByRole('button', { name: /^Runa/ }));
    await keys.press('Enter');
    await keys.to(page.getByLabel(t('plan.why')));
    await keys.type('ill');
    await keys.press('Enter');
    await expect(monday).toContainText(t('plan.personAwayWhy', { name: 'Runa', words: 'ill' }));
    // Eight hours less, at the planned share of 85 %.
    expect(await free()).toBe(before - 6800);
    await keys.press('Alt+1');
    await expect(row).toContainText(t('parts.soon'));
    await expect(row).toContainText(t('today.doneTooLate', { n: 1, time: '' }).split(':')[0] ?? '');
  });

  await calls.take('a van by its plate of last year, and by its plate of now', 10, async (keys) => {
    await find(page, keys, '481', /GSB 481.*Gull Street/);
    await expect(heading(page)).toContainText('WXY 700');
    await find(page, keys, 'wxy', /WXY 700/);
    await expect(heading(page)).toContainText('WXY 700');
  });

  await calls.take('one customer under two names, joined, and parted again', 15, async (keys) => {
    await find(page, keys, 'lena', /Lena Osker/);
    await expect(heading(page)).toContainText('Lena Osker');
    await keys.to(page.getByRole('button', { name: t('customers.joinOf', { name: 'Helene Osker' }) }));
    await keys.press('Enter');
    await keys.to(page.getByRole('button', { name: t('customers.joinGo') }));
    await keys.press('Enter');
    const joined = async () => (await garage.did('Odile', 'customer.get', { id: shop.lena.customerId })).joined.length;
    await expect.poll(joined).toBe(1);
    await keys.to(page.getByRole('button', { name: t('customers.part') }));
    await keys.press('Enter');
    await expect.poll(joined).toBe(0);
  });

  await calls.take('a car is sold: its history without the person, and its new owner', 39, async (keys) => {
    await find(page, keys, 'tbk', /TBK 555/);
    await expect(heading(page)).toContainText('TBK 555');
    await keys.to(page.getByRole('button', { name: t('cars.history') }));
    await keys.press('Enter');
    await keys.choose(page, t('cars.historyFor'), t('cars.history-later-owner'));
    await keys.to(page.getByRole('button', { name: t('cars.historyMake') }));
    const [file] = await Promise.all([page.waitForEvent('download'), keys.press('Enter')]);
    expect(file.suggestedFilename()).toMatch(/TBK/);
    await keys.to(page.getByRole('button', { name: t('cars.newOwner') }));
    await keys.press('Enter');
    await keys.to(field(page, t('cars.ownerNow')));
    await keys.type('Jon Averin');
    await keys.to(page.getByRole('button', { name: t('customers.addNamed', { name: 'Jon Averin' }) }));
    await keys.press('Enter');
    const owners = async () =>
      (await garage.did('Odile', 'car.get', { id: shop.sold.carId })).owners.map(({ name }) => name);
    await expect.poll(owners).toEqual(['Tilda Brok', 'Jon Averin']);
  });

  await calls.take('what does it cost: a part by its number, a job of the book', 11, async (keys) => {
    await find(page, keys, '583', /O-ring 58 x 3/);
    await expect(field(page, t('stock.price'))).toHaveValue('6.40');
    await keys.press('Alt+6');
    const job = page.getByRole('link', { name: STARTING_JOBS[0]?.title ?? '' });
    await expect(job).toBeVisible();
    await keys.to(job, 'ArrowDown');
    await keys.press('Enter');
    await expect(page.getByRole('region', { name: t('jobBook.procedure') })).toBeVisible();
  });

  await calls.take('wants a paper of last year again', 13, async (keys) => {
    await keys.press('Control+k');
    await keys.type(`${shop.old.invoice}`);
    await expect(hits(page).first()).toContainText(t('frame.paper-invoice'));
    await opensPaper(page, () => keys.press('Enter'));
    await find(page, keys, `${shop.old.order}`, /KTB 4471/);
    await expect(sheetOf(page)).toContainText('KTB 4471');
    await printsPaper(page, () => keys.press('Alt+p'));
  });

  await calls.take('two wiper blades over the counter', 27, async (keys) => {
    await keys.press('Alt+4');
    await keys.to(page.getByRole('button', { name: t('customers.sale') }));
    await keys.press('Enter');
    await expect(field(page, t('customers.saleWho'))).toBeFocused();
    await keys.type('vande');
    await keys.to(page.getByRole('button', { name: /^Ilse Vandermeer/ }));
    await keys.press('Enter');
    await expect(field(page, t('customers.saleWant', { name: 'Ilse Vandermeer' }))).toBeFocused();
    await keys.type('Two wiper blades');
    await keys.press('Enter');
    await expect(sheetOf(page)).toContainText('Two wiper blades');
    expect(await garage.order(orderIdOf(page))).toMatchObject({ counterSale: true, complaint: 'Two wiper blades' });
  });

  console.log(calls.table);
  expect(calls.tooMany).toEqual([]);
});
