import { readFileSync } from 'node:fs';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { now } from './clock.ts';
import { expect, test } from './shop-fixture.ts';
import { enter } from './window.ts';

const DAY = 86_400_000;
const ORDERS = 240;

test('two years of orders: only what is near is made, the months lead there, CSV holds them all', async ({
  garage,
  page,
}) => {
  test.slow();
  // One car, an order every third day, each a change of its own at its own time.
  const began = now();
  const first = await garage.booked({}, began - ORDERS * 3 * DAY);
  const { customer, car } = await garage.order(first);
  for (let n = ORDERS - 1; n > 0; n -= 1)
    await garage.booked(
      { customer: { id: customer.id }, car: { id: car.id }, complaint: `Noise ${n}`, mileage: null },
      began - n * 3 * DAY,
    );
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('orders')}`);
  const rows = page.locator('a.order-row');
  await expect(rows.first()).toBeVisible();
  await expect(page.getByText(`of ${ORDERS}`)).toBeVisible();
  await expect.poll(() => rows.count()).toBeLessThan(ORDERS / 2);
  await expectAxeClean(page, 'orders of two years');

  const oldest = await garage.order(first);
  await page.getByRole('slider', { name: t('orders.months') }).focus();
  await page.keyboard.press('End');
  await expect(page.getByRole('link', { name: new RegExp(`^${oldest.number} `) })).toBeVisible({ timeout: 40_000 });
  await expect.poll(() => rows.count()).toBeLessThan(ORDERS / 2);

  await page.getByRole('textbox', { name: t('orders.text') }).fill('Noise 17');
  await expect(page.getByText(/ of 11$/)).toBeVisible();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: t('orders.save') }).click();
  const lines = readFileSync(await (await download).path(), 'utf8')
    .trim()
    .split('\r\n');
  expect(lines).toHaveLength(12);
  expect(lines[0]).toBe('order,day,plate,customer,car,jobs,on the sheet,stands');
});
