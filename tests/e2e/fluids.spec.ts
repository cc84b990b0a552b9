import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field } from './window.ts';

test('what came out of cars stands in the used-oil log with its sums', async ({ garage, page }) => {
  const orderId = await garage.booked();
  const jobId = await garage.job(orderId);
  await garage.yes(orderId);
  const axle = { name: 'Rear axle', serial: 'RD-4127X' };
  const out = { jobId, unit: axle, direction: 'out' as const };
  for (const value of [1200, 150])
    await garage.did('Runa', 'fluid.record', { ...out, fluid: 'Gear oil', amount: { value, in: 'L' } });
  await garage.did('Runa', 'fluid.record', { ...out, fluid: 'Brake fluid', amount: { value: 300, in: 'L' } });

  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('stock')}`);
  await page.getByRole('button', { name: t('fluids.open') }).click();
  const log = page.getByRole('table');
  await expect(log.getByRole('row')).toHaveCount(1 + 3 + 3);
  await expect(log.locator('tfoot')).toContainText(/Brake fluid\s*0\.3\s*Gear oil\s*1\.35\s*All of it\s*1\.65/);
  await field(page, t('fluids.from')).fill('2099-01-01');
  await expect(page.getByText(t('fluids.wrongDays'))).toBeVisible();
  await expect(log).toHaveCount(0);
  await field(page, t('fluids.from')).fill('2020-01-01');
  await expect(log).toBeVisible();
  await expectAxeClean(page, 'used oil');
});
