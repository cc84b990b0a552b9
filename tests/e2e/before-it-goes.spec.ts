import type { Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { type Garage, ROAD_TEST } from './garage.ts';
import { orderReadyToClose, orderWithOilJob } from './oil-job.ts';
import { expect, test } from './shop-fixture.ts';
import { choose, enter, field, openOrder, sheetOf } from './window.ts';

const part = (page: Page) => page.getByRole('region', { name: t('release.title') });

test('a car is driven by somebody else, marked not to be released, and released by the owner with a reason', async ({
  garage,
  page,
}) => {
  const id = await orderWithOilJob(garage);
  const [job] = (await garage.order(id)).jobs;
  await garage.did('Runa', 'step.tick', { jobId: job?.id ?? '', n: 1, state: 'done' });
  await enter(page, garage, 'Piet');
  await openOrder(page, garage, id);
  await part(page)
    .getByRole('button', { name: t('release.drive') })
    .click();
  await field(page, t('release.driveOut')).fill('42180');
  await field(page, t('release.driveIn')).fill('42,192');
  await choose(part(page), t('release.driveResult'), t('release.outcome-not-released'));
  await part(page)
    .getByRole('button', { name: t('release.driveKeep') })
    .click();
  await expect(part(page)).toContainText(t('release.wordsNeeded'));
  await field(page, t('release.driveWords')).fill('Hub gets hot');
  await expectAxeClean(page, 'a drive being written down');
  await part(page)
    .getByRole('button', { name: t('release.driveKeep') })
    .click();
  await expect(part(page)).toContainText(t('release.stands', { words: 'Hub gets hot' }));
  await expect(part(page)).toContainText('Piet, to check the work, 42,180 to 42,192');
  await expect(part(page)).toContainText(t('release.ownerLifts'));
  await expect(sheetOf(page)).toContainText(t('held.quarantine', { words: 'Hub gets hot' }));
  await page.getByRole('button', { name: t('papers.goesOpen') }).click();
  await page.getByRole('button', { name: t('papers.handIt') }).click();
  await expect(page.getByRole('alert')).toContainText(t('held.quarantine', { words: 'Hub gets hot' }));

  await enter(page, garage, 'Odile');
  await openOrder(page, garage, id);
  await field(part(page), t('release.liftWhy')).fill('Bearing changed, driven again');
  await expectAxeClean(page, 'the owner releases');
  await part(page)
    .getByRole('button', { name: t('release.lift') })
    .click();
  await expect(part(page)).toContainText('Bearing changed, driven again');
  await expect(part(page)).not.toContainText(t('release.stands', { words: 'Hub gets hot' }));
});

test('what is marked stops the invoice where it stands, and the owner lifts it there', async ({ garage, page }) => {
  const id = await orderReadyToClose(garage);
  await enter(page, garage, 'Odile');
  await openOrder(page, garage, id);
  await part(page)
    .getByRole('button', { name: t('release.mark') })
    .click();
  await choose(part(page), t('release.markWhat'), t('release.mark-part'));
  await field(part(page), t('release.markWhy')).fill('Wrong ratio');
  await part(page)
    .getByRole('button', { name: t('release.markIt') })
    .click();
  await expect(part(page)).toContainText(t('release.partStands', { words: 'Wrong ratio' }));
  await openOrder(page, garage, id, 'close-out');
  const before = page.getByRole('complementary', { name: t('closeOut.before') });
  await expect(before).toContainText(t('held.quarantine', { words: 'Wrong ratio' }));
  await field(before, t('release.liftWhy')).fill('Went back to the supplier');
  await before.getByRole('button', { name: t('release.lift') }).click();
  await expect(before).not.toContainText('Wrong ratio');
});

test('a job done before is taken up again as free work, and the owner is asked for the yes', async ({
  garage,
  page,
}) => {
  const first = await garage.order(await billed(garage));
  const { customer, car } = first;
  const back = await garage.did('Piet', 'order.book', {
    ...{ customer: { id: customer.id }, car: { id: car.id }, complaint: 'Drips again', mileage: 42_300, here: true },
  });
  await enter(page, garage, 'Piet');
  await openOrder(page, garage, back.id);
  await sheetOf(page)
    .getByRole('button', { name: t('release.takeUp') })
    .click();
  await expectAxeClean(page, 'a comeback');
  await sheetOf(page)
    .getByRole('button', { name: t('release.takeUpOf', { title: 'Road test', number: first.number }) })
    .click();
  await expect(part(page)).toContainText(/^.*A takes up “Road test” of order \d+ again/);
  const { jobs, yes } = await garage.order(back.id);
  expect(jobs).toMatchObject([{ title: 'Road test', kind: 'warranty', covered: false }]);
  expect(yes.held).toHaveLength(1);
});

test('a wrench of the shop: its span, its lever, its calibration, taken out', async ({ garage, page }) => {
  await enter(page, garage, 'Odile');
  await page.goto(`${garage.door.host.address}/${hrefOf('shop', 'wrenches')}`);
  const add = page.getByRole('button', { name: t('shop.wrenchAdd') });
  await add.click();
  await expect(page.getByRole('alert').first()).toContainText(t('shop.wrenchWrong'));
  await field(page, t('shop.wrenchName')).fill('T1');
  await field(page, t('shop.wrench-least', { unit: 'N·m' })).fill('20');
  await field(page, t('shop.wrench-most', { unit: 'N·m' })).fill('200');
  await field(page, t('shop.wrenchLever')).fill('412,5');
  await page.getByLabel(t('shop.wrenchDue'), { exact: true }).fill('2020-01-01');
  await add.click();
  const wrench = page.getByRole('region', { name: 'T1' });
  await expect(wrench).toContainText(t('shop.wrenchOverdue'));
  await expectAxeClean(page, 'wrenches');
  const due = wrench.getByLabel(`${t('shop.wrenchDue')}, T1`);
  await due.fill('2090-01-01');
  await due.blur();
  await expect(wrench).not.toContainText(t('shop.wrenchOverdue'));
  await expect
    .poll(async () => (await garage.did('Odile', 'wrench.list', {})).rows)
    .toMatchObject([{ name: 'T1', least: 20_000, most: 200_000, lever: 412_500, dueOn: '2090-01-01' }]);
  await wrench.getByRole('button', { name: t('shop.wrenchOutOf', { name: 'T1' }) }).click();
  await expect(wrench).toBeHidden();
});

/** An order that was worked, billed and is done: one road test. */
async function billed(garage: Garage): Promise<string> {
  const booked = await garage.did('Piet', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142' } },
    car: { add: { plate: 'KVR 221', words: 'Corvane R coupe', unit: 'km' } },
    ...{ complaint: 'Whines.', mileage: 42_180, here: true },
  });
  const job = await garage.did('Piet', 'job.add', {
    ...{ orderId: booked.id, job: { title: 'Road test' }, lines: [ROAD_TEST] },
  });
  await garage.did('Piet', 'decision.record', {
    ...{ orderId: booked.id, jobs: [{ jobId: job.id, answer: 'yes' as const }], upTo: { total: 20_000 } },
    ...{ spoken: { name: 'Ilse Vandermeer', role: 'customer' as const }, way: 'person' as const },
  });
  const { revision } = await garage.order(booked.id);
  await garage.did('Piet', 'order.mileageOut', { id: booked.id, revision, mileage: 42_190 });
  await garage.did('Piet', 'invoice.issue', { orderId: booked.id });
  return booked.id;
}
