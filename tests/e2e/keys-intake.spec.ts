import { t } from '../../renderer/words/t.ts';
import { Keys } from './keys.ts';
import { expect, test } from './shop-fixture.ts';
import { field, sheetOf } from './window.ts';

/** Booking a car in by keys alone. */

test('a new customer with a new car, and a deposit, without the mouse', async ({ garage, page }) => {
  const keys = new Keys(page);
  await keys.enter(garage);
  await keys.press('n');
  await expect(field(page, t('intake.phone'))).toBeFocused();
  await keys.type('555-0142');
  await keys.to(field(page, t('intake.name')));
  await keys.type('Ilse Vandermeer');
  await keys.to(field(page, t('intake.plate')));
  await keys.type('KTB 4471');
  await keys.to(field(page, t('intake.words')));
  await keys.type('Corvane R');
  await keys.to(field(page, t('parts.vin')));
  await keys.type('9ZCGT6R32GL005187');
  await keys.to(field(page, t('intake.mileage', { unit: t('intake.km') })));
  await keys.type('42180');
  await keys.to(field(page, t('intake.complaint')));
  await keys.type('It whines.');
  await keys.choose(page, t('intake.fuel'), t('intake.half'));
  await keys.to(field(page, t('intake.deposit')));
  await keys.type('150');
  await keys.choose(page, t('intake.depositWay'), t('intake.cash'));
  await keys.press('Control+Enter');
  await expect(sheetOf(page)).toContainText('KTB 4471');
  keys.report('a car booked in, a deposit taken', 137);

  const order = await garage.order(page.url().split('/').at(-1) ?? '');
  expect(order).toMatchObject({
    customer: { name: 'Ilse Vandermeer', phone: '555-0142' },
    car: { plate: 'KTB 4471', vin: '9ZCGT6R32GL005187' },
    mileageIn: 42_180,
    door: { fuel: t('intake.half') },
    payments: [{ kind: 'deposit', way: 'cash', amount: 15_000 }],
  });
});

test('a known customer, whose car shows less than last time, without the mouse', async ({ garage, page }) => {
  await garage.booked();
  const keys = new Keys(page);
  await keys.enter(garage);
  await keys.press('n');
  await keys.type('5550142');
  await keys.to(page.getByRole('group', { name: t('intake.known') }).getByRole('button', { name: /Vandermeer/ }));
  await keys.press('Enter');
  await expect(field(page, t('intake.name'))).toHaveValue('Ilse Vandermeer');
  await keys.to(field(page, t('intake.mileage', { unit: t('intake.km') })));
  await keys.type('12000');
  await keys.to(field(page, t('intake.complaint')));
  await keys.type('It whines again.');
  await keys.press('Control+Enter');
  const doubt = page.getByRole('group', { name: t('intake.doubt') });
  await expect(doubt).toBeVisible();
  await keys.choose(page, t('intake.doubt'), t('intake.clockReplaced'), 'Shift+Tab');
  await keys.press('Control+Enter');
  await expect(sheetOf(page)).toContainText('12,000');
  keys.report('a known car booked in', 56);
});
