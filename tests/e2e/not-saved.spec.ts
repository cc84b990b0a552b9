import type { Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, expectOnSheet, field, openOrder, typeCell } from './window.ts';

/** The disk is full for whatever changes something; reading goes on. Returns how there is room again. */
async function fillDisk(page: Page): Promise<() => Promise<void>> {
  await page.route('**/call', async (route) => {
    const { request } = route.request().postDataJSON() as { request?: string };
    if (request === undefined) await route.continue();
    else await route.fulfill({ json: { ok: false, error: { code: 'disk-full' } } });
  });
  return () => page.unroute('**/call');
}

const line = (page: Page) => page.locator('.unsaved');

test('the disk is full: it is said above the foot, what was typed stays, and one press saves all of it', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id);
  const makeRoom = await fillDisk(page);
  const price = t('sheet.cellPrice', { words: 'Road test' });
  await typeCell(page, price, '100');
  await expect(line(page)).toContainText(`${t('parts.notSaved')} ${t('errors.disk-full')} ${t('parts.wordsStay')}`);
  await typeCell(page, t('sheet.says'), 'It whines, and clunks.');
  await expect(field(page, t('sheet.says'))).toHaveValue('It whines, and clunks.');
  await expect(field(page, price)).toHaveValue('100');
  await expectAxeClean(page, 'a sheet that could not be saved');
  // The line lies on the foot, not under it.
  await expect
    .poll(async () => {
      const [above, foot] = [await line(page).boundingBox(), await page.locator('.foot').boundingBox()];
      return above !== null && foot !== null && Math.abs(above.y + above.height - foot.y) < 2;
    })
    .toBe(true);
  await makeRoom();
  await line(page)
    .getByRole('button', { name: t('parts.tryAgain') })
    .click();
  // 1.5 h at 100.00, 5 % supplies, 20 % tax
  await expectOnSheet(page, '189.00');
  await expect(line(page)).toBeHidden();
  await expect.poll(async () => (await garage.order(id)).complaint).toBe('It whines, and clunks.');
});

test('what is taken back waits for nothing; a cell of another place says it as well', async ({ garage, page }) => {
  const { car } = await garage.order(await garage.booked());
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('cars', car.id)}`);
  await fillDisk(page);
  await typeCell(page, t('cars.year'), '2017');
  await expect(line(page)).toContainText(t('errors.disk-full'));
  await field(page, t('cars.year')).press('Escape');
  await expect(line(page)).toBeHidden();
  await expect(field(page, t('cars.year'))).toHaveValue('2016');
});
