import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { ROAD_TEST } from './garage.ts';
import { Keys } from './keys.ts';
import { expect, test } from './shop-fixture.ts';
import { choose, enter, expectOnSheet, field, openOrder } from './window.ts';

const SEAL = [{ kind: 'part', words: 'Output seal', quantity: 1000, unitPrice: 1875 }] as const;

test('yes, no and later by one letter each, so much more on top, recorded without the mouse', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await garage.yes(id);
  await garage.job(id, 'Seal', [...SEAL]);
  const offered = await garage.did('Odile', 'job.add', {
    orderId: id,
    job: { title: 'Brake fluid', offered: true },
    lines: [{ ...ROAD_TEST, words: 'Bleed' }],
  });
  const keys = new Keys(page);
  await keys.enter(garage);
  await openOrder(page, garage, id);
  await keys.press('Alt+y');
  const form = page.getByRole('form', { name: t('decision.title') });
  const upTo = field(form, t('decision.upToLabel'));
  await expect(upTo).toBeFocused();
  // 181.44 for A, 22.50 for B with tax
  await expect(upTo).toHaveValue('203.94');
  const answers = page.getByRole('group', { name: t('decision.answerOf', { letter: 'C', title: 'Brake fluid' }) });
  // Going backwards, a group with nothing chosen is entered at its end.
  await keys.to(answers.getByRole('radio').last(), 'Shift+Tab');
  await keys.press('l');
  await expect(answers.getByRole('radio', { name: t('decision.answer-later') })).toBeChecked();
  await expect(page.locator('body')).toContainText(t('decision.keptOnCar', { n: 1, letters: 'C' }));
  await keys.press('n');
  await expect(answers.getByRole('radio', { name: t('decision.answer-no') })).toBeChecked();
  await keys.to(upTo);
  await keys.over('+30');
  await expect(form).toContainText(t('decision.plusIs', { before: '181.44', sum: '211.44' }));
  await keys.press('Control+Enter');
  await expect(form).toBeHidden();
  await expect(page.getByRole('status').filter({ hasText: '211.44' })).toContainText(t('decision.followed'));
  const order = await garage.order(id);
  expect(order.decisions.at(-1)).toMatchObject({
    ceiling: 21_144,
    jobs: [
      { jobId: order.jobs[1]?.id, answer: 'yes' },
      { jobId: offered.id, answer: 'no' },
    ],
  });
});

test('what moved since the version last said yes to stands on the sheet, and a yes to what was offered counts at once', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id, 'Find the whine', [ROAD_TEST, ...SEAL]);
  await garage.did('Odile', 'quote.issue', { orderId: id });
  await garage.yes(id);
  const offered = { title: 'Seal', offered: true };
  await garage.did('Odile', 'job.add', { orderId: id, job: offered, lines: [...SEAL] });
  const { jobs, papers } = await garage.order(id);
  await garage.did('Odile', 'decision.record', {
    orderId: id,
    quotePaperId: papers[0]?.id ?? null,
    jobs: [{ jobId: jobs[0]?.id ?? '', answer: 'yes' }],
    upTo: { total: 20_394 },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
  });
  const line = jobs[0]?.lines[1];
  await garage.did('Odile', 'line.change', { id: line?.id ?? '', revision: 1, change: { unitPrice: 2375 } });
  await enter(page, garage);
  await openOrder(page, garage, id, 'yes');
  const first = page.getByRole('region', { name: t('sheet.jobLabel', { letter: 'A', title: 'Find the whine' }) });
  await expect(first).toContainText(t('decision.asBefore', { n: 1 }));
  await expect(first.locator('s')).toHaveText('18.75');
  await expect(first).toContainText('+5.00');
  await expectOnSheet(page, '209.94');
  await choose(page, t('decision.answerOf', { letter: 'B', title: 'Seal' }), t('decision.answer-yes'));
  await expectOnSheet(page, '232.44');
  await expect(field(page, t('decision.upToLabel'))).toHaveValue('232.44');
});

test('an ok to an older version does not cover what stands only in a newer one', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await garage.did('Odile', 'quote.issue', { orderId: id });
  await garage.job(id, 'Seal', [...SEAL]);
  const newest = await garage.did('Odile', 'quote.issue', { orderId: id });
  await enter(page, garage);
  await openOrder(page, garage, id, 'yes');
  const form = page.getByRole('form', { name: t('decision.title') });
  await choose(form, t('decision.how'), t('decision.way-message'));
  const which = form.getByRole('group', { name: t('decision.answersWhich') });
  await expect(which.getByRole('radio')).toHaveCount(3);
  await expect(which.getByRole('radio').first()).toBeChecked();
  const warning = t('decision.notInVersion', { version: 1, letters: 'B' });
  await expect(form).not.toContainText(warning);
  await which.getByRole('radio').nth(1).check();
  await expect(form).toContainText(warning);
  await expectAxeClean(page, 'a message that answers an older version');
  await which.getByRole('radio').first().check();
  await page.getByRole('button', { name: t('decision.record') }).click();
  await expect(form).toBeHidden();
  expect((await garage.order(id)).decisions).toMatchObject([
    { way: 'message', quoteNumber: newest.number, quoteVersion: 2, reached: 'ilse@vandermeer.example' },
  ]);
});

test('whoever is allowed less is held with why; a no to what is unsafe waits for its signature', async ({
  garage,
  page,
}) => {
  const id = await garage.booked({
    customer: {
      add: { name: 'Ilse Vandermeer', phone: '555-0142', mayYes: [{ name: 'Rolf', upTo: 5000 }] },
    },
  });
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id, 'yes');
  const form = page.getByRole('form', { name: t('decision.title') });
  await expect(form).toContainText(t('decision.limitHeld', { name: 'Rolf', sum: '50.00' }));
  await expect(
    form.getByRole('radio', { name: t('decision.whoNamed', { name: 'Rolf', sum: '50.00' }) }),
  ).toBeDisabled();
  await field(form, t('decision.upToLabel')).fill('much');
  await choose(form, t('decision.who'), t('decision.whoOther'));
  await page.getByRole('button', { name: t('decision.record') }).click();
  await expect(form).toContainText(t('decision.upToUnread'));
  await expect(form).toContainText(t('decision.nameNeeded'));
  await expect(field(form, t('decision.upToLabel'))).toBeFocused();
  await choose(page, t('decision.answerOf', { letter: 'A', title: 'Find the whine' }), t('decision.answer-no'));
  await page.getByText(t('decision.unsafe'), { exact: true }).click();
  await field(form, t('decision.name')).fill('Ilse’s mother');
  await page.getByRole('button', { name: t('decision.record') }).click();
  await expect(page.getByRole('article')).toContainText(t('decision.unsafeSign', { letters: 'A' }));
  await expectAxeClean(page, 'a yes with everything wrong');
  await choose(form, t('decision.how'), t('decision.way-signed'));
  const pad = form.locator('.signature-pad');
  await pad.hover({ position: { x: 30, y: 30 } });
  await page.mouse.down();
  for (const x of [45, 60, 90]) await pad.hover({ position: { x, y: x - 15 } });
  await page.mouse.up();
  await page.getByRole('button', { name: t('decision.record') }).click();
  await expect(form).toBeHidden();
  expect((await garage.order(id)).decisions).toMatchObject([
    { way: 'signed', ceiling: null, spoken: { name: 'Ilse’s mother' }, jobs: [{ answer: 'no', unsafe: true }] },
  ]);
});

test('leaving the form loses nothing', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id, 'yes');
  const form = page.getByRole('form', { name: t('decision.title') });
  await field(form, t('decision.wordsLabel')).fill('Go ahead, but not a cent more.');
  await page.getByRole('button', { name: t('decision.leave') }).click();
  await expect(form).toBeHidden();
  await page.keyboard.press('Alt+y');
  await expect(field(form, t('decision.wordsLabel'))).toHaveValue('Go ahead, but not a cent more.');
});
