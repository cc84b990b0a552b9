import { readFile } from 'node:fs/promises';
import ICAL from 'ical.js';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { today } from './clock.ts';
import type { Garage } from './garage.ts';
import { Keys } from './keys.ts';
import { expect, test } from './shop-fixture.ts';
import { enter } from './window.ts';

/** The week: what is booked is moved by keys and by the mouse, and what speaks against it is told. */

const MONDAY = '2027-03-08';
const TUESDAY = '2027-03-09';

async function twoBooked(garage: Garage) {
  const { revision, bays } = await garage.did('Odile', 'shop.get', {});
  await garage.did('Odile', 'shop.bays', {
    revision,
    bays: [...bays, { id: null, name: 'Floor', words: 'by the door' }],
  });
  const shop = await garage.did('Odile', 'shop.get', {});
  const [one = '', two = ''] = shop.bays.map((bay) => bay.id);
  const place = { bayId: one, day: MONDAY, from: '09:00', hours: 2000 };
  const first = await garage.booked({ booking: place, here: false });
  const second = await garage.booked({
    ...{ car: { add: { plate: 'HLM 93', words: 'Oriel', unit: 'km' } }, here: false },
    booking: { ...place, from: '13:00', personId: garage.personId('Runa') },
  });
  return { first, second, one, two };
}

const bookingOf = async (garage: Garage, id: string) => (await garage.order(id)).booking;

test('a booking is moved by keys alone, and put back', async ({ garage, page }) => {
  const { first } = await twoBooked(garage);
  const keys = new Keys(page);
  await keys.enter(garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('today', 'week', MONDAY)}`);
  const block = page.getByRole('button', { name: /^KTB 4471/ });
  await expect(block).toBeVisible();
  await keys.to(block);
  await keys.press('Enter', 'ArrowRight', 'ArrowRight', 'ArrowDown', 'ArrowDown');
  await expect(
    page.getByText(t('plan.place', { bay: 'Bay 1', day: 'Tue 9 Mar', from: '9:30', hours: '2' })),
  ).toBeVisible();
  await keys.press('Enter');
  await expect.poll(() => bookingOf(garage, first)).toMatchObject({ bay: 'Bay 1', day: TUESDAY, from: '09:30' });
  await expect(page.getByRole('button', { name: /^KTB 4471/ })).toBeFocused();
  await keys.to(page.getByRole('button', { name: t('plan.putBack') }), 'Shift+Tab');
  await keys.press('Enter');
  await expect.poll(() => bookingOf(garage, first)).toMatchObject({ bay: 'Bay 1', day: MONDAY, from: '09:00' });
  keys.report('a booking moved to another day and put back', 60);
});

test('a booking is moved by the mouse; a clash is told, not forbidden', async ({ garage, page }) => {
  const { first, second } = await twoBooked(garage);
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('today', 'week', MONDAY)}`);
  const block = page.getByRole('button', { name: /^KTB 4471/ });
  const other = page.getByRole('button', { name: /^HLM 93/ });
  await expect(other).toBeVisible();
  await block.hover({ position: { x: 12, y: 8 } });
  await page.mouse.down();
  await other.hover({ position: { x: 12, y: 4 } });
  // What is dragged lies over the other one now.
  await other.hover({ position: { x: 12, y: 8 }, force: true });
  await expect(page.getByText(t('plan.clashBay', { other: 'HLM 93', bay: 'Bay 1', from: '13:00' }))).toBeVisible();
  await page.mouse.up();
  await expect.poll(() => bookingOf(garage, first)).toMatchObject({ from: '13:00', day: MONDAY });
  await expect(page.getByRole('button', { name: /^KTB 4471.*13:00/ })).toBeVisible();
  // The same person in two bays at once is told as well.
  await page.getByRole('button', { name: /^KTB 4471/ }).click();
  await page.getByLabel(t('plan.by')).selectOption('Runa');
  await page.getByLabel(t('intake.bay'), { exact: true }).selectOption({ index: 1 });
  await expect(page.getByText(t('plan.clashPerson', { person: 'Runa', other: 'HLM 93', from: '13:00' }))).toBeVisible();
  await expectAxeClean(page, 'the week with a booking in hand');
  await page.getByRole('button', { name: t('plan.put') }).click();
  await expect.poll(() => bookingOf(garage, first)).toMatchObject({ bay: 'Floor', from: '13:00' });
  expect(await bookingOf(garage, second)).toMatchObject({ bay: 'Bay 1', from: '13:00' });
});

test('a bay kept free, somebody away, and the week as a calendar file', async ({ garage, page }) => {
  await twoBooked(garage);
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('today', 'week', MONDAY)}`);
  await page.getByRole('button', { name: t('plan.keep') }).click();
  await page.getByRole('button', { name: t('plan.keepIt') }).click();
  await expect(page.getByText(t('plan.wordsNeeded'))).toBeVisible();
  await page.getByLabel(t('plan.words')).fill('Lift examination');
  await page.getByLabel(t('intake.hours'), { exact: true }).fill('3');
  await page.getByLabel(t('plan.by')).selectOption('Nessa');
  await page.getByRole('button', { name: t('plan.keepIt') }).click();
  await expect(page.getByRole('button', { name: /^Lift examination/ })).toBeVisible();

  const monday = page.getByRole('region', { name: t('plan.dayOf', { day: 'Mon 8 Mar' }) });
  // Two mechanics of 8 h, 85 % of it planned, 2 + 2 + 3 booked.
  await expect(monday).toContainText(t('plan.free', { free: '6.6', planned: '13.6' }));
  await monday.getByRole('button', { name: /^Nessa/ }).click();
  await page.getByLabel(t('plan.why')).fill('ill');
  await page.getByRole('button', { name: t('plan.awayAdd') }).click();
  await expect(monday).toContainText(t('plan.personAwayWhy', { name: 'Nessa', words: 'ill' }));
  await expect(monday).toContainText(t('plan.over', { over: '0.2', planned: '6.8' }));
  await expectAxeClean(page, 'the week with somebody away');

  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: t('plan.calendar') }).click(),
  ]);
  const events = new ICAL.Component(ICAL.parse(await readFile(await file.path(), 'utf8'))).getAllSubcomponents(
    'vevent',
  );
  expect(events.map((event) => event.getFirstPropertyValue('summary'))).toEqual([
    ...['KTB 4471 Corvane R', 'HLM 93 Oriel', 'Lift examination'],
  ]);
});

test('who did not come frees the hours, and may have come after all', async ({ garage, page }) => {
  const { bays } = await garage.did('Odile', 'shop.get', {});
  const booking = { bayId: bays[0]?.id ?? '', day: today(), from: '08:00', hours: 2000 };
  await garage.booked({ booking, here: false });
  await enter(page, garage);
  await page.getByRole('link', { name: t('today.week') }).click();
  await page.getByRole('button', { name: /^KTB 4471/ }).click();
  await page.getByRole('button', { name: t('plan.noShow') }).click();
  await expect(page.getByText(t('plan.noted', { name: 'KTB 4471' }))).toBeVisible();
  await page.getByRole('button', { name: /^KTB 4471.*Did not come/ }).click();
  await page.getByRole('button', { name: t('plan.cameAfterAll') }).click();
  await expect(page.getByRole('button', { name: /^KTB 4471.*Not here yet/ })).toBeVisible();
});

test('the day strip of Today: moved by keys, then by the mouse', async ({ garage, page }) => {
  const { revision, bays } = await garage.did('Odile', 'shop.get', {});
  await garage.did('Odile', 'shop.bays', { revision, bays: [...bays, { id: null, name: 'Floor', words: '' }] });
  const booking = { bayId: bays[0]?.id ?? '', day: today(), from: '09:00', hours: 2000 };
  const id = await garage.booked({ booking, here: false });
  const keys = new Keys(page);
  await keys.enter(garage);
  const block = page.getByRole('group', { name: t('today.strip') }).getByRole('link', { name: /KTB 4471.*booked/ });
  await keys.to(block);
  await keys.press(' ', 'ArrowRight', 'ArrowRight', 'ArrowDown', 'Enter');
  await expect.poll(() => bookingOf(garage, id)).toMatchObject({ bay: 'Floor', from: '09:30', day: today() });
  await expectAxeClean(page, 'Today after a move');
  // Where it is drawn is asked once the window has it where the shop has it.
  await expect(block).toHaveAccessibleName(/9:30/);
  const [car, strip] = [await block.boundingBox(), await page.locator('.strip').boundingBox()];
  if (car === null || strip === null) throw new Error('the day is not drawn');
  await page.mouse.move(car.x + 20, car.y + 20);
  await page.mouse.down();
  await page.mouse.move(car.x + 20, strip.y + 50, { steps: 5 });
  await page.mouse.up();
  await expect.poll(() => bookingOf(garage, id)).toMatchObject({ bay: 'Bay 1', from: '09:30' });
  // It was moved, not opened.
  await expect(page.getByRole('heading', { level: 1, name: t('today.title') })).toBeVisible();
  await block.click();
  await expect(page).toHaveURL(new RegExp(id));
});
