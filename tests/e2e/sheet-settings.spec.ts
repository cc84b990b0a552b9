import type { Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { choose, enter, expectOnSheet, openOrder, sheetOf, typeCell } from './window.ts';

async function toShop(page: Page, garage: Garage, name: string): Promise<void> {
  await page.goto(`${garage.door.host.address}/${hrefOf('shop', name)}`);
  await expect(page.getByRole('heading', { level: 2, name: t(`shop.page-${name}` as 'shop.page-fees') })).toBeVisible();
}
const settings = async (garage: Garage) => (await garage.did('Odile', 'shop.get', {})).settings;

test('the waste fee: typed in Shop, it stands on the sheet under its name with how it came about', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await toShop(page, garage, 'fees');
  await choose(page, t('rules.waste'), t('rules.wasteYes'));
  await typeCell(page, t('rules.wasteAmount'), 'some');
  await expect(page.getByText(t('start.overSumWrong'))).toBeVisible();
  await typeCell(page, t('rules.wasteAmount'), '4.50');
  await typeCell(page, t('rules.wasteCalled'), 'Oil disposal');
  await expect.poll(async () => (await settings(garage))?.wasteFee?.words).toBe('Oil disposal');
  await expectAxeClean(page, 'fees');
  await openOrder(page, garage, id);
  // 144.00 and 7.20 of supplies and 4.50, 20 % tax.
  await expectOnSheet(page, '186.84');
  await expect(sheetOf(page)).toContainText('Oil disposal');

  await toShop(page, garage, 'fees');
  await choose(page, t('rules.wasteWhen'), t('rules.waste-part-or-fluid'));
  await expect.poll(async () => (await settings(garage))?.wasteFee?.when).toBe('part-or-fluid');
  await openOrder(page, garage, id);
  await expectOnSheet(page, '181.44');
});

test('an old unit’s charge: no tax, or a share of the exchange price, as the owner sets it', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id, 'Swap', [
    { kind: 'part', words: 'Carrier', quantity: 1000, unitPrice: 100_000, condition: 'rebuilt' },
    { kind: 'core', words: 'Old carrier', quantity: 1000, unitPrice: 35_000 },
  ]);
  await enter(page, garage);
  await openOrder(page, garage, id);
  await expectOnSheet(page, '1,620.00');
  await toShop(page, garage, 'fees');
  await choose(page, t('rules.core'), t('rules.core-none'));
  await expect.poll(async () => (await settings(garage))?.coreTax.way).toBe('none');
  await openOrder(page, garage, id);
  await expectOnSheet(page, '1,550.00');
  await toShop(page, garage, 'fees');
  await choose(page, t('rules.core'), t('rules.core-share'));
  await typeCell(page, t('rules.coreShare'), '20');
  await expect.poll(async () => (await settings(garage))?.coreTax).toMatchObject({ way: 'share', bp: 2000 });
  await openOrder(page, garage, id);
  // 1000.00 and 200.00 of tax, 20 % of 200.00 for the old unit, 350.00 untaxed.
  await expectOnSheet(page, '1,590.00');
  await expect(sheetOf(page)).toContainText('on the old unit’s value of 200.00');
});

test('the step of clocked time: its example moves with it', async ({ garage, page }) => {
  await enter(page, garage);
  await toShop(page, garage, 'rates');
  const example = (hours: string) => t('rules.billingExample', { minutes: 76, hours: `${hours}\u00a0h` });
  await expect(page.getByText(example('1.3'))).toBeVisible();
  await typeCell(page, t('rules.billingStep'), '2');
  await expect(page.getByText(t('rules.billingWrong'))).toBeVisible();
  await typeCell(page, t('rules.billingStep'), '0.25');
  await expect(page.getByText(example('1.25'))).toBeVisible();
  await choose(page, t('rules.billingWay'), t('rules.billing-up'));
  await expect(page.getByText(example('1.5'))).toBeVisible();
  expect((await settings(garage))?.billing).toEqual({ step: 250, way: 'up' });
});

test('bands of cost typed in Shop: a new line’s cost fills its price in, another price leaves a trace', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await toShop(page, garage, 'prices');
  await choose(page, t('rules.markup'), t('rules.markupSome'));
  await typeCell(page, t('rules.markupOn', { n: 1 }), '70');
  await typeCell(page, t('rules.markupMore'), '10.00');
  await expect(page.getByLabel(t('rules.markupOn', { n: 2 }))).toBeVisible();
  await typeCell(page, t('rules.markupOn', { n: 1 }), '100');
  await expect
    .poll(async () => (await settings(garage))?.partsMarkup?.bands)
    .toEqual([
      { upTo: 1000, bp: 10_000 },
      { upTo: null, bp: 7000 },
    ]);
  await expectAxeClean(page, 'prices');
  await openOrder(page, garage, id);
  await page.getByLabel(t('sheet.newWords', { letter: 'A' })).fill('Seal');
  await page.getByLabel(t('rules.newCost')).fill('10.01');
  // The guard: 10.01 is not offered below the 20.00 of a cost of 10.00.
  await expect(page.getByPlaceholder('20.00')).toBeVisible();
  await page
    .getByRole('button', { name: t('sheet.add'), exact: true })
    .first()
    .click();
  await expect.poll(async () => (await garage.order(id)).jobs[0]?.lines.at(-1)?.unitPrice).toBe(2000);
  await typeCell(page, t('sheet.cellPrice', { words: 'Seal' }), '18.50');
  await page.getByRole('button', { name: t('edit.moreOf', { words: 'Seal' }) }).focus();
  await page.keyboard.press('Enter');
  const said = { now: '18.50', cost: '10.01', price: '20.00' };
  await expect(page.getByText(t('rules.otherThanOffered', said))).toBeVisible();
  await page.getByRole('button', { name: t('rules.takeOffered', said) }).click();
  await expect(page.getByText(t('rules.asOffered', said))).toBeVisible();
});
