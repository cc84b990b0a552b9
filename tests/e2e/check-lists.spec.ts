import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field, typeCell } from './window.ts';

test('the shop writes its own list: items, a measure with its limits and their source, what is not wanted taken out', async ({
  garage,
  page,
}) => {
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('shop', 'checks')}`);
  await field(page, t('checkLists.title')).fill('Winter');
  await page.getByRole('button', { name: t('checkLists.add') }).click();
  await expect(page.getByText(t('checkLists.itemWrong'))).toBeVisible();
  await field(page, t('checkLists.first')).fill('Battery');
  await page.getByRole('button', { name: t('checkLists.add') }).click();
  await expect(page.getByRole('region', { name: 'Winter' })).toBeVisible();

  await typeCell(page, t('checkLists.anotherOf', { list: 'Winter' }), 'Tyre');
  const cell = (name: 'place' | 'what' | 'unit' | 'least' | 'source') =>
    t('checkLists.cell', { field: t(`checkLists.${name}`), n: 2, list: 'Winter' });
  await expect(page.getByRole('textbox', { name: cell('place') })).toBeVisible();
  await typeCell(page, cell('least'), '4');
  await expect(page.getByText(t('checkLists.measureFirst'))).toBeVisible();
  await page.getByRole('textbox', { name: cell('least') }).press('Escape');
  await typeCell(page, cell('place'), 'front left');
  await typeCell(page, cell('what'), 'tread');
  await typeCell(page, cell('unit'), 'mm');
  await typeCell(page, cell('least'), '4');
  await typeCell(page, cell('source'), 'our own rule');
  await expectAxeClean(page, 'check lists');
  const winter = async () =>
    (await garage.did('Odile', 'checkList.list', {})).rows.find(({ title }) => title === 'Winter');
  await expect
    .poll(async () => (await winter())?.items[1])
    .toEqual({
      words: 'Tyre',
      place: 'front left',
      measure: { what: 'tread', unit: 'mm', least: 4000, most: null, source: 'our own rule' },
    });

  await page.getByRole('button', { name: t('checkLists.takeOutOf', { n: 1, item: 'Battery' }) }).click();
  await expect.poll(async () => (await winter())?.items.map(({ words }) => words)).toEqual(['Tyre']);
  const off = t('checkLists.turnOf', { act: t('checkLists.leaveOff'), list: 'Winter' });
  await page.getByRole('button', { name: off }).click();
  await expect.poll(async () => (await winter())?.takenOut).toBe(true);
});
