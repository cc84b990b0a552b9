import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field, typeCell } from './window.ts';

/** A car's page and a customer's page: what is changed there stands in the shop. */

test('a new plate from today: the old one is kept, and either finds the car', async ({ garage, page }) => {
  const { car } = await garage.order(await garage.booked());
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('cars', car.id)}`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/KTB 4471 Corvane R, 2016/);
  await page.getByRole('button', { name: t('cars.newPlate') }).click();
  await page
    .getByRole('button', { name: t('cars.write') })
    .last()
    .click();
  await expect(page.getByText(t('cars.plateNeeded'))).toBeVisible();
  await expectAxeClean(page, 'a car with a plate that is missing');
  await field(page, t('cars.plateNow')).fill('NEW 123');
  await page
    .getByRole('button', { name: t('cars.write') })
    .last()
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/NEW 123/);
  const found = async (text: string) => (await garage.did('Odile', 'find.line', { text })).hits.map((hit) => hit.id);
  expect(await found('NEW 123')).toContain(car.id);
  expect(await found('KTB 4471')).toContain(car.id);
});

test('a car goes to somebody who is not known yet', async ({ garage, page }) => {
  const { car } = await garage.order(await garage.booked());
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('cars', car.id)}`);
  await page.getByRole('button', { name: t('cars.newOwner') }).click();
  await field(page, t('cars.ownerNow')).fill('Bram Oduya');
  await page.getByRole('button', { name: t('customers.addNamed', { name: 'Bram Oduya' }) }).click();
  await expect(page.getByRole('main').getByRole('link', { name: 'Bram Oduya' })).toBeVisible();
  const now = await garage.did('Odile', 'car.get', { id: car.id });
  expect(now.owners.map((owner) => owner.name)).toEqual(['Ilse Vandermeer', 'Bram Oduya']);
});

test('a VIN with a letter that no VIN has is refused at its cell, a year of three figures too', async ({
  garage,
  page,
}) => {
  const { car } = await garage.order(await garage.booked());
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('cars', car.id)}`);
  await typeCell(page, t('cars.vin'), 'OZCGT6R32GL005187');
  await expect(page.getByText(t('intake.vinCharacter'))).toBeVisible();
  await typeCell(page, t('cars.year'), '216');
  await expect(page.getByText(t('intake.yearWrong'))).toBeVisible();
  await typeCell(page, t('cars.year'), '2017');
  await expect.poll(async () => (await garage.did('Odile', 'car.get', { id: car.id })).fields.year).toBe(2017);
  expect((await garage.did('Odile', 'car.get', { id: car.id })).fields.vin).toBe('');
});

test('who may say yes for a customer, and up to what', async ({ garage, page }) => {
  const { customer } = await garage.order(await garage.booked());
  const mayYes = async () => (await garage.did('Odile', 'customer.get', { id: customer.id })).fields.mayYes;
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', customer.id)}`);
  await field(page, t('customers.anotherName')).fill('Odile Engel');
  await field(page, t('customers.anotherUpTo')).fill('a lot');
  await page.getByRole('button', { name: t('customers.anotherAdd') }).click();
  await expect(page.getByText(t('customers.upToWrong'))).toBeVisible();
  await expectAxeClean(page, 'a customer with a sum that is none');
  await field(page, t('customers.anotherUpTo')).fill('500');
  await page.getByRole('button', { name: t('customers.anotherAdd') }).click();
  await expect(field(page, t('customers.namedUpTo', { name: 'Odile Engel' }))).toHaveValue('500.00');
  expect(await mayYes()).toEqual([{ name: 'Odile Engel', upTo: 50_000 }]);
  await typeCell(page, t('customers.namedUpTo', { name: 'Odile Engel' }), '');
  await expect.poll(mayYes).toEqual([{ name: 'Odile Engel', upTo: null }]);
  // Pressed before the page has seen its own last save, it is refused as changed meanwhile: a person presses again.
  await expect(async () => {
    await page.getByRole('button', { name: t('customers.noLonger', { name: 'Odile Engel' }) }).click({ timeout: 2000 });
    await expect.poll(mayYes, { timeout: 2000 }).toEqual([]);
  }).toPass();
});

test('a new order from the customer’s page begins with them and their only car', async ({ garage, page }) => {
  const { customer } = await garage.order(await garage.booked());
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', customer.id)}`);
  await page.getByRole('button', { name: t('customers.newOrder') }).click();
  await expect(page.getByRole('heading', { level: 1, name: t('intake.title') })).toBeVisible();
  await expect(field(page, t('intake.name'))).toHaveValue('Ilse Vandermeer');
  await expect(page.getByRole('radio', { name: /KTB 4471/ })).toBeChecked();
});
