import type { Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field, typeCell } from './window.ts';

async function toShop(page: Page, garage: Garage, name: string): Promise<void> {
  await page.goto(`${garage.door.host.address}/${hrefOf('shop', name)}`);
  await expect(page.getByRole('heading', { level: 1, name: t('shop.title') })).toBeVisible();
}
const shopNow = (garage: Garage) => garage.did('Odile', 'shop.get', {});
const settingsNow = async (garage: Garage) => (await shopNow(garage)).settings;

const PAGES = [
  ...([
    'garage',
    'tax',
    'fees',
    'prices',
    'rates',
    'people',
    'bays',
    'wrenches',
    'pumps',
    'samples',
    'lists',
    'reminding',
  ] as const),
  ...(['yes', 'numbers', 'copies', 'keys', 'program'] as const),
];

test('axe finds nothing in any page of Shop', async ({ garage, page }) => {
  await enter(page, garage);
  for (const name of PAGES) {
    await toShop(page, garage, name);
    await expect(page.getByRole('heading', { level: 2, name: t(`shop.page-${name}`) })).toBeVisible();
    await expectAxeClean(page, name);
  }
});

test('the head, an address line, a tax with its day, the rule of the yes: each cell saves', async ({
  garage,
  page,
}) => {
  await enter(page, garage);
  await toShop(page, garage, 'garage');
  await typeCell(page, t('shop.name'), ' ');
  await expect(page.getByText(t('start.nameNeeded'))).toBeVisible();
  await typeCell(page, t('shop.name'), 'Saltmarsh Motors');
  await typeCell(page, t('shop.addressLine', { n: 3 }), 'East Shore');
  await expect
    .poll(() => settingsNow(garage))
    .toMatchObject({
      name: 'Saltmarsh Motors',
      address: ['14 Causeway Road', 'Port Ansel', 'East Shore'],
    });

  await toShop(page, garage, 'tax');
  await typeCell(page, t('start.taxRate'), 'much');
  await expect(page.getByText(t('start.taxRateWrong'))).toBeVisible();
  await expectAxeClean(page, 'a rate that does not fit');
  await typeCell(page, t('start.taxRate'), '8.875');
  // Its own row of kinds: what supplies are a share of names labour as well.
  await page
    .getByRole('group', { name: t('start.taxKinds') })
    .getByText(t('start.labour'), { exact: true })
    .click();
  const day = page.getByLabel(t('start.checkedOn'));
  await day.fill('2026-11-02');
  await day.blur();
  await expect
    .poll(async () => (await settingsNow(garage))?.taxes[0])
    .toMatchObject({
      ratePpm: 88_750,
      kinds: ['part', 'fluid', 'outside', 'supplies', 'fee', 'core'],
      checkedOn: '2026-11-02',
    });

  await toShop(page, garage, 'yes');
  await page.getByText(t('start.lesser'), { exact: true }).click();
  await typeCell(page, t('start.overPercent'), '10');
  await typeCell(page, t('start.overSum'), '50.00');
  await expect(page.getByText(t('shop.example', { yes: '1,000.00', limit: '1,050.00' }))).toBeVisible();
});

test('a setting changed meanwhile elsewhere loses nothing; the same cell leaves the choice', async ({
  garage,
  page,
}) => {
  await enter(page, garage);
  await toShop(page, garage, 'garage');
  const change = async (settings: { phone?: string; email?: string }) => {
    const { revision } = await shopNow(garage);
    await garage.did('Odile', 'shop.change', { revision, settings });
  };
  await field(page, t('shop.phone')).fill('555-0199');
  await change({ email: 'desk@saltmarsh.example' });
  await field(page, t('shop.phone')).press('Tab');
  await expect.poll(() => settingsNow(garage)).toMatchObject({ phone: '555-0199', email: 'desk@saltmarsh.example' });
});

test('rates and bays are added and renamed; two of one name are refused', async ({ garage, page }) => {
  await enter(page, garage);
  await toShop(page, garage, 'rates');
  await typeCell(page, t('shop.anotherRate'), 'Account');
  await typeCell(page, t('shop.ratePrice', { name: 'Account' }), '88.00');
  await page.getByLabel(t('shop.usual')).last().click();
  await expect
    .poll(async () => (await shopNow(garage)).rates)
    .toMatchObject([
      { name: 'Labour', usual: false },
      { name: 'Account', price: 8800, usual: true },
    ]);
  await typeCell(page, t('shop.rateName', { name: 'Account' }), 'labour');
  await expect(page.getByText(t('shop.problem-same-name-twice'))).toBeVisible();

  await toShop(page, garage, 'bays');
  await typeCell(page, t('shop.anotherBay'), 'Yard');
  await typeCell(page, t('shop.bay-words', { name: 'Yard' }), 'no roof');
  await typeCell(page, t('shop.planOpens'), '7:30');
  await expect.poll(async () => (await shopNow(garage)).bays).toMatchObject([{ name: 'Bay 1' }, { words: 'no roof' }]);
  await expect.poll(async () => (await settingsNow(garage))?.planOpens).toBe('07:30');
});

test('a person is added and given another code; the last owner stays', async ({ garage, page }) => {
  await enter(page, garage);
  await toShop(page, garage, 'people');
  const add = page.getByRole('button', { name: t('shop.addPerson') });
  await add.click();
  await expect(page.getByText(t('start.codeWrong'))).toBeVisible();
  await expectAxeClean(page, 'a person without a name');
  await field(page, t('start.person')).last().fill('Sami');
  await page.getByLabel(t('start.code'), { exact: true }).fill('sami-1234');
  await add.click();
  const sami = page.getByRole('region', { name: 'Sami' });
  await expect(sami).toBeVisible();
  await sami.getByLabel(t('shop.newCode', { name: 'Sami' })).fill('other-code');
  await sami.getByRole('button', { name: t('shop.setCode') }).click();
  await expect(sami.getByText(t('shop.codeSet', { name: 'Sami' }))).toBeVisible();
  const { people } = await shopNow(garage);
  const id = people.find((person) => person.name === 'Sami')?.id ?? '';
  expect(await garage.shop.enter(id, 'other-code')).toMatchObject({ ok: true });
  expect(await garage.shop.enter(id, 'sami-1234')).toMatchObject({ ok: false });
  await page.getByRole('region', { name: 'Odile' }).getByLabel(t('start.does')).selectOption('desk');
  await expect(page.getByText(t('shop.not-allowed-last-owner'))).toBeVisible();
});

test('everything is checked from the window, and what was done is read', async ({ garage, page }) => {
  await garage.booked();
  await enter(page, garage);
  await toShop(page, garage, 'copies');
  await expect(page.getByText(t('shop.noCopy'))).toBeVisible();
  await page.getByRole('button', { name: t('shop.verifyNow') }).click();
  await expect(page.getByText(/All of it agrees/)).toBeVisible();
  await expect(page.getByRole('region', { name: t('shop.trail') })).toContainText(t('shop.did-order.book'));
});

test('who is no owner reads the settings and changes none', async ({ garage, page }) => {
  await enter(page, garage, 'Piet');
  await toShop(page, garage, 'garage');
  await expect(page.getByText(t('shop.ownerChanges'))).toBeVisible();
  await expect(field(page, t('shop.name'))).toHaveAttribute('readonly', '');
  await toShop(page, garage, 'copies');
  await expect(page.getByText(t('shop.ownerOpens'))).toBeVisible();
});

test.describe('copies', () => {
  // A copy carries the time of the machine's own disk.
  test.use({ begins: 'real' });

  test('a copy is made from the window, and a folder that is not there is told', async ({ garage, page }) => {
    await enter(page, garage);
    await toShop(page, garage, 'copies');
    await field(page, t('shop.copyTo')).fill('/no/such/folder');
    await page.getByRole('button', { name: t('shop.copyNow') }).click();
    await expect(page.getByText(t('shop.problem-not-a-folder'))).toBeVisible();
    await expectAxeClean(page, 'a copy to nowhere');
    await field(page, t('shop.copyTo')).fill('');
    await page.getByRole('button', { name: t('shop.copyNow') }).click();
    await expect(page.getByText(/^Last copy \d+:\d\d, checked whole\.$/)).toBeVisible();
  });
});
