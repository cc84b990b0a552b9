import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field } from './window.ts';

test('a pump is measured by a fill, and a list is written, changed and taken out', async ({ garage, page }) => {
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('shop', 'pumps')}`);
  await field(page, t('tools.pumpName')).fill('Pump A');
  await page.getByRole('button', { name: t('tools.pumpAdd') }).click();
  const pump = page.getByRole('region', { name: 'Pump A' });
  await expect(pump).toContainText(t('tools.notMeasured'));
  await pump.getByRole('button', { name: t('tools.measureOf', { name: 'Pump A' }) }).click();
  await expect(pump.getByText(t('tools.strokesWrong'))).toBeVisible();
  await expectAxeClean(page, 'a pump without its figures');
  await field(pump, t('tools.strokesOf', { name: 'Pump A' })).fill('50');
  await field(pump, t('tools.gave', { name: 'Pump A' })).fill('1.04');
  await pump.getByRole('button', { name: t('tools.measureOf', { name: 'Pump A' }) }).click();
  // 1.04 L in 50 strokes is 20.8 ml a stroke.
  await expect(pump).toContainText(/50 strokes gave 1\.04\sL: 20\.8 ml a stroke, measured by Piet/);

  await page.goto(`${garage.door.host.address}/${hrefOf('shop', 'lists')}`);
  await page.getByRole('button', { name: t('tools.listAdd') }).click();
  await page.getByRole('button', { name: t('tools.keepList') }).click();
  await expect(page.getByText(t('tools.titleNeeded'))).toBeVisible();
  await field(page, t('tools.listTitle')).fill('Round the car');
  await field(page, t('tools.itemWords')).fill('Tyres');
  await field(page, t('tools.what')).fill('tread');
  await field(page, t('found.atLeast')).fill('three');
  await page.getByRole('button', { name: t('tools.keepList') }).click();
  await expect(page.getByText(t('bench.noFigure'))).toBeVisible();
  await expectAxeClean(page, 'a list that does not fit yet');
  await field(page, t('found.atLeast')).fill('3');
  await page.getByRole('button', { name: t('tools.itemAdd') }).click();
  await page
    .getByRole('group', { name: t('tools.item', { n: 2 }) })
    .getByRole('textbox', { name: t('tools.itemWords') })
    .fill('Lights');
  await page.getByRole('button', { name: t('tools.keepList') }).click();
  const mine = page.getByRole('region', { name: 'Round the car' });
  await expect(mine).toContainText(t('leave.items', { n: 2 }));
  const lists = async () => (await garage.did('Piet', 'checkList.list', {})).rows;
  const list = (await lists()).find((one) => one.title === 'Round the car');
  expect(list?.items.map((item) => [item.words, item.measure?.least ?? null])).toEqual([
    ['Tyres', 3000],
    ['Lights', null],
  ]);
  await mine.getByRole('button', { name: t('tools.changeOf', { title: 'Round the car' }) }).click();
  await mine.getByRole('button', { name: t('tools.listOut') }).click();
  await expect(mine).toBeHidden();
  expect((await lists()).find((one) => one.id === list?.id)?.takenOut).toBe(true);
});
