import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { ROAD_TEST } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { SWAP_TITLE } from './swap.ts';
import { choose, enter, field, openOrder, typeCell } from './window.ts';

test('axe finds nothing on the sheet, with everything open and wrong', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id);
  await expectAxeClean(page, 'the sheet');

  await field(page, t('sheet.newWords', { letter: 'A' })).fill('A new line');
  await field(page, t('sheet.newPrice')).fill('a lot');
  await page.getByRole('button', { name: t('sheet.add'), exact: true }).click();
  await field(page, t('sheet.foundNew')).fill('A torn seal');
  await field(page, t('sheet.discountNew')).fill('half');
  await field(page, t('sheet.discountNew')).press('Enter');
  await typeCell(page, t('sheet.cellPrice', { words: 'Road test' }), 'dear');
  await expect(page.getByRole('alert').first()).toBeVisible();
  await expectAxeClean(page, 'the sheet, everything open and wrong');
});

test('axe finds nothing in the form of a yes', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await garage.job(id, 'Change the belt');
  await enter(page, garage);
  await openOrder(page, garage, id, 'yes');
  const form = page.getByRole('form', { name: t('decision.title') });
  await expect(form).toBeVisible();
  await expectAxeClean(page, 'the form of a yes');
  await choose(page, t('decision.answerOf', { letter: 'B', title: 'Change the belt' }), t('decision.answer-no'));
  await choose(form, t('decision.how'), t('decision.way-signed'));
  await page.getByRole('button', { name: t('decision.triedOpen') }).click();
  await page.getByRole('button', { name: t('decision.record') }).click();
  await expect(form.getByRole('alert').first()).toBeVisible();
  await expectAxeClean(page, 'the form of a yes, wrong, with a no and a pad');
});

test('axe finds nothing on the bench, nor where it closes out', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  const { rows } = await garage.did('Odile', 'jobBook.list', {});
  const book = rows.find((row) => row.title === SWAP_TITLE);
  await garage.did('Odile', 'job.fromBook', { orderId: id, bookJobId: book?.id ?? '' });
  await garage.yes(id);
  await garage.job(id, 'Held', [{ ...ROAD_TEST, words: 'More' }]);
  const [first] = (await garage.order(id)).jobs;
  await garage.did('Runa', 'clock.on', { jobId: first?.id ?? '' });
  await garage.did('Odile', 'clock.forgotten', { personId: garage.personId('Runa') });
  await garage.did('Nessa', 'clock.on', { jobId: first?.id ?? '' });
  await enter(page, garage);
  await openOrder(page, garage, id);
  await page.getByRole('button', { name: t('bench.correct') }).click();
  await field(page, t('bench.hoursWorked')).fill('some');
  await page.getByRole('button', { name: t('bench.correct') }).click();
  await expectAxeClean(page, 'the bench, a forgotten clock');
  await page.getByRole('button', { name: `B ${SWAP_TITLE}`, exact: true }).click();
  await expect(page.getByRole('region', { name: t('bench.procedure') })).toBeVisible();
  await expectAxeClean(page, 'the bench, a procedure');
  await openOrder(page, garage, id, 'close-out');
  await expect(page.getByRole('heading', { name: t('closeOut.before') })).toBeVisible();
  await expectAxeClean(page, 'the close-out, with stops');
});

test('axe finds nothing on an order with its invoice, nor where it is credited', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await garage.yes(id);
  const { revision } = await garage.order(id);
  await garage.did('Odile', 'order.mileageOut', { id, revision, mileage: 42_190 });
  const { stops } = await garage.order(id);
  await garage.did('Odile', 'invoice.issue', {
    orderId: id,
    overrides: stops.map((stop) => ({ what: stop.what, reason: 'asked at the door' })),
  });
  await enter(page, garage);
  await openOrder(page, garage, id);
  await page.getByRole('button', { name: t('sheet.creditOpen') }).click();
  const payments = page.getByRole('region', { name: t('sheet.payments') });
  await field(payments, t('sheet.payAmount')).fill('a lot');
  await payments.getByRole('button', { name: t('sheet.payTake') }).click();
  await expect(payments.getByRole('alert')).toBeVisible();
  await expectAxeClean(page, 'an invoice, being credited, a payment wrong');
});
