import type { Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { expect, test } from './shop-fixture.ts';
import { choose, enter, field, sheetOf } from './window.ts';

/** Booking a car in, by mouse. The VIN is invented; its check digit is 0 by 49 CFR 565.15 (checked in tests/core). */
const VIN = '9ZCGT6R32GL005187';

async function startBooking(page: Page): Promise<void> {
  await page.getByRole('button', { name: t('today.book') }).click();
  await expect(page.getByRole('heading', { level: 1, name: t('intake.title') })).toBeVisible();
}

async function bookIt(page: Page): Promise<void> {
  await page.getByRole('button', { name: t('intake.go') }).click();
}

const mileage = (page: Page) => field(page, t('intake.mileage', { unit: t('intake.km') }));

test('a customer and a car that nobody knows yet are booked in, with a yes to look and a deposit', async ({
  garage,
  page,
}) => {
  await enter(page, garage);
  await startBooking(page);
  await field(page, t('intake.phone')).fill('555-0142');
  await field(page, t('intake.name')).fill('Ilse Vandermeer');
  await expect(page.getByText(t('intake.newPerson'))).toBeVisible();
  await field(page, t('intake.plate')).fill('KTB 4471');
  await field(page, t('intake.words')).fill('Corvane R');
  await field(page, t('intake.year')).fill('2016');
  await mileage(page).fill('42,180');
  await field(page, t('intake.complaint')).fill('It whines from the back.');
  await choose(page, t('intake.askWhen'), t('intake.speed'));
  await choose(page, t('intake.fuel'), t('intake.half'));
  await field(page, t('intake.marks')).fill('scratch, left door\ndent, rear wing');
  await field(page, t('intake.look')).fill('180');
  await choose(page, t('intake.lookWay'), t('intake.lookPerson'));
  await field(page, t('intake.deposit')).fill('150');
  await choose(page, t('intake.depositWay'), t('intake.cash'));
  await bookIt(page);

  await expect(sheetOf(page)).toContainText('KTB 4471');
  await expect(sheetOf(page)).toContainText('42,180');
  await expect(sheetOf(page)).toContainText('It whines from the back.');
  await expect(sheetOf(page)).toContainText(t('sheet.covers', { letters: 'A' }));
  const payments = page.getByRole('region', { name: t('sheet.payments') });
  await expect(payments).toContainText(t('sheet.held', { sum: '150.00' }));
  const [reader] = await Promise.all([
    page.waitForEvent('popup'),
    payments.getByRole('button', { name: t('sheet.receipt') }).click(),
  ]);
  await reader.close();

  const order = await garage.order(page.url().split('/').at(-1) ?? '');
  expect(order.door.marks).toEqual(['scratch, left door', 'dent, rear wing']);
  expect(order.payments).toMatchObject([{ kind: 'deposit', way: 'cash', amount: 15_000 }]);
  expect(order.decisions).toMatchObject([{ ceiling: 18_000, way: 'person', spoken: { name: 'Ilse Vandermeer' } }]);
});

test('a known customer is found by phone, and the car by its plate', async ({ garage, page }) => {
  const first = await garage.booked();
  const { customer, car } = await garage.order(first);
  await enter(page, garage);
  await startBooking(page);
  await field(page, t('intake.phone')).fill('555-0142');
  await page
    .getByRole('group', { name: t('intake.known') })
    .getByRole('button', { name: /Vandermeer/ })
    .click();
  await expect(field(page, t('intake.name'))).toHaveValue('Ilse Vandermeer');
  await expect(page.getByRole('radio', { name: /KTB 4471/ })).toBeChecked();

  await page
    .getByRole('main')
    .getByRole('button', { name: t('intake.otherPerson') })
    .click();
  await field(page, t('intake.plate')).fill('ktb4471');
  await page
    .getByRole('group', { name: t('intake.known') })
    .getByRole('button', { name: /KTB 4471/ })
    .click();
  await expect(field(page, t('intake.name'))).toHaveValue('Ilse Vandermeer');
  await field(page, t('intake.complaint')).fill('Back for the second look.');
  await bookIt(page);
  await expect(sheetOf(page)).toContainText('Back for the second look.');
  const again = await garage.order(page.url().split('/').at(-1) ?? '');
  expect([again.customer.id, again.car.id]).toEqual([customer.id, car.id]);
});

test('a check digit that does not fit is said and may stand; I, O and Q are told from 1 and 0', async ({
  garage,
  page,
}) => {
  await enter(page, garage);
  await startBooking(page);
  await field(page, t('intake.name')).fill('Ilse Vandermeer');
  await field(page, t('intake.words')).fill('Corvane R');
  await field(page, t('intake.complaint')).fill('It whines.');
  const vin = field(page, t('parts.vin'));
  await vin.pressSequentially(VIN.replace('9Z', 'OZ'));
  await expect(page.getByText(t('intake.vinCharacter'))).toBeVisible();
  await bookIt(page);
  await expect(page.getByRole('heading', { level: 1, name: t('intake.title') })).toBeVisible();
  expect((await garage.did('Odile', 'order.page', { filter: { which: 'all' } })).rows).toEqual([]);
  await vin.fill('');
  await vin.pressSequentially(VIN);
  await expect(vin).not.toHaveAccessibleDescription(t('intake.vinCharacter'));
  await vin.press('Backspace');
  await vin.pressSequentially('8');
  await expect(vin).toHaveAccessibleDescription(t('intake.vinDigit', { digit: '4' }));
  await bookIt(page);
  await expect(sheetOf(page)).toContainText(`${VIN.slice(0, 16)}8`);
});

test('a mileage lower than last time waits until the desk says what happened', async ({ garage, page }) => {
  await garage.booked();
  await enter(page, garage);
  await startBooking(page);
  await field(page, t('intake.phone')).fill('555-0142');
  await page
    .getByRole('group', { name: t('intake.known') })
    .getByRole('button', { name: /Vandermeer/ })
    .click();
  await field(page, t('intake.complaint')).fill('The clock was changed elsewhere.');
  await mileage(page).fill('12,000');
  await expect(mileage(page)).toHaveAccessibleDescription(
    t('intake.mileageLower', { last: '42,180', typed: '12,000' }),
  );
  await bookIt(page);
  await expect(page.getByText(t('intake.doubtNeeded'))).toBeVisible();
  await choose(page, t('intake.doubt'), t('intake.clockReplaced'));
  await bookIt(page);
  await expect(sheetOf(page)).toContainText('12,000');
  const { car } = await garage.order(page.url().split('/').at(-1) ?? '');
  const { readings } = await garage.did('Odile', 'car.get', { id: car.id });
  expect(readings.map((one) => one.event)).toContain('replaced');
});

test('what is missing is said at its field, and what was typed stays', async ({ garage, page }) => {
  await enter(page, garage);
  await startBooking(page);
  await field(page, t('intake.phone')).fill('555-0142');
  await mileage(page).fill('about forty');
  await bookIt(page);
  await expect(field(page, t('intake.name'))).toHaveAccessibleDescription(t('intake.nameNeeded'));
  await expect(field(page, t('intake.name'))).toBeFocused();
  await expect(mileage(page)).toHaveAccessibleDescription(t('intake.mileageWrong'));
  await expect(field(page, t('intake.phone'))).toHaveValue('555-0142');
  expect((await garage.did('Odile', 'order.page', { filter: { which: 'all' } })).rows).toEqual([]);
});
