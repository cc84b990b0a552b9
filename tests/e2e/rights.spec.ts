import { t } from '../../renderer/words/t.ts';
import { orderWithOilJob } from './oil-job.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, foot, openOrder, sheetOf } from './window.ts';

test('a mechanic sees the work and no sum of it, and starts their own clock only', async ({ garage, page }) => {
  const id = await orderWithOilJob(garage);
  const coming: Promise<string>[] = [];
  page.on('response', (response) => {
    if (response.url().endsWith('/call')) coming.push(response.text().catch(() => ''));
  });
  await enter(page, garage, 'Runa');
  await openOrder(page, garage, id);
  await expect(sheetOf(page)).toContainText('Gear oil');
  await expect(foot(page)).toContainText(t('parts.benchInside'));
  await expect(sheetOf(page)).not.toContainText(/\d\.\d\d\b/);
  for (const words of [t('decision.record'), t('sheet.closeOut'), t('sheet.quote')])
    await expect(page.getByRole('button', { name: words })).toHaveCount(0);
  const clocks = page.getByRole('region', { name: t('bench.clocks') });
  await expect(clocks.getByRole('button', { name: t('bench.startOf', { name: 'Nessa', letter: 'A' }) })).toHaveCount(0);
  await clocks.getByRole('button', { name: t('bench.startOf', { name: 'Runa', letter: 'A' }) }).click();
  await expect(clocks.getByRole('button', { name: t('bench.stopOf', { name: 'Runa' }) })).toBeVisible();
  // Not in the window only: no price of the sheet came to it at all.
  const answers = await Promise.all(coming);
  expect(answers.some((text) => text.includes('Gear oil'))).toBe(true);
  for (const sum of ['3150', '9600', '18547', '4200']) expect(answers.join('\n')).not.toMatch(new RegExp(`:${sum}\\b`));
});

test('somebody else takes the window over with their own code, and sees what is theirs to see', async ({
  garage,
  page,
}) => {
  const id = await orderWithOilJob(garage);
  await enter(page, garage, 'Odile');
  await openOrder(page, garage, id);
  await expect(foot(page)).toContainText('185.47');
  await page
    .getByRole('navigation')
    .getByRole('button', { name: t('frame.changePerson') })
    .click();
  await expect(page.getByRole('heading', { name: t('frame.enterTitle') })).toBeVisible();
  await expect(page.locator('body')).not.toContainText('185.47');
  await page.goBack();
  await expect(page.getByRole('heading', { name: t('frame.enterTitle') })).toBeVisible();
  await expect(page.locator('body')).not.toContainText('185.47');
});
