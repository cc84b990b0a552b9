import { t } from '../../renderer/words/t.ts';
import { Keys } from './keys.ts';
import { orderReadyToClose } from './oil-job.ts';
import { expect, test } from './shop-fixture.ts';
import { field, foot, printsPaper, sheetOf } from './window.ts';

test('mileage out, invoice, two payments, a credit note and the car handed over, without the mouse', async ({
  garage,
  page,
}) => {
  const id = await orderReadyToClose(garage);
  const keys = new Keys(page);
  await keys.enter(garage);
  await expect(page.getByRole('main')).toContainText('KTB 4471');
  await keys.press('ArrowDown', 'Enter');
  await expect(sheetOf(page)).toBeVisible();
  await keys.to(foot(page).getByRole('button', { name: t('sheet.closeOut') }), 'Shift+Tab');
  await keys.press('Enter');
  await keys.to(field(page, t('closeOut.mileageOut')));
  await keys.type('42190');
  await keys.press('Enter');
  await expect(foot(page).getByRole('button', { name: t('closeOut.make') })).toBeEnabled();
  await keys.press('Control+Enter');
  const invoice = page.getByRole('complementary', { name: t('sheet.paper-invoice', { number: 1045 }) });
  await expect(invoice).toBeVisible();
  keys.report('the invoice made', 44);

  await printsPaper(page, () => keys.press('Alt+p'));
  const payments = page.getByRole('region', { name: t('sheet.payments') });
  await keys.to(field(payments, t('sheet.payAmount')));
  await keys.over('100');
  await keys.press('Enter');
  await expect(payments).toContainText(t('papers.taken', { sum: '100.00', receipt: 500 }));
  await expect(payments.getByText(t('sheet.toPay', { sum: '85.47' }), { exact: true })).toBeVisible();
  await keys.press('Control+Enter');
  await expect(payments).toContainText(t('papers.nothingOpen'));
  keys.report('and paid in two parts', 72);

  await keys.to(page.getByRole('button', { name: t('sheet.creditOpen') }));
  await keys.press('Enter');
  const credit = page.getByRole('region', { name: t('sheet.credit') });
  await keys.to(credit.getByRole('checkbox', { name: /Plug washer/ }));
  await keys.press('Space');
  await keys.to(field(credit, t('sheet.creditReason')));
  await keys.type('In the kit');
  await keys.press('Enter');
  await expect(credit).toContainText(t('papers.creditMade', { number: 20, sum: '5.04' }));
  await expect(payments).toContainText(t('sheet.held', { sum: '5.04' }));
  await keys.press('Control+Enter');
  await expect(payments).toContainText(t('papers.nothingOpen'));
  keys.report('and partly credited and paid back', 129);

  await keys.press('Control+Enter');
  await expect(page.getByRole('region', { name: t('papers.handOver') })).toContainText(t('papers.gonePaid'));
  keys.report('and handed over', 130);

  const order = await garage.order(id);
  expect(order.handedOverAt).not.toBeNull();
  expect(order.payments.map((one) => [one.kind, one.amount])).toEqual([
    ['payment', 10_000],
    ['payment', 8547],
    ['refund', -504],
  ]);
});
