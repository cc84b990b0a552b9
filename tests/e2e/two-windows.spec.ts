import type { Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import type { Garage, PersonName } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, expectOnSheet, field, openOrder, typeCell } from './window.ts';

type OpenWindow = () => Promise<Page>;

/** A window of its own, on another desk: another session and another person. */
async function windowOf(open: OpenWindow, garage: Garage, name: PersonName, orderId: string): Promise<Page> {
  const page = await open();
  await enter(page, garage, name);
  await openOrder(page, garage, orderId);
  return page;
}

const price = (page: Page) => field(page, t('sheet.cellPrice', { words: 'Road test' }));
const both = (page: Page) => page.getByRole('group', { name: t('errors.changed-meanwhile') });

test('what one window adds stands in the other by itself', async ({ garage, anotherWindow }) => {
  const id = await garage.booked();
  await garage.job(id);
  const odile = await windowOf(anotherWindow, garage, 'Odile', id);
  const piet = await windowOf(anotherWindow, garage, 'Piet', id);
  await field(odile, t('sheet.newWords', { letter: 'A' })).fill('Look at the mount 0.5 h');
  await odile.getByRole('button', { name: t('sheet.add'), exact: true }).click();
  await expect(field(piet, t('sheet.cellPrice', { words: 'Look at the mount' }))).toHaveValue('96.00');
  await expectOnSheet(piet, '241.92');
});

test('the same cell typed in two windows: nothing is overwritten, both values stand and the person picks', async ({
  garage,
  anotherWindow,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  const odile = await windowOf(anotherWindow, garage, 'Odile', id);
  const piet = await windowOf(anotherWindow, garage, 'Piet', id);
  const unitPrice = async () => (await garage.order(id)).jobs[0]?.lines[0]?.unitPrice;

  await price(piet).fill('110');
  await typeCell(odile, t('sheet.cellPrice', { words: 'Road test' }), '100');
  await expect.poll(unitPrice).toBe(10_000);
  await price(piet).press('Tab');
  await expect(both(piet)).toContainText(`${t('parts.yours')}110`);
  await expect(both(piet)).toContainText(`${t('parts.theirs')}100.00`);
  expect(await unitPrice()).toBe(10_000);
  await both(piet)
    .getByRole('button', { name: t('parts.keep', { value: '110' }) })
    .click();
  await expect(both(piet)).toBeHidden();
  await expect.poll(unitPrice).toBe(11_000);
  await expect(price(odile)).toHaveValue('110.00');

  await price(odile).fill('120');
  await typeCell(piet, t('sheet.cellPrice', { words: 'Road test' }), '115');
  await expect.poll(unitPrice).toBe(11_500);
  await price(odile).press('Tab');
  await both(odile)
    .getByRole('button', { name: t('parts.take', { value: '115.00' }) })
    .click();
  await expect(price(odile)).toHaveValue('115.00');
  expect(await unitPrice()).toBe(11_500);
});

test('what was typed is not lost where the other’s value comes while it is being saved', async ({
  garage,
  anotherWindow,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  const odile = await windowOf(anotherWindow, garage, 'Odile', id);
  const piet = await windowOf(anotherWindow, garage, 'Piet', id);
  let letGo = () => {};
  const held = new Promise<void>((go) => {
    letGo = go;
  });
  await piet.route('**/call', async (route) => {
    if (route.request().postData()?.includes('line.change')) await held;
    await route.continue();
  });
  await price(piet).fill('110');
  await price(piet).press('Tab');
  await typeCell(odile, t('sheet.cellPrice', { words: 'Road test' }), '100');
  await expectOnSheet(piet, '189.00');
  letGo();
  await expect(both(piet)).toContainText(`${t('parts.yours')}110`);
  await expect(both(piet)).toContainText(`${t('parts.theirs')}100.00`);
});

test('somebody else in a cell stands at its edge by name, until they leave it or their window goes', async ({
  garage,
  anotherWindow,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  const odile = await windowOf(anotherWindow, garage, 'Odile', id);
  const piet = await windowOf(anotherWindow, garage, 'Piet', id);
  const name = (page: Page) => page.locator('.cell-other');
  await price(piet).focus();
  await expect(name(odile)).toHaveText(`Piet ${t('parts.isInIt')}`);
  await expect(name(odile).locator('xpath=..').getByRole('textbox')).toHaveValue('96.00');
  await expect(name(piet)).toHaveCount(0);
  await expectAxeClean(odile, 'somebody else in a cell');
  // On to the words of the customer, which are a cell as well.
  await field(piet, t('sheet.says')).focus();
  await expect(name(odile).locator('xpath=..').getByRole('textbox')).toHaveValue('It whines from the back.');
  await field(piet, t('sheet.says')).blur();
  await expect(name(odile)).toHaveCount(0);
  await price(piet).focus();
  await expect(name(odile)).toHaveCount(1);
  await piet.close();
  await expect(name(odile)).toHaveCount(0);
});

test('two cells of one line typed in two windows are both kept, and nobody is asked', async ({
  garage,
  anotherWindow,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  const odile = await windowOf(anotherWindow, garage, 'Odile', id);
  const piet = await windowOf(anotherWindow, garage, 'Piet', id);
  await price(piet).fill('110');
  await typeCell(odile, t('sheet.cellQuantity', { words: 'Road test' }), '2 h');
  await expect(field(piet, t('sheet.cellQuantity', { words: 'Road test' }))).toHaveValue(/^2/);
  await price(piet).press('Tab');
  // 2 h at 110.00 and 5 % supplies, 20 % tax: 277.20
  await expectOnSheet(odile, '277.20');
  await expectOnSheet(piet, '277.20');
  await expect(both(piet)).toBeHidden();
});
