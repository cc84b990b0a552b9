import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field } from './window.ts';

test('a pump is added and measured; what came out of cars stands in the log with its sums', async ({
  garage,
  page,
}) => {
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
  await expect(page.getByText(t('fluids.noPumps'))).toBeVisible();
  await page.getByRole('button', { name: t('fluids.add') }).click();
  await page.getByRole('button', { name: t('fluids.add') }).click();
  await expect(page.getByText(t('fluids.nameNeeded'))).toBeVisible();
  await field(page, t('fluids.name')).fill('Blue pump');
  await page.getByRole('button', { name: t('fluids.add') }).click();
  await expect(page.getByText(t('fluids.never'))).toBeVisible();

  await page.getByRole('button', { name: `${t('fluids.measure')} Blue pump` }).click();
  await field(page, t('fluids.strokes')).fill('53');
  await field(page, t('fluids.gave')).fill('much');
  await page.getByRole('button', { name: t('fluids.keep') }).click();
  await expect(page.getByText(t('fluids.gaveWrong'))).toBeVisible();
  await expectAxeClean(page, 'a pump that is being measured');
  await field(page, t('fluids.gave')).fill('1.06');
  await page.getByRole('button', { name: t('fluids.keep') }).click();
  // 1.060 L in 53 strokes are 20 mL a stroke.
  const row = page.locator('.fluid-rows li');
  await expect(row).toContainText(/53 strokes gave 1\.06\sL: 20\smL a stroke/);

  const log = page.getByRole('table');
  await expect(log.getByRole('row')).toHaveCount(1 + 3 + 3);
  await expect(log.locator('tfoot')).toContainText(/Brake fluid\s*0\.3\s*Gear oil\s*1\.35\s*All of it\s*1\.65/);
  await field(page, t('fluids.from')).fill('2099-01-01');
  await expect(page.getByText(t('fluids.wrongDays'))).toBeVisible();
  await expect(log).toHaveCount(0);
  await field(page, t('fluids.from')).fill('2020-01-01');
  await expect(log).toBeVisible();
  await expectAxeClean(page, 'pumps and used oil');

  await page.getByRole('button', { name: `${t('fluids.takeOut')} Blue pump` }).click();
  await expect(row).toContainText(t('fluids.out'));
  expect((await garage.did('Odile', 'pump.list', {})).rows).toMatchObject([{ takenOut: true }]);
});
