import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { enterByTouch, inHand, press, TABLET, tighten, tooSmall } from './bay.ts';
import { PEOPLE } from './garage.ts';
import { orderWithRing, touchesMade } from './ring-job.ts';
import { expect, test } from './shop-fixture.ts';

test.use(TABLET);

test('a job beside the lift by touch alone: clock, a ring in its order, who signs, a figure, a fill', async ({
  garage,
  page,
}) => {
  const { orderId, jobId } = await orderWithRing(garage);
  await enterByTouch(page, garage.door.host.newLink('tablet'));
  // From the list of today over the sheet to the bench.
  await page.getByText('KTB 4471').first().tap();
  await page.getByRole('button', { name: t('bench.title'), exact: true }).tap();
  await expect(page.locator('.bay')).toBeVisible();
  await press(page, t('bench.startOf', { name: 'Runa', letter: 'A' }));
  await expect(page.getByRole('button', { name: t('bench.stopOf', { name: 'Runa' }) })).toBeVisible();
  expect(await tooSmall(page)).toEqual([]);
  await press(page, t('bench.stepDone', { n: 1 }));

  // Bolts are numbered in the order of tightening, so the one in hand is always the next number.
  const step = inHand(page, 2);
  await expect(step).toContainText('30\u00a0N·m');
  await expect(step).toContainText('22\u00a0lbf·ft');
  expect(await tooSmall(page)).toEqual([]);
  await expectAxeClean(page, 'a ring of bolts beside the lift');
  for (const bolt of [1, 2, 3]) await tighten(page, bolt);
  await press(step, t('bench.backOne'));
  await expect(page.getByRole('button', { name: t('bench.boltTight', { bolt: 3 }) })).toBeVisible();
  for (const bolt of [3, 4, 5, 6]) await tighten(page, bolt);
  await expect(step).toContainText('60\u00a0N·m');
  await expect.poll(() => touchesMade(garage, jobId)).toEqual({ made: 6, due: 6 });
  // The second round is told after it was done: one minute, and the record says so.
  await press(step, t('bench.many'));
  await press(step, t('bench.manyRound', { n: 6 }));
  await expect(step).toContainText(t('parts.allTight', { n: 6 }));
  await expect(step).toContainText(t('bench.together', { n: 6 }));

  // Nobody signs for themselves: the one at the tablet is not among those who may.
  const who = step.getByRole('group', { name: t('bench.second') });
  await expect(who.getByText('Runa')).toHaveCount(0);
  await press(step, t('bench.stepDone', { n: 2 }));
  await expect(step.getByRole('alert')).toBeVisible();
  await who.getByText('Nessa', { exact: true }).tap();
  await step.getByLabel(t('bench.secondCode')).fill('not hers');
  await press(step, t('bench.stepSigned', { n: 2 }));
  await expect(step.getByRole('alert')).toBeVisible();
  await step.getByLabel(t('bench.secondCode')).fill(PEOPLE[3].code);
  await press(step, t('bench.stepSigned', { n: 2 }));

  // A figure outside its limits is not done; it failed, and what next is said.
  const measure = inHand(page, 3);
  await measure.getByLabel(t('bench.place', { n: 1 })).fill('0.15');
  await measure.getByLabel(t('bench.place', { n: 2 })).fill('0.21');
  await expect(measure).toContainText(t('bench.over', { by: '0.03', unit: 'mm' }));
  await press(measure, t('bench.stepDone', { n: 3 }));
  await expect(page.getByRole('status').filter({ hasText: t('bench.tapLeave') })).toBeVisible();
  await press(page, t('bench.tapLeave'));
  await press(measure, t('bench.failed'));
  await measure.getByLabel(t('bench.whatNext')).fill('shims swapped, measured again');
  await press(measure, t('bench.failed'));
  await expect(measure).toContainText(t('bench.state-failed', { why: 'shims swapped, measured again' }));
  await inHand(page, 3)
    .getByLabel(t('bench.place', { n: 1 }))
    .fill('0.15');
  await inHand(page, 3)
    .getByLabel(t('bench.place', { n: 2 }))
    .fill('0.16');
  await press(inHand(page, 3), t('bench.stepDone', { n: 3 }));

  const fill = inHand(page, 4);
  await expect(fill).toContainText('it runs over the hole');
  await fill.getByText(t('bench.unit-rear'), { exact: true }).tap();
  for (let press10 = 0; press10 < 11; press10 += 1) await fill.getByRole('button', { name: /^More/ }).tap();
  await press(fill, t('bench.recordIn'));
  await expect(fill).toContainText('1.1\u00a0L');
  expect(await tooSmall(page)).toEqual([]);
  await expectAxeClean(page, 'a fill beside the lift');
  await press(fill, t('bench.stepDone', { n: 4 }));
  await expect(inHand(page, 5)).toBeVisible();

  // What is tapped is drawn as done before the shop has it.
  const steps = async () => (await garage.order(orderId)).jobs[0]?.steps.map((one) => [one.n, one.state, one.secondBy]);
  await expect.poll(steps).toEqual([
    [1, 'done', null],
    [2, 'done', 'Nessa'],
    [3, 'done', null],
    [4, 'done', null],
    [5, 'open', null],
  ]);
});
