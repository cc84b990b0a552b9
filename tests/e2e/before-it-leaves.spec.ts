import type { Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { type Garage, ROAD_TEST } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field, foot, openOrder } from './window.ts';

const before = (page: Page) => page.getByRole('complementary', { name: t('closeOut.before') });
const make = (page: Page) => foot(page).getByRole('button', { name: t('closeOut.make') });

/** A part of the stock. */
const part = (garage: Garage, number: string, words: string) =>
  garage.did('Odile', 'part.add', { number, words, unit: '', price: 640, cost: 310, onHand: 5000 });

test('a part on no line is charged or goes back; a forgotten clock gets its end; the account’s number is written', async ({
  garage,
  page,
}) => {
  const id = await garage.booked({
    customer: { add: { name: 'Ostrand Haulage', phone: '555-0190', poRequired: true } },
  });
  const jobId = await garage.job(id);
  await garage.yes(id);
  const [ring, seal] = [await part(garage, 'OR-583', 'O-ring'), await part(garage, 'OS-22', 'Seal')];
  for (const { id: partId } of [ring, seal])
    await garage.did('Runa', 'part.issue', { jobId, lineId: null, partId, quantity: 1000 });
  await garage.did('Runa', 'clock.on', { jobId });
  await garage.did('Odile', 'clock.forgotten', { personId: garage.personId('Runa') });
  await enter(page, garage);
  await openOrder(page, garage, id, 'close-out');
  await expect(before(page)).toContainText(t('held.part-on-no-line', { words: 'O-ring' }));
  await expectAxeClean(page, 'before it leaves, with every kind of mend');

  await before(page)
    .getByRole('button', { name: t('closeOut.putOnShelfOf', { words: 'Seal' }) })
    .click();
  await expect(before(page)).not.toContainText('Seal');
  await before(page)
    .getByRole('button', { name: t('closeOut.putOnLineOf', { words: 'O-ring', letter: 'A' }) })
    .click();
  // The ring costs more than was said yes to: the line stands, the part waits for the yes.
  await expect(before(page)).toContainText(t('closeOut.over-excess', { sum: '7.68' }));
  await before(page)
    .getByRole('button', { name: t('closeOut.giveOf', { words: 'O-ring' }) })
    .click();
  await expect(before(page)).toContainText(t('closeOut.done-inside'));
  await before(page)
    .getByRole('button', { name: t('closeOut.putOnLineOf', { words: 'O-ring', letter: 'A' }) })
    .click();
  await expect(before(page)).toContainText(t('closeOut.done-noLine'));

  await field(before(page), t('bench.hoursWorked')).fill('0');
  await field(before(page), t('bench.why')).fill('went home');
  await before(page)
    .getByRole('button', { name: t('bench.correct') })
    .click();
  await expect(before(page)).toContainText(t('closeOut.done-forgotten'));
  await field(before(page), t('closeOut.poNumber')).fill('PO 4471');
  await field(before(page), t('closeOut.poNumber')).press('Enter');
  await expect(before(page)).toContainText(t('closeOut.done-po', { number: 'PO 4471' }));

  // What was mended is gone, and the hand is at what comes next; then at the invoice.
  await expect(field(before(page), t('closeOut.mileageOut'))).toBeFocused();
  await page.keyboard.type('42200');
  await page.keyboard.press('Enter');
  await expect(make(page)).toBeFocused();
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('button', { name: t('papers.open') })).toBeFocused();
  const order = await garage.order(id);
  expect(order.jobs[0]?.lines.map((line) => [line.words, line.amount, line.given])).toEqual([
    ['Road test', 14_400, false],
    ['O-ring', 0, true],
  ]);
  const { rows } = await garage.did('Odile', 'part.list', {});
  expect(rows.map((row) => [row.number, row.onHand]).sort()).toEqual([
    ['OR-583', 4000],
    ['OS-22', 5000],
  ]);
});

test('what is given can be charged again by Ctrl Z, and a job without a yes is washed and named', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await garage.yes(id);
  await garage.job(id, 'Look at the mounts', [{ ...ROAD_TEST, words: 'Look' }]);
  await enter(page, garage);
  await openOrder(page, garage, id, 'close-out');
  const paper = page.getByRole('article', { name: t('sheet.order') });
  await expect(paper).toContainText(t('closeOut.noYes'));
  await before(page)
    .getByRole('button', { name: t('closeOut.giveOf', { words: 'Look at the mounts' }) })
    .click();
  await expect(paper).toContainText(t('closeOut.given'));
  await page.keyboard.press('Control+z');
  await expect(paper).toContainText(t('closeOut.noYes'));
  await expect(paper).toContainText(t('sheet.undone', { words: 'Look at the mounts' }));
  await page.keyboard.press('Escape');
  await expect(page.getByRole('complementary', { name: t('bench.title') })).toBeVisible();
});

test('the desk may not let pass what is the owner’s; it says who can', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await garage.yes(id);
  await enter(page, garage, 'Piet');
  await openOrder(page, garage, id, 'close-out');
  await expect(before(page)).toContainText(t('closeOut.ownerOnly'));
  await expect(field(before(page), t('closeOut.ownerReason'))).toHaveCount(0);
  await expect(make(page)).toHaveAccessibleDescription(`${t('parts.held')} ${t('held.mileage-out-missing')}`);
});

test('hours clocked on a covered job are moved to the one they belonged to, which then waits for its yes', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  const jobId = await garage.job(id);
  await garage.yes(id);
  await garage.did('Odile', 'clock.on', { jobId });
  await garage.did('Odile', 'clock.off', {});
  await garage.job(id, 'Look at the mounts');
  await enter(page, garage);
  await openOrder(page, garage, id, 'close-out');
  const hours = page.getByRole('region', { name: t('closeOut.hoursOn', { letter: 'A' }) });
  await hours.getByRole('button', { name: t('closeOut.moveHours') }).click();
  await field(hours, t('closeOut.whyMoved')).fill('the mounts came first');
  await expectAxeClean(page, 'hours being moved');
  await hours.getByRole('button', { name: t('closeOut.moveThem') }).click();
  await expect(page.getByRole('region', { name: t('closeOut.hoursOn', { letter: 'B' }) })).toBeVisible();
  const { clocks, jobs } = await garage.order(id);
  expect(clocks.map((entry) => [entry.jobId === jobs[1]?.id, entry.counts, entry.why])).toEqual([
    [false, false, ''],
    [true, true, 'the mounts came first'],
  ]);
  // It was worked on now, so it cannot be moved away any more.
  await expect(
    before(page).getByRole('button', { name: t('closeOut.moveOf', { letter: 'B' }) }),
  ).toHaveAccessibleDescription(`${t('parts.held')} ${t('closeOut.workedOn')}`);
});

test('a part drawn in another quantity than is charged is charged as drawn, and back by Ctrl Z', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  const oil = await part(garage, 'GO-75', 'Gear oil');
  const jobId = await garage.job(id, 'Fill up', [
    { kind: 'fluid', words: 'Gear oil', partId: oil.id, quantity: 1100, unit: 'L', unitPrice: 3150 },
  ]);
  await garage.yes(id);
  const lineId = (await garage.order(id)).jobs[0]?.lines[0]?.id ?? '';
  await garage.did('Runa', 'part.issue', { jobId, lineId, partId: oil.id, quantity: 1200 });
  await enter(page, garage);
  await openOrder(page, garage, id, 'close-out');
  const paper = page.getByRole('article', { name: t('sheet.order') });
  await expect(paper).toContainText(t('closeOut.usedMore', { more: '0.1\u00a0L' }));
  await paper.getByRole('button', { name: /^Charge 1\.2/ }).click();
  await expect(paper).toContainText('37.80');
  await expect(before(page)).toContainText(t('closeOut.over-excess', { sum: '3.78' }));
  await page.keyboard.press('Control+z');
  await expect(paper).toContainText('34.65');
  await expect(before(page)).toContainText(t('closeOut.done-inside'));
});
