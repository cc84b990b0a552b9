import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openWithDoor } from '../../electron/open.ts';
import { t } from '../../renderer/words/t.ts';
import { enterByTouch, inHand, press, TABLET, tighten, toBay } from './bay.ts';
import { Garage } from './garage.ts';
import { orderWithRing, touchesMade } from './ring-job.ts';
import { expect, test } from './shop-fixture.ts';

test.use(TABLET);

const root = process.env.CROWNWHEEL_WINDOW;

test('the network is cut in the middle of a ring: what was tapped goes in after, in order, once', async ({
  garage,
  page,
  context,
}) => {
  const { orderId, jobId } = await orderWithRing(garage);
  await enterByTouch(page, garage.door.host.newLink('tablet'));
  await toBay(page, garage, orderId);
  await press(page, t('bench.stepDone', { n: 1 }));
  for (const bolt of [1, 2]) await tighten(page, bolt);
  await expect.poll(() => touchesMade(garage, jobId)).toEqual({ made: 2, due: 2 });
  await context.setOffline(true);
  for (const bolt of [3, 4, 5]) await tighten(page, bolt);
  await press(inHand(page, 2), t('bench.backOne'));
  await expect(page.getByRole('status')).toContainText(t('bench.tapsWait', { n: 4 }));
  await expect(page.getByRole('button', { name: t('bench.boltTight', { bolt: 5 }) })).toBeVisible();
  expect(await touchesMade(garage, jobId)).toEqual({ made: 2, due: 2 });
  await context.setOffline(false);
  await expect.poll(() => touchesMade(garage, jobId)).toEqual({ made: 4, due: 4 });
  await expect(page.getByText(t('bench.tapsWait', { n: 4 }))).toBeHidden();
  await expect(page.getByRole('button', { name: t('bench.boltTight', { bolt: 5 }) })).toBeVisible();
});

test('an answer that was lost on its way: the same tap is sent again and counts once', async ({ garage, page }) => {
  const { orderId, jobId } = await orderWithRing(garage);
  await enterByTouch(page, garage.door.host.newLink('tablet'));
  await toBay(page, garage, orderId);
  await press(page, t('bench.stepDone', { n: 1 }));
  let lost = 0;
  await page.route('**/call', async (route) => {
    if (lost === 0 && route.request().postData()?.includes('torque.make')) {
      lost += 1;
      await route.fetch();
      return route.abort();
    }
    return route.continue();
  });
  for (const bolt of [1, 2, 3]) await tighten(page, bolt);
  await expect.poll(() => touchesMade(garage, jobId)).toEqual({ made: 3, due: 3 });
  expect(lost).toBe(1);
});

test('what Runa tapped goes in for Runa alone, after another person and a new page', async ({
  garage,
  page,
  context,
}) => {
  const { orderId, jobId } = await orderWithRing(garage);
  await enterByTouch(page, garage.door.host.newLink('tablet'));
  await toBay(page, garage, orderId);
  await press(page, t('bench.stepDone', { n: 1 }));
  await tighten(page, 1);
  await expect.poll(() => touchesMade(garage, jobId)).toEqual({ made: 1, due: 1 });
  await page.route('**/call', (route) =>
    route.request().postData()?.includes('torque.make') ? route.abort() : route.continue(),
  );
  await tighten(page, 2);
  await expect(page.getByRole('status')).toContainText(t('bench.tapsWait', { n: 1 }));

  const other = await context.newPage();
  await page.close();
  await enterByTouch(other, garage.door.host.newLink('tablet'), 'Nessa');
  await toBay(other, garage, orderId);
  await expect(other.getByRole('status')).toContainText(t('bench.tapsOf', { n: 1, name: 'Runa' }));
  expect(await touchesMade(garage, jobId)).toEqual({ made: 1, due: 1 });

  await enterByTouch(other, garage.door.host.newLink('tablet'));
  await expect.poll(() => touchesMade(garage, jobId)).toEqual({ made: 2, due: 2 });
  const { touches } = await garage.did('Nessa', 'torque.get', { jobId, step: 2 });
  expect(touches.slice(0, 2).map((touch) => touch.made?.by)).toEqual(['Runa', 'Runa']);
});

test('the host is stopped in the middle and started again: the page that stayed open sends what it kept', async ({
  page,
  context,
  clock,
}) => {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-bay-'));
  const settings = { folder, practice: true, clock, ...(root === undefined ? {} : { root }) };
  // The folder's usual port: nothing else of the machine is given one of those while the door is shut.
  const first = await openWithDoor(settings);
  const before = await Garage.setUp(first);
  const { orderId, jobId } = await orderWithRing(before);
  await enterByTouch(page, first.host.newLink('tablet'));
  await toBay(page, before, orderId);
  await press(page, t('bench.stepDone', { n: 1 }));
  for (const bolt of [1, 2]) await tighten(page, bolt);
  await expect.poll(() => touchesMade(before, jobId)).toEqual({ made: 2, due: 2 });
  await first.close();
  for (const bolt of [3, 4]) await tighten(page, bolt);
  await expect(page.getByRole('status')).toContainText(t('bench.tapsWait', { n: 2 }));

  const second = await openWithDoor({ ...settings, port: Number(new URL(first.host.address).port) });
  try {
    const after = before.reopened(second);
    // A host that was started anew knows nobody: the tablet is let in again, in another tab of it.
    const tab = await context.newPage();
    await enterByTouch(tab, second.host.newLink('tablet'));
    await expect.poll(() => touchesMade(after, jobId)).toEqual({ made: 4, due: 4 });
    await tighten(page, 5);
    await expect.poll(() => touchesMade(after, jobId)).toEqual({ made: 5, due: 5 });
  } finally {
    await second.close();
    rmSync(folder, { recursive: true });
  }
});
