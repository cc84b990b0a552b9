import { t } from '../../renderer/words/t.ts';
import { Keys } from './keys.ts';
import { orderWithOilJob } from './oil-job.ts';
import { expect, test } from './shop-fixture.ts';
import { tickStepByKeys } from './steps.ts';
import { field, foot, sheetOf } from './window.ts';

test('clocks, steps, extra work and its yes, the stops before the invoice: without the mouse', async ({
  garage,
  page,
}) => {
  const id = await orderWithOilJob(garage);
  const keys = new Keys(page);
  await keys.enter(garage);
  await expect(page.getByRole('main')).toContainText('KTB 4471');
  await keys.press('ArrowDown', 'Enter');
  await expect(sheetOf(page)).toBeVisible();
  const clocks = page.getByRole('region', { name: t('bench.clocks') });
  await keys.press('Alt+s');
  await expect(clocks.getByRole('button', { name: t('bench.stopOf', { name: 'Odile' }) })).toBeVisible();
  await keys.press('b');
  await expect(page.getByRole('complementary', { name: t('bench.title') })).toBeFocused();
  await keys.to(clocks.getByRole('button', { name: t('bench.startOf', { name: 'Runa', letter: 'A' }) }));
  await keys.press('Enter');
  await expect(clocks.getByRole('button', { name: t('bench.stopOf', { name: 'Runa' }) })).toBeVisible();
  keys.report('two on the clock', 25);

  for (const words of ['Plug washer', 'Gear oil']) {
    await keys.to(page.getByRole('button', { name: t('bench.takeOf', { words }) }));
    await keys.press('Enter');
  }
  const pick = page.getByRole('region', { name: t('bench.pick') });
  await expect(pick.getByText(t('bench.taken'))).toHaveCount(2);
  for (const n of [1, 2, 3]) await tickStepByKeys(keys, page, n);
  keys.report('and every step ticked', 78);

  await keys.press('Alt+j');
  await expect(page.getByRole('combobox', { name: t('sheet.newJob') })).toBeFocused();
  await keys.type('Shaft seal');
  await keys.press('Enter');
  await keys.to(field(page, t('sheet.newWords', { letter: 'B' })), 'Shift+Tab');
  await keys.type('Fit a seal 1.0 h');
  await keys.press('Enter');
  await expect(foot(page)).toContainText(t('parts.heldWait', { n: 1, letters: 'B', sum: '120.96' }));
  await keys.press('Alt+y');
  const form = page.getByRole('form', { name: t('decision.title') });
  await expect(form).toBeVisible();
  await keys.choose(form, t('decision.how'), t('decision.way-phone'));
  await keys.press('Control+Enter');
  await expect(form).toBeHidden();
  await expect(sheetOf(page)).toContainText(t('sheet.covers', { letters: 'B' }));
  keys.report('and the extra work said yes to', 115);

  await keys.to(foot(page).getByRole('button', { name: t('sheet.closeOut') }), 'Shift+Tab');
  await keys.press('Enter');
  const before = page.getByRole('complementary', { name: t('closeOut.before') });
  for (const person of ['Odile', 'Runa']) {
    await keys.to(before.getByRole('button', { name: t('closeOut.stopClock', { person }) }));
    await keys.press('Enter');
    await expect(before.getByRole('button', { name: t('closeOut.stopClock', { person }) })).toBeHidden();
  }
  await keys.to(field(before, t('closeOut.mileageOut')));
  await keys.type('42190');
  await keys.press('Enter');
  await expect(before).toContainText(t('closeOut.done-mileage', { mileage: '42,190\u00a0km' }));
  await keys.to(field(before, t('closeOut.billCost', { words: 'Fluid lab, one sample' })));
  await keys.type('30');
  await keys.press('Enter');
  await expect(before).toContainText(t('closeOut.done-bill'));
  await keys.to(before.getByRole('button', { name: t('closeOut.oldPart-shown') }));
  await keys.press('Enter');
  await expect(before).toContainText(t('closeOut.done-oldParts', { answer: t('closeOut.oldPart-shown') }));
  await keys.press('Control+Enter');
  await expect(page.getByRole('complementary', { name: t('sheet.paper-invoice', { number: 1045 }) })).toBeVisible();
  keys.report('and closed out', 150);

  const order = await garage.order(id);
  expect(order.papers.map((paper) => [paper.kind, paper.gross])).toEqual([['invoice', 30_643]]);
  expect(order.jobs[0]?.steps.map((one) => one.state)).toEqual(['done', 'done', 'done']);
});
