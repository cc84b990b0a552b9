import { hrefOf } from '../../renderer/frame/router.ts';
import { PLAIN_WRITING } from '../../renderer/words/figures.ts';
import { t } from '../../renderer/words/t.ts';
import { weekdayText } from '../../renderer/words/times.ts';
import { now, today } from './clock.ts';
import { Keys } from './keys.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, openOrder } from './window.ts';

/** The bays of the day, and the list of orders. */

const DAY = 86_400_000;

test('a car given a bay for today stands in the strip, and leads to its order', async ({ garage, page }) => {
  const id = await garage.booked();
  await enter(page, garage);
  await openOrder(page, garage, id);
  await page.getByRole('button', { name: t('orders.giveBay') }).click();
  await page.getByLabel(t('intake.bay'), { exact: true }).selectOption({ index: 1 });
  await page.getByLabel(t('intake.day'), { exact: true }).fill(today());
  await page.getByLabel(t('intake.from'), { exact: true }).fill('10:30');
  await page.getByRole('button', { name: t('orders.bookBay') }).click();
  await expect(page.getByRole('button', { name: t('orders.moveBay') })).toBeVisible();
  expect((await garage.order(id)).booking).toMatchObject({ bay: 'Bay 1', day: today(), from: '10:30', hours: 1000 });
  await page.keyboard.press('Alt+1');
  const strip = page.getByRole('group', { name: t('today.strip') });
  await strip.getByRole('link', { name: /KTB 4471 .*10:30.*11:30/ }).click();
  await expect(page).toHaveURL(new RegExp(id));
});

test('two cars in one bay at one time: told while it is booked, not forbidden', async ({ garage, page }) => {
  const { bays } = await garage.did('Odile', 'shop.get', {});
  const next = new Date(now() + DAY);
  // The garage works from Monday to Friday.
  while (next.getUTCDay() % 6 === 0) next.setTime(next.getTime() + DAY);
  const booking = { bayId: bays[0]?.id ?? '', day: next.toISOString().slice(0, 10), from: '08:00', hours: 3000 };
  await garage.booked({ booking, here: false });
  const id = await garage.booked({ car: { add: { plate: 'HLM 93', words: 'Oriel', unit: 'km' } } });
  await enter(page, garage);
  await openOrder(page, garage, id);
  await page.getByRole('button', { name: t('orders.giveBay') }).click();
  const days = page.getByRole('group', { name: t('intake.whichDay') });
  await days.getByText(weekdayText(next.getTime(), PLAIN_WRITING).replace(/ \S+$/, '')).click();
  // The first gap after the other car is offered.
  await expect(page.getByLabel(t('intake.from'), { exact: true })).toHaveValue('11:00');
  await page.getByLabel(t('intake.from'), { exact: true }).fill('09:00');
  await expect(page.getByText(t('intake.clash', { car: 'KTB 4471', bay: 'Bay 1', from: '8:00' }))).toBeVisible();
  await page.getByRole('button', { name: t('orders.bookBay') }).click();
  await expect.poll(async () => (await garage.order(id)).booking?.from).toBe('09:00');
});

test('orders by keys: a peek, the next one, and open', async ({ garage, page }) => {
  const first = await garage.booked();
  await garage.job(first);
  const second = await garage.booked({ car: { add: { plate: 'HLM 93', words: 'Oriel', unit: 'km' } } });
  const keys = new Keys(page);
  await keys.enter(garage);
  await keys.press('Alt+2');
  await expect(page.getByRole('link', { name: /HLM 93/ })).toBeVisible();
  await keys.press('ArrowDown', 'ArrowDown', ' ');
  await expect(page.getByText('Find the whine').last()).toBeVisible();
  await expect(page.getByText(t('orders.noYes'))).toBeVisible();
  await keys.press('ArrowUp', 'Enter');
  await expect(page).toHaveURL(new RegExp(second));
  keys.report('an order peeked into, another opened', 22);
});

test('the sentence over the orders says which, and what none of them holds', async ({ garage, page }) => {
  await garage.job(await garage.booked());
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('orders')}`);
  await page.getByRole('textbox', { name: t('orders.text') }).fill('whine');
  await expect(page.getByRole('link', { name: /KTB 4471/ })).toBeVisible();
  await page.getByRole('textbox', { name: t('orders.text') }).fill('gearbox');
  await expect(page.getByText(t('orders.noneHold', { text: 'gearbox' }))).toBeVisible();
  await page.getByRole('textbox', { name: t('orders.text') }).fill('');
  await page.getByLabel(t('orders.which')).selectOption('unpaid');
  await expect(page.getByText(t('orders.none-unpaid'))).toBeVisible();
});
