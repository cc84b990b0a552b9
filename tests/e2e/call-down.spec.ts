import { readFile } from 'node:fs/promises';
import type { Download } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { readPages, textOf } from '../paper/read-back.ts';
import { expectAxeClean } from './axe.ts';
import { today } from './clock.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { choose, enter, field } from './window.ts';

async function textIn(file: Download): Promise<string> {
  return (await readPages(new Uint8Array(await readFile(await file.path())))).map(textOf).join('\n');
}

async function reminder(garage: Garage, words: string) {
  const { car } = await garage.order(await garage.booked());
  await garage.did('Piet', 'reminder.add', { carId: car.id, words, dueOn: today() });
  return car.id;
}

test('the list to call down: later, a first no, a second no, and nobody is asked a third time', async ({
  garage,
  page,
}) => {
  const carId = await reminder(garage, 'Brake fluid');
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', 'reminders')}`);
  await expect(page.getByText(t('reminders.words', { n: 1 }))).toBeVisible();
  const row = page.getByRole('button', { name: /Brake fluid/ });
  await row.click();
  await expect(page.getByText(t('reminders.cameNeeded'))).toBeVisible();
  await expectAxeClean(page, 'a reminder that is open');
  await choose(page, t('reminders.call'), t('reminders.did-later'));
  await page.getByRole('button', { name: t('reminders.keep') }).click();
  await expect(page.getByText(t('reminders.askOnNeeded'))).toBeVisible();
  await choose(page, t('reminders.call'), t('reminders.did-no'));
  await field(page, t('reminders.note')).fill('does it herself');
  await page.getByRole('button', { name: t('reminders.keep') }).click();
  await expect(page.getByText(t('reminders.kept', { name: 'Ilse Vandermeer', what: 'no' }))).toBeVisible();
  const mine = async () => (await garage.did('Piet', 'reminder.list', { carId })).rows[0];
  expect((await mine())?.noes).toBe(1);
  expect((await mine())?.tries[0]?.words).toBe('does it herself');

  // Asked again before its quiet time is over, from a later day of the list.
  await page.getByRole('button', { name: t('reminders.inDays', { n: 30 }) }).click();
  await field(page, t('reminders.until')).fill('2027-12-31');
  const one = await mine();
  await garage.did('Piet', 'reminder.try', { id: one?.id ?? '', revision: one?.revision ?? 1, outcome: 'no' });
  expect((await mine())?.closeWhy).toBe('two-noes');
  await expect(page.getByText(t('reminders.none'))).toBeVisible();
  await page.goto(`${garage.door.host.address}/${hrefOf('cars', carId)}`);
  await expect(page.getByText(t('reminders.closed', { why: t('reminders.why-two-noes') }))).toBeVisible();
});

test('a reminder as a text that is written down, and as a letter', async ({ garage, page }) => {
  await reminder(garage, 'Brake fluid');
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', 'reminders')}`);
  await page.getByRole('button', { name: /Brake fluid/ }).click();
  const [letter] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: t('reminders.letter') }).click(),
  ]);
  expect(letter.suggestedFilename()).toMatch(/\.pdf$/);
  expect(await textIn(letter)).toContain('Brake fluid');
  await page.getByRole('button', { name: t('reminders.message') }).click();
  const text = page.getByRole('textbox', { name: /KTB 4471/ });
  await expect(text).toHaveValue(/this comes up: Brake fluid/);
  await expect(page.getByRole('link', { name: t('contact.mail') })).toHaveAttribute(
    'href',
    /^mailto:ilse%40vandermeer\.example\?subject=.*&body=.*Brake%20fluid/,
  );
  await expectAxeClean(page, 'a text of a reminder');
  await choose(page, t('contact.wentBy'), t('contact.way-mail'));
  await page
    .getByRole('button', { name: t('contact.keep') })
    .last()
    .click();
  await expect(page.getByText(t('reminders.kept', { name: 'Ilse Vandermeer', what: 'written to' }))).toBeVisible();
  const { rows } = await garage.did('Piet', 'customer.list', { text: 'Ilse' });
  const log = await garage.did('Piet', 'message.list', { customerId: rows[0]?.id ?? '' });
  expect(log.rows.map((one) => [one.kind, one.about]).sort()).toEqual([
    ['message', 'reminder'],
    ['reminder', 'letter'],
  ]);
});

test('that the car is ready is told, a call is written down, a key is given out; all of it stands with the customer', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('orders', id)}`);
  await page.getByRole('button', { name: t('contact.tell-ready') }).click();
  await expect(page.getByRole('textbox', { name: /KTB 4471 is ready/ })).toHaveValue(/181\.44/);
  await choose(page, t('contact.wentBy'), t('contact.way-message'));
  await page.getByRole('button', { name: t('contact.keep') }).click();
  await expect(page.getByText(t('contact.kept', { way: t('contact.way-message') }))).toBeVisible();
  await page.getByRole('button', { name: t('contact.writeDown') }).click();
  await page.getByRole('button', { name: t('contact.keep') }).click();
  await expect(page.getByText(t('contact.wordsNeeded'))).toBeVisible();
  await field(page, t('contact.words')).fill('comes at five');
  await page.getByRole('button', { name: t('contact.keep') }).click();
  await page.getByRole('button', { name: t('contact.keyGive') }).click();
  await field(page, t('contact.keyWhom')).fill('Bram Oduya');
  await page.getByRole('button', { name: t('contact.keyGive') }).click();
  await expect(page.getByText(t('contact.keyOut', { what: t('contact.keyAll'), who: 'Bram Oduya' }))).toBeVisible();
  await expectAxeClean(page, 'an order with what was told');
  const { customer } = await garage.order(id);
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', customer.id)}`);
  await expect(page.getByText('comes at five')).toBeVisible();
});

test('two entries of one person are joined and parted again', async ({ garage, page }) => {
  const { customer } = await garage.order(await garage.booked());
  await garage.did('Piet', 'customer.add', { name: 'I. Vandermeer', phone: '555 0142' });
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', customer.id)}`);
  await page.getByRole('button', { name: t('customers.joinOf', { name: 'I. Vandermeer' }) }).click();
  await expectAxeClean(page, 'entries that may be the same');
  await page.getByRole('button', { name: t('customers.joinGo') }).click();
  await page.getByRole('button', { name: t('customers.part') }).click();
  await expect(page.getByRole('button', { name: t('customers.joinOf', { name: 'I. Vandermeer' }) })).toBeVisible();
  const get = await garage.did('Piet', 'customer.get', { id: customer.id });
  expect(get.joined).toEqual([]);
});

test('a sale without a car opens an order; a history goes to a later owner without the person', async ({
  garage,
  page,
}) => {
  const { customer, car } = await garage.order(await garage.booked());
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('cars', car.id)}`);
  await page.getByRole('button', { name: t('cars.history') }).click();
  await choose(page, t('cars.historyFor'), t('cars.history-later-owner'));
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: t('cars.historyMake') }).click(),
  ]);
  const text = await textIn(file);
  expect(text).toContain('KTB 4471');
  expect(text).not.toContain('Vandermeer');
  await expectAxeClean(page, 'a car with its history made');
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', customer.id)}`);
  await page.getByRole('button', { name: t('customers.sale') }).click();
  await field(page, t('customers.saleWant', { name: 'Ilse Vandermeer' })).fill('Two wiper blades');
  await page.getByRole('button', { name: t('customers.saleGo') }).click();
  await expect(page.getByRole('article', { name: t('sheet.order') })).toContainText('Two wiper blades');
});

test('who is written otherwise is found while somebody types, before a second entry is made', async ({
  garage,
  page,
}) => {
  await garage.booked();
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('customers')}`);
  await page.getByRole('button', { name: t('customers.sale') }).click();
  await field(page, t('customers.saleWho')).fill('Vandermeer, Ilse');
  await page.getByRole('button', { name: /^Ilse Vandermeer/ }).click();
  await expect(field(page, t('customers.saleWant', { name: 'Ilse Vandermeer' }))).toBeVisible();
});

test('the hours of a person’s week are what the day can hold', async ({ garage, page }) => {
  await enter(page, garage, 'Odile');
  await page.goto(`${garage.door.host.address}/${hrefOf('shop', 'people')}`);
  const cell = field(page, t('terms.weekOf', { name: 'Nessa', day: 'Tue' }));
  await cell.fill('30');
  await cell.press('Tab');
  await expect(page.getByText(t('terms.weekWrong'))).toBeVisible();
  await cell.fill('6.5');
  await cell.press('Tab');
  const week = async () => (await garage.did('Odile', 'shop.get', {})).people.find((one) => one.name === 'Nessa')?.week;
  await expect.poll(week).toEqual([0, 6500, 0, 0, 0, 0, 0]);
});

test('storage is charged only where it was told: a price a day, free days, from the ready notice', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('orders', id)}`);
  await page.getByRole('button', { name: t('contact.storageTell') }).click();
  const storage = page.getByRole('region', { name: t('contact.storage') });
  await storage.getByRole('button', { name: t('contact.keep') }).click();
  await expect(page.getByText(t('contact.storagePriceWrong'))).toBeVisible();
  await field(page, t('contact.storagePrice')).fill('15');
  await storage.getByRole('button', { name: t('contact.keep') }).click();
  await expect(page.getByText(t('contact.storageTold', { perDay: '15.00', n: 3 }))).toBeVisible();
  await expect(page.getByText(t('contact.storageNoNotice'))).toBeVisible();
  expect((await garage.order(id)).door.storage).toEqual({ perDay: 1500, freeWorkingDays: 3 });
});
