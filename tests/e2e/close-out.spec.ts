import type { Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { OIL_SUM, orderWithOilJob } from './oil-job.ts';
import { expect, test } from './shop-fixture.ts';
import { tickStep } from './steps.ts';
import { choose, enter, expectOnSheet, field, foot, openOrder, sheetOf } from './window.ts';

const bench = (page: Page) => page.getByRole('complementary', { name: t('bench.title') });
const clocks = (page: Page) => page.getByRole('region', { name: t('bench.clocks') });

test('two people clock on, parts are drawn, steps ticked; what is found beyond the yes waits for its own', async ({
  garage,
  page,
}) => {
  const id = await orderWithOilJob(garage);
  await enter(page, garage);
  await openOrder(page, garage, id);
  await expectOnSheet(page, OIL_SUM);
  for (const name of ['Runa', 'Nessa']) {
    await clocks(page)
      .getByRole('button', { name: t('bench.startOf', { name, letter: 'A' }) })
      .click();
    await expect(clocks(page).getByRole('button', { name: t('bench.stopOf', { name }) })).toBeVisible();
  }
  for (const words of ['Plug washer', 'Gear oil'])
    await page.getByRole('button', { name: t('bench.takeOf', { words }) }).click();
  await expect(page.getByRole('region', { name: t('bench.pick') }).getByText(t('bench.taken'))).toHaveCount(2);
  for (const n of [1, 2, 3]) await tickStep(page, n);

  await field(page, t('sheet.foundNew')).fill('Left shaft seal is torn');
  await page.getByRole('button', { name: t('sheet.add'), exact: true }).click();
  await page.getByRole('button', { name: t('sheet.toJob') }).click();
  await field(page, t('sheet.newWords', { letter: 'B' })).fill('Fit a seal 1.0 h');
  await page.getByRole('button', { name: t('sheet.add'), exact: true }).click();
  // 1 h and its supplies, 20 % tax: 120.96 more
  await expectOnSheet(page, '306.43');
  await expect(foot(page)).toContainText(t('parts.heldWait', { n: 1, letters: 'B', sum: '120.96' }));
  await bench(page).getByRole('button', { name: /^B/ }).click();
  await expect(bench(page)).toContainText(t('bench.heldNoYes', { letter: 'B' }));
  await expect(
    clocks(page).getByRole('button', { name: t('bench.startOf', { name: 'Odile', letter: 'B' }) }),
  ).toBeHidden();

  await foot(page)
    .getByRole('button', { name: t('decision.record') })
    .click();
  const form = page.getByRole('form', { name: t('decision.title') });
  await choose(form, t('decision.how'), t('decision.way-phone'));
  await field(form, t('decision.wordsLabel')).fill('The seal too, yes.');
  await foot(page)
    .getByRole('button', { name: t('decision.record') })
    .click();
  await expect(form).toBeHidden();
  await expect(sheetOf(page)).toContainText(t('sheet.covers', { letters: 'B' }));
  await bench(page).getByRole('button', { name: /^B/ }).click();
  await clocks(page)
    .getByRole('button', { name: t('bench.startOf', { name: 'Odile', letter: 'B' }) })
    .click();
  await expect(clocks(page).getByRole('button', { name: t('bench.stopOf', { name: 'Odile' }) })).toBeVisible();

  const order = await garage.order(id);
  expect(order.decisions.map((one) => one.ceiling)).toEqual([18_547, 30_643]);
  expect(order.openClocks.map((clock) => clock.person).sort()).toEqual(['Nessa', 'Odile', 'Runa']);
  expect(order.moves.map((move) => move.quantity).sort()).toEqual([-1200, -2000]);
  expect(order.jobs[0]?.steps.map((step) => [step.state, step.entered, step.secondBy])).toEqual([
    ['done', 0, null],
    ['done', 0, null],
    ['done', 2, 'Nessa'],
  ]);
});

test('what stops the invoice is named and mended where it stands; a job without a yes moves to an order of its own', async ({
  garage,
  page,
}) => {
  const id = await orderWithOilJob(garage);
  await garage.job(id, 'Look at the mounts');
  const [oil] = (await garage.order(id)).jobs;
  await garage.did('Runa', 'clock.on', { jobId: oil?.id ?? '' });
  await enter(page, garage);
  await openOrder(page, garage, id);
  await foot(page)
    .getByRole('button', { name: t('sheet.closeOut') })
    .click();
  const before = page.getByRole('complementary', { name: t('closeOut.before') });
  const make = foot(page).getByRole('button', { name: t('closeOut.make') });
  await expect(make).toBeDisabled();

  await before.getByRole('button', { name: t('closeOut.stopClock', { person: 'Runa' }) }).click();
  await expect(before).toContainText(t('closeOut.done-clocks'));
  await before.getByRole('button', { name: t('closeOut.moveOf', { letter: 'B' }) }).click();
  await expect(before.getByRole('status')).toContainText('1188');
  await expect(before).toContainText(t('closeOut.done-yes'));
  await field(before, t('closeOut.billCost', { words: 'Fluid lab, one sample' })).fill('30');
  await before.getByRole('button', { name: t('closeOut.billHere') }).click();
  await expect(before).toContainText(t('closeOut.done-bill'));
  await before.getByRole('button', { name: t('closeOut.oldPart-shown') }).click();
  await expect(before).toContainText(t('closeOut.done-oldParts', { answer: t('closeOut.oldPart-shown') }));
  await field(before, t('closeOut.mileageOut')).fill('42,100');
  await before.getByRole('button', { name: t('closeOut.write') }).click();
  await expect(field(before, t('closeOut.mileageOut'))).toHaveAccessibleDescription(
    t('closeOut.belowIn', { mileage: '42,180\u00a0km' }),
  );
  await field(before, t('closeOut.mileageOut')).fill('42,190');
  await before.getByRole('button', { name: t('closeOut.write') }).click();
  await expect(before).toContainText(t('closeOut.done-mileage', { mileage: '42,190\u00a0km' }));

  // What was not tightened by the book is the owner's to let pass, once and printed.
  const reasons = before.getByRole('textbox', { name: t('closeOut.ownerReason') });
  await expect(make).toBeDisabled();
  const { stops } = await garage.order(id);
  await expect(reasons).toHaveCount(stops.length);
  for (let at = 0; at < stops.length; at += 1) {
    await reasons.nth(at).fill('drained by the customer, filled here');
    await expect(reasons.nth(at)).toHaveValue(/drained/);
  }
  await expect(make).toBeEnabled();
  await make.click();
  await expect(page.getByRole('complementary', { name: t('sheet.paper-invoice', { number: 1045 }) })).toBeVisible();
  const order = await garage.order(id);
  expect(order.papers.map((paper) => [paper.kind, paper.gross])).toEqual([['invoice', 18_547]]);
  expect(order.jobs).toHaveLength(1);
});
