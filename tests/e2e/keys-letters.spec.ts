import { t } from '../../renderer/words/t.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, openOrder } from './window.ts';

test('with single letters off they are letters, and the other keys go on', async ({ garage, page }) => {
  await garage.job(await garage.booked());
  await page.context().addInitScript(() => {
    localStorage.setItem('crownwheel-machine', JSON.stringify({ letters: false }));
  });
  await enter(page, garage);
  await page.keyboard.press('n');
  await page.keyboard.press('Control+k');
  await expect(page.getByRole('combobox', { name: t('frame.find') })).toBeFocused();
  await expect(page.getByRole('heading', { level: 1, name: t('today.title') })).toBeVisible();
  await openOrder(page, garage, (await garage.did('Odile', 'today.get', {})).rows[0]?.orderId ?? '');
  await page.keyboard.press('Alt+y');
  await expect(page.getByRole('form', { name: t('decision.title') })).toBeVisible();
});
