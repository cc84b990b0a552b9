import type { Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { today } from './clock.ts';
import { expect, test } from './shop-fixture.ts';
import { choose, enter, field, sheetOf } from './window.ts';

/** The walk round the car: marks drawn on its outline, with photos, looked at again at the next visit. */

/** One black pixel as PNG. */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==',
  'base64',
);
const photo = { name: 'door.png', mimeType: 'image/png', buffer: PIXEL };

async function startWith(page: Page, plate: string, complaint: string): Promise<void> {
  await page.getByRole('button', { name: t('today.book') }).click();
  await field(page, t('intake.phone')).fill('555-0142');
  await page
    .getByRole('group', { name: t('intake.known') })
    .getByRole('button', { name: /Vandermeer/ })
    .click();
  await expect(page.getByRole('radio', { name: new RegExp(plate) })).toBeChecked();
  await field(page, t('intake.complaint')).fill(complaint);
}

const orderOf = (page: Page) => page.url().split('/').at(-1) ?? '';

test('marks are drawn by mouse and by keys, photographed, and looked at again at the next visit', async ({
  garage,
  page,
}) => {
  await garage.booked();
  await enter(page, garage);
  await startWith(page, 'KTB 4471', 'The wing.');
  await choose(page, t('intake.shape'), t('intake.shape-coupe'));
  await choose(page, t('intake.view'), t('intake.view-left'));
  const drawing = page.getByRole('img', { name: /coupé/ });
  const box = await drawing.boundingBox();
  if (box === null) throw new Error('the car is not drawn');
  await drawing.click({ position: { x: box.width * 0.25, y: box.height * 0.5 } });
  const first = page.getByRole('textbox', { name: t('intake.markWords', { n: 1 }) });
  await expect(first).toBeFocused();
  await first.fill('Scratch, front wing, 10 cm');
  await page.locator('.intake-marks input[type="file"]').setInputFiles(photo);
  await expect(page.getByAltText(t('intake.photoTaken'))).toBeVisible();
  await page.getByRole('button', { name: t('intake.addMark') }).press('Enter');
  const second = page.getByRole('button', { name: /^Mark 2/ });
  await expect(second).toBeFocused();
  await second.press('ArrowRight');
  await second.press('ArrowUp');
  await page.getByRole('textbox', { name: t('intake.markWords', { n: 2 }) }).fill('');
  await page.getByRole('button', { name: t('intake.go'), exact: true }).click();
  await expect(page.getByText(t('intake.markNeedsWords'))).toBeVisible();
  await expectAxeClean(page, 'a mark without words');
  await page.getByRole('textbox', { name: t('intake.markWords', { n: 2 }) }).fill('Dent, door');
  await page.getByRole('button', { name: t('intake.go'), exact: true }).click();
  await expect(sheetOf(page)).toContainText('The wing.');

  const one = await garage.order(orderOf(page));
  expect(one.door.marks).toEqual(['Scratch, front wing, 10 cm', 'Dent, door']);
  const marks = await garage.did('Odile', 'mark.list', { carId: one.car.id });
  expect(marks).toMatchObject({
    outline: 'coupe',
    rows: [{ view: 'left' }, { view: 'left', x: 515, y: 485, words: 'Dent, door' }],
  });
  expect(Math.abs((marks.rows[0]?.x ?? 0) - 250)).toBeLessThan(10);
  const photos = await garage.did('Odile', 'photo.list', { carId: one.car.id });
  expect(photos.rows).toMatchObject([{ of: { what: 'mark', id: marks.rows[0]?.id }, kind: 'png' }]);

  await page.keyboard.press('Alt+1');
  await startWith(page, 'KTB 4471', 'The yearly service.');
  await page.getByRole('button', { name: t('intake.photos', { n: 1 }) }).click();
  await expect(page.getByRole('dialog').getByRole('img')).toBeVisible();
  await page.keyboard.press('Escape');
  await page.getByLabel(t('intake.stillSo', { mark: 'Scratch, front wing, 10 cm' })).check();
  await page.getByLabel(t('intake.gone', { mark: 'Dent, door' })).check();
  await page.getByRole('button', { name: t('intake.go'), exact: true }).click();
  await expect(sheetOf(page)).toContainText('The yearly service.');
  const two = await garage.order(orderOf(page));
  expect(two.door.marks).toEqual(['Scratch, front wing, 10 cm']);
  expect((await garage.did('Odile', 'mark.list', { carId: one.car.id })).rows).toMatchObject([
    { last: { number: two.number }, gone: null },
    { last: { number: one.number }, gone: { number: two.number } },
  ]);

  // On the car's page they are put right.
  await page.goto(`${garage.door.host.address}/${hrefOf('cars', one.car.id)}`);
  await page.getByRole('button', { name: t('intake.putRightMark', { n: 1 }) }).click();
  await page.getByRole('textbox', { name: t('intake.markWords', { n: 1 }) }).fill('Scratch, front wing, 12 cm');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Scratch, front wing, 12 cm')).toBeVisible();
  await page.getByRole('button', { name: t('intake.thereAfterAll') }).click();
  await expect(page.getByRole('button', { name: t('intake.thereAfterAll') })).toBeHidden();
  await expectAxeClean(page, 'a car with its marks');
});

test('a car left at night: nobody signs, and a yes to look comes by phone only', async ({ garage, page }) => {
  await garage.booked();
  await enter(page, garage);
  await startWith(page, 'KTB 4471', 'Key in the box.');
  await choose(page, t('intake.here'), t('intake.night'));
  await expect(page.getByText(t('intake.nightUnsigned'))).toBeVisible();
  await field(page, t('intake.look')).fill('180');
  await choose(page, t('intake.lookWay'), t('intake.lookPerson'));
  await page.getByRole('button', { name: t('intake.go'), exact: true }).click();
  await expect(page.getByText(t('intake.nightLook'))).toBeVisible();
  await choose(page, t('intake.lookWay'), t('intake.lookPhone'));
  const [slip] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: t('intake.goSlip') }).click(),
  ]);
  expect(slip.suggestedFilename()).toMatch(/^Drop-off slip \d+\.pdf$/);
  await expect(sheetOf(page)).toContainText('Key in the box.');
  const order = await garage.order(orderOf(page));
  expect(order.door).toMatchObject({ nightDrop: true, strokes: null });
  expect(order.arrivedAt).not.toBeNull();
  expect(order.decisions).toMatchObject([{ way: 'phone', ceiling: 18_000 }]);
  const [again] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: t('intake.slip') }).click(),
  ]);
  expect(again.suggestedFilename()).toBe(slip.suggestedFilename());
});

test('a day without the hours says so while it is booked', async ({ garage, page }) => {
  const { bays } = await garage.did('Odile', 'shop.get', {});
  const tomorrow = new Date(Date.parse(today()) + 86_400_000).toISOString().slice(0, 10);
  const booked = { bayId: bays[0]?.id ?? '', day: tomorrow, from: '08:00', hours: 8000 };
  await garage.booked({ booking: booked, here: false });
  await enter(page, garage);
  await startWith(page, 'KTB 4471', 'The big one.');
  await page.locator('.day-pick').nth(1).click();
  // Two mechanics of 8 h, 85 % of it planned, less the 8 h that are booked.
  await expect(page.locator('.day-pick').nth(1)).toContainText(t('intake.dayFree', { free: '5.6' }));
  await page.getByLabel(t('intake.hours'), { exact: true }).fill('7');
  await expect(page.getByText(t('plan.noRoom', { free: '5.6', hours: '7' }))).toBeVisible();
  await page.getByLabel(t('intake.by')).selectOption('Runa');
  await page.getByRole('button', { name: t('intake.go'), exact: true }).click();
  await expect(sheetOf(page)).toContainText('The big one.');
  const { booking } = await garage.order(orderOf(page));
  const day = booking?.day ?? '';
  const { rows } = await garage.did('Odile', 'booking.list', { from: day, to: day });
  expect(rows.find(({ person }) => person === 'Runa')).toMatchObject({ hours: 7000 });
});

test('a car that was booked before is taken in at the door, with its marks and its slip', async ({ garage, page }) => {
  const id = await garage.booked({ here: false, mileage: null, door: { oldParts: 'show', storageTold: true } });
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('orders', id)}`);
  await page.getByRole('link', { name: t('intake.takeInOpen') }).click();
  await field(page, t('intake.mileage', { unit: t('intake.km') })).fill('42,500');
  await choose(page, t('intake.shape'), t('intake.shape-van'));
  await page.getByRole('button', { name: t('intake.addMark') }).press('Enter');
  await page.getByRole('textbox', { name: t('intake.markWords', { n: 1 }) }).fill('Dent, roof');
  await field(page, t('intake.keys')).fill('2');
  await expectAxeClean(page, 'taking a car in');
  const [slip] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: t('intake.takeInSlip') }).click(),
  ]);
  expect(slip.suggestedFilename()).toMatch(/^Drop-off slip/);
  await expect(sheetOf(page)).toContainText('42,500');
  const order = await garage.order(id);
  expect(order.arrivedAt).not.toBeNull();
  expect(order.door).toMatchObject({ keys: 2, oldParts: 'show', storageTold: true, marks: ['Dent, roof'] });
  expect(await garage.did('Odile', 'mark.list', { carId: order.car.id })).toMatchObject({ outline: 'van', rows: [{}] });
});
