import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { today } from './clock.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field } from './window.ts';

/** Visits of one car with a sample of its axle each, the last one not answered yet. Figures of the lab are invented. */
async function sampled(garage: Garage): Promise<{ carId: string; label: string }> {
  const { car } = await garage.order(await garage.booked({ mileage: 9_000 }));
  const visits = [
    { mileage: 19_000, distance: 10_000, iron: 180, copper: 12 },
    { mileage: 26_500, distance: 7_500, iron: 150, copper: 11 },
    { mileage: 38_500, distance: 12_000, iron: 210, copper: 18 },
    { mileage: 46_500, distance: 8_000, iron: 168, copper: 14 },
    { mileage: 50_500, distance: 4_000, iron: null, copper: null },
  ];
  let label = '';
  for (const { mileage, distance, iron, copper } of visits) {
    const orderId = await garage.booked({ car: { id: car.id }, mileage });
    const unit = { name: 'Rear axle', serial: 'RD-4127X' };
    const sample = await garage.did('Runa', 'sample.draw', { orderId, unit, fluid: 'Gear oil', distance });
    label = sample.label;
    if (iron === null || copper === null) continue;
    await garage.did('Odile', 'sample.result', {
      ...{ id: sample.id, revision: 1, on: today(), remark: 'Wear as usual.' },
      result: {
        metals: [
          { element: 'Fe', ppm: iron * 1000, limit: 400_000 },
          { element: 'Cu', ppm: copper * 1000, limit: 60_000 },
        ],
      },
    });
  }
  return { carId: car.id, label };
}

test('a lab’s answer is entered where the sample stands; its word comes first, then the unit’s own run', async ({
  garage,
  page,
}) => {
  const { carId, label } = await sampled(garage);
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('cars', carId)}`);
  await expect(page.getByRole('heading', { level: 2, name: t('lab.head', { fluid: 'Gear oil' }) })).toBeVisible();
  await expect(page.getByText(t('lab.remark', { remark: 'Wear as usual.' }))).toBeVisible();
  // Three before the last answered one: too few for its own run.
  await expect(page.getByText(t('lab.few-samples', { n: 3, fewest: 4 }))).toBeVisible();
  const row = page.locator('.lab-samples li').filter({ hasText: label });
  await expect(row).toContainText(t('lab.notSent'));

  await row.getByRole('button', { name: t('lab.send') }).click();
  await expectAxeClean(page, 'a sample that is being sent');
  await row.getByRole('button', { name: t('lab.sendIt') }).click();
  await expect(page.getByText(t('lab.labNeeded'))).toBeVisible();
  await field(page, t('lab.lab')).fill('Fennick Fluid Lab');
  await row.getByRole('button', { name: t('lab.sendIt') }).click();
  await expect(row).toContainText('Fennick Fluid Lab');

  await row.getByRole('button', { name: t('lab.enter') }).click();
  await field(page, t('lab.remarkField')).fill('Iron is up: look at the ring gear.');
  await field(page, t('lab.ppmOf', { metal: 'Iron' })).fill('much');
  await row.getByRole('button', { name: t('lab.keep') }).click();
  await expect(page.getByText(t('lab.figureWrong'))).toBeVisible();
  await expectAxeClean(page, 'a lab’s answer with a figure that cannot be read');
  await field(page, t('lab.ppmOf', { metal: 'Iron' })).fill('140');
  await field(page, t('lab.ppmOf', { metal: 'Copper' })).fill('7.5');
  await field(page, t('lab.others')).fill('Ni 4, Pb 2.5');
  await row.getByRole('button', { name: t('lab.keep') }).click();

  await expect(page.getByText(t('lab.remark', { remark: 'Iron is up: look at the ring gear.' }))).toBeVisible();
  // TRADE T32: 35.0 against 19.125 in four samples, alarm at 24.08.
  await expect(page.getByText(/^Iron 35 ppm .* 19\.13 .* 24\.08, its own alarm\.$/)).toBeVisible();
  await expect(page.getByText(t('lab.hint'))).toBeVisible();
  const drawing = page.getByRole('img', { name: /Iron: 180, 150, 210, 168, 140 ppm/ });
  await expect(drawing).toBeVisible();
  await expect(drawing).toHaveAccessibleName(/Nickel: 4 ppm/);
  await expectAxeClean(page, 'a car whose oil was at the lab');
  const kept = await garage.did('Odile', 'sample.list', { carId });
  expect(kept.rows[0]).toMatchObject({
    label,
    lab: 'Fennick Fluid Lab',
    result: {
      metals: [
        { element: 'Fe', ppm: 140_000 },
        { element: 'Cu', ppm: 7_500 },
        { element: 'Ni', ppm: 4_000 },
        { element: 'Pb', ppm: 2_500 },
      ],
    },
  });
});
