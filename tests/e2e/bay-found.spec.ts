import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { enterByTouch, press, TABLET, toBay, tooSmall } from './bay.ts';
import { orderWithRing } from './ring-job.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, openOrder } from './window.ts';

test.use(TABLET);

/** One red point: the smallest picture there is. */
const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAADElEQVR4nGP4z8AAAAMBAQDJ/pLvAAAAAElFTkSuQmCC',
  'base64',
);

test('something is found while the network is cut; the desk makes a job of it in one step', async ({
  garage,
  page,
  context,
  anotherWindow,
}) => {
  const { orderId } = await orderWithRing(garage);
  const links = await garage.did('Odile', 'jobBook.save', {
    ...{ id: null, basedOn: 0 },
    content: {
      title: 'Rear drop links, pair',
      bookHours: 600,
      sourceOfFigures: 'invented for the test',
      lines: [],
      steps: [],
      cautions: [],
    },
  });
  await enterByTouch(page, garage.door.host.newLink('tablet'));
  await toBay(page, garage, orderId);
  await press(page, t('bay.found'));
  await expect(page.getByRole('heading', { level: 1, name: t('bay.found') })).toBeVisible();
  await expectAxeClean(page, 'found something, empty');
  // Sent without an answer from the shop: the pages that it needs are here already.
  await context.setOffline(true);
  await page.getByRole('button', { name: t('found.zone-rear-left') }).tap();
  await page.getByText(t('found.part-link'), { exact: true }).tap();
  await page.getByText(t('found.is-loose'), { exact: true }).tap();
  const measured = page.getByRole('region', { name: t('found.measured') });
  const more = measured.getByRole('button', { name: t('bench.more', { label: t('found.measured') }) });
  for (let tenth = 0; tenth < 12; tenth += 1) await more.tap();
  await press(measured, t('found.limitAndUnit'));
  for (let tenth = 0; tenth < 5; tenth += 1)
    await measured.getByRole('button', { name: t('bench.more', { label: t('found.limitFigure') }) }).tap();
  await measured.getByLabel(t('found.limitSource')).fill('our own figure');
  await expect(measured.getByRole('img', { name: /0\.7\smm over/ })).toBeVisible();
  await page.getByText(t('found.urgency-soon'), { exact: true }).tap();
  await page.locator('input[type=file]').setInputFiles({ name: 'link.png', mimeType: 'image/png', buffer: PNG });
  await expect(page.getByRole('img', { name: t('found.picture', { n: 1 }) })).toBeVisible();
  await page.getByRole('button', { name: /Rear drop links/ }).tap();
  expect(await tooSmall(page)).toEqual([]);
  await expectAxeClean(page, 'found something, filled in');
  await press(page, t('found.send'));
  await expect(page.getByRole('status')).toContainText(t('bench.tapsWait', { n: 2 }));
  expect((await garage.order(orderId)).findings).toEqual([]);
  await context.setOffline(false);
  await expect.poll(async () => (await garage.order(orderId)).findings.length).toBe(1);
  const [finding] = (await garage.order(orderId)).findings;
  expect(finding).toMatchObject({
    ...{ text: 'Rear left, Drop link: loose', urgency: 'soon', place: 'Rear left', part: 'Drop link', by: 'Runa' },
    measured: { what: 'play', value: 1200, unit: 'mm', least: null, most: 500, source: 'our own figure' },
    mend: { words: 'Rear drop links, pair', bookJobId: links.id },
  });
  const photos = async () => (await garage.did('Runa', 'photo.list', { orderId })).rows;
  await expect
    .poll(async () => (await photos()).map((photo) => photo.of))
    .toEqual([{ what: 'finding', id: finding?.id }]);

  const desk = await anotherWindow({ viewport: { width: 1440, height: 900 }, hasTouch: false });
  await enter(desk, garage, 'Piet');
  await openOrder(desk, garage, orderId);
  await expect(desk.getByText(/at most 0\.5\smm/)).toBeVisible();
  await expect(desk.getByRole('img', { name: 'Rear left, Drop link' })).toBeVisible();
  await desk.getByRole('button', { name: t('sheet.toJob') }).click();
  await expect
    .poll(async () => (await garage.order(orderId)).jobs.map((job) => job.title))
    .toContain('Rear drop links, pair');
  const { jobs, findings } = await garage.order(orderId);
  expect(findings[0]?.jobId).toBe(jobs.at(-1)?.id);
  expect(jobs.at(-1)?.lines.map((line) => line.amount)).toEqual([5760]);
});

test('a part that was used, and photos of a step, by touch', async ({ garage, page }) => {
  const { orderId, jobId } = await orderWithRing(garage);
  await enterByTouch(page, garage.door.host.newLink('tablet'));
  await toBay(page, garage, orderId, 'part');
  await page.getByRole('button', { name: /^Ring bolt/ }).tap();
  expect(await tooSmall(page)).toEqual([]);
  await expectAxeClean(page, 'used a part');
  await press(page, t('bay.useIt'));
  await expect.poll(async () => (await garage.order(orderId)).moves.map((move) => move.quantity)).toEqual([-6000]);

  await toBay(page, garage, orderId, 'photo', '2');
  await page.locator('input[type=file]').setInputFiles({ name: 'ring.png', mimeType: 'image/png', buffer: PNG });
  await page.getByLabel(t('bay.photoWords')).fill('ring on its seat');
  await press(page, t('bay.keepPhoto'));
  await expect(page.getByRole('img', { name: 'ring on its seat' })).toBeVisible();
  await page.getByRole('checkbox', { name: t('bay.printIt') }).tap();
  const photos = async () => (await garage.did('Runa', 'photo.list', { orderId })).rows;
  await expect
    .poll(async () => (await photos()).map(({ of, printed }) => ({ of, printed })))
    .toEqual([{ of: { what: 'step', id: jobId, step: 2 }, printed: true }]);
  expect(await tooSmall(page)).toEqual([]);
  await expectAxeClean(page, 'a photo of a step');
  const [paper] = await Promise.all([page.waitForEvent('download'), press(page, t('bay.photoPaper'))]);
  expect(paper.suggestedFilename()).toMatch(/\.pdf$/);
  // What is no picture is not kept, and says so.
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'x.png', mimeType: 'text/plain', buffer: Buffer.from('no') });
  await expect(page.getByText(t('bay.noPhoto'))).toBeVisible();
});

test('before it leaves: kept here, a list gone through, a drive by somebody who did not do the work', async ({
  garage,
  page,
}) => {
  const { orderId, jobId } = await orderWithRing(garage);
  const list = { title: 'Round the car', kind: 'walk-round' as const };
  await garage.did('Odile', 'checkList.add', {
    ...list,
    items: [
      { words: 'Tyres', place: 'front', measure: { what: 'tread', unit: 'mm', least: 3000, source: 'own figure' } },
      { words: 'Lights' },
    ],
  });
  await garage.did('Runa', 'step.tick', { jobId, n: 1, state: 'done' });
  await enterByTouch(page, garage.door.host.newLink('tablet'));
  await toBay(page, garage, orderId, 'leave');
  await press(page, t('leave.keepSomething'));
  await page.getByLabel(t('leave.whyKept')).fill('hose is cracked');
  await press(page, t('leave.keepIt'));
  await expect(page.getByText('hose is cracked')).toBeVisible();
  await expect(page.getByText(t('leave.ownerLifts'))).toBeVisible();

  // Runa did a step, so a drive that tries the work is somebody else's.
  const drives = page.getByRole('region', { name: t('leave.drives') });
  await drives.getByText(t('leave.purpose-check'), { exact: true }).tap();
  await expect(drives).toContainText(t('leave.byOther', { names: 'Runa' }));
  await drives.getByLabel(t('leave.out', { unit: 'km' })).fill('42180');
  await drives.getByLabel(t('leave.in', { unit: 'km' })).fill('42191');
  await drives.getByText(t('leave.outcome-fine'), { exact: true }).tap();
  await press(drives, t('leave.record'));
  await expect(drives.getByRole('alert')).toBeVisible();
  await drives.getByText(t('leave.purpose-confirm'), { exact: true }).tap();
  await press(drives, t('leave.record'));
  await expect(drives).toContainText('42,180 to 42,191 km');
  expect(await tooSmall(page)).toEqual([]);
  await expectAxeClean(page, 'before it leaves');

  await page
    .locator('.list-row', { hasText: list.title })
    .getByRole('button', { name: t('leave.goThrough') })
    .tap();
  const tyres = page.getByRole('region', { name: 'Tyres' });
  await tyres.getByText(t('leave.seen-soon'), { exact: true }).tap();
  for (let tenth = 0; tenth < 3; tenth += 1) await tyres.getByRole('button', { name: /^More/ }).tap();
  await press(page, t('leave.restFine', { n: 1 }));
  expect(await tooSmall(page)).toEqual([]);
  await expectAxeClean(page, 'a list gone through');
  await press(page, t('leave.gone'));
  await expect.poll(async () => (await garage.order(orderId)).findings.map((one) => one.text)).toEqual(['Tyres']);
  const [paper] = await Promise.all([page.waitForEvent('download'), press(page, t('leave.paper'))]);
  expect(paper.suggestedFilename()).toMatch(/\.pdf$/);
});
