import type { Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field, typeCell } from './window.ts';

const RING = { number: 'OR-583', words: 'O-ring 58 x 3', unit: '', price: 640, cost: 300, bin: 'D 07' };

async function toStock(page: Page, garage: Garage, ...path: string[]): Promise<void> {
  await page.goto(`${garage.door.host.address}/${hrefOf('stock', ...path)}`);
  await expect(page.getByRole('heading', { level: 1, name: t('stock.title') })).toBeVisible();
}

test('a part that was not in stock is added, and a delivery of it taken in by keys alone', async ({ garage, page }) => {
  await enter(page, garage, 'Piet');
  await toStock(page, garage);
  await expect(page.getByText(t('stock.none'))).toBeVisible();
  await toStock(page, garage, 'new');
  await expect(field(page, t('stock.number'))).toBeFocused();
  // Empty fields are told at their place, and the page stays clean for every reader.
  await page.keyboard.press('Enter');
  await expect(page.getByText(t('stock.needed')).first()).toBeVisible();
  await expectAxeClean(page, 'a new part with errors');
  for (const text of ['OR-583', 'O-ring 58 x 3', 'D 07', '', '6.40', '3', '5', '4']) {
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type(text);
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 2, name: 'O-ring 58 x 3' })).toBeVisible();
  await page.keyboard.press('Escape');

  await toStock(page, garage, 'delivery');
  await expect(page.getByLabel(t('stock.which'), { exact: true })).toBeFocused();
  await page.keyboard.type('or-583');
  await page.keyboard.press('Tab');
  await page.keyboard.type('10');
  await page.keyboard.press('Tab');
  await page.keyboard.type('7');
  await expect(page.getByText(t('stock.priceCheck', { price: '6.40', cost: '7.00' }))).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByText(t('stock.taken', { quantity: '10', words: RING.words, onHand: '15' }))).toBeVisible();
  const { rows } = await garage.did('Odile', 'stock.get', {});
  expect(rows).toMatchObject([{ number: 'OR-583', onHand: 15_000, value: 5 * 300 + 10 * 700, keepAtLeast: 4000 }]);
  await expectAxeClean(page, 'a delivery');
});

test('what is short stands in buy next; what is on the way comes in', async ({ garage, page }) => {
  const { id: partId } = await garage.did('Odile', 'part.add', { ...RING, onHand: 2000, keepAtLeast: 3000 });
  const orderId = await garage.booked();
  await garage.job(orderId, 'New O-ring', [{ kind: 'part', words: 'O-ring', partId, quantity: 1000, unitPrice: 640 }]);
  const [line] = (await garage.order(orderId)).jobs[0]?.lines ?? [];
  await garage.did('Piet', 'awaited.order', {
    lineId: line?.id ?? '',
    kind: 'part',
    supplier: 'Pellin Parts',
    dueOn: '2026-01-05',
  });
  await enter(page, garage);
  await toStock(page, garage);
  const bar = { free: '1', spoken: '1', way: '1', least: '3' };
  await expect(page.getByRole('img', { name: t('stock.bar', bar) })).toBeVisible();
  await expect(page.getByRole('region', { name: t('stock.buyNext') })).toContainText('O-ring 58 x 3');
  await expectAxeClean(page, 'stock');
  await page.getByRole('button', { name: t('stock.cameWords', { words: 'O-ring' }) }).click();
  await field(page, t('stock.costWhole')).fill('a lot');
  await page.keyboard.press('Enter');
  await expect(page.getByText(t('stock.costUnread'))).toBeVisible();
  await field(page, t('stock.costWhole')).fill('3.10');
  await page.keyboard.press('Enter');
  await expect(page.getByText(t('stock.wayNothing'))).toBeVisible();
});

test('a part’s cells save; a number that is taken is told; a mechanic sees no price', async ({ garage, page }) => {
  const { id } = await garage.did('Odile', 'part.add', { ...RING, onHand: 2000 });
  await garage.did('Odile', 'part.add', { ...RING, number: 'CW-18', words: 'Crush washer' });
  await enter(page, garage);
  await toStock(page, garage, id);
  await typeCell(page, t('stock.price'), 'dear');
  await expect(page.getByText(t('stock.priceUnread'))).toBeVisible();
  await typeCell(page, t('stock.price'), '7.10');
  await typeCell(page, t('stock.keepAtLeast'), '6');
  await expect
    .poll(async () => (await garage.did('Odile', 'stock.get', { text: 'OR-583' })).rows[0])
    .toMatchObject({ price: 710, keepAtLeast: 6000 });
  await typeCell(page, t('stock.number'), 'CW-18');
  await expect(page.getByText(t('stock.problem-number-taken'))).toBeVisible();
  await expectAxeClean(page, 'a part with an error');

  await page.context().clearCookies();
  await enter(page, garage, 'Runa');
  await toStock(page, garage, id);
  await expect(page.getByText('7.10')).toHaveCount(0);
  await expect(page.getByRole('button', { name: t('stock.delivery') })).toHaveCount(0);
});

test('up and down go from part to part, Enter opens one, Esc leaves it', async ({ garage, page }) => {
  await garage.did('Odile', 'part.add', RING);
  await garage.did('Odile', 'part.add', { ...RING, number: 'CW-18', words: 'Crush washer', bin: 'D 02' });
  await enter(page, garage);
  await toStock(page, garage);
  await expect(page.getByRole('link', { name: /Crush washer/ })).toBeVisible();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 2, name: RING.words })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('heading', { level: 2, name: RING.words })).toHaveCount(0);
});
