import type { Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { OIL_SUM, orderReadyToClose } from './oil-job.ts';
import { expect, test } from './shop-fixture.ts';
import { choose, enter, field, foot, openOrder, readPaper } from './window.ts';

const payments = (page: Page) => page.getByRole('region', { name: t('sheet.payments') });
const take = (page: Page, words: string) => payments(page).getByRole('button', { name: words }).click();

test('mileage out, invoice, part payments, a credit note, the car handed over', async ({ garage, page }) => {
  const id = await orderReadyToClose(garage);
  await enter(page, garage);
  await openOrder(page, garage, id, 'close-out');
  await field(page, t('closeOut.mileageOut')).fill('42,190');
  await page.getByRole('button', { name: t('closeOut.write') }).click();
  await foot(page)
    .getByRole('button', { name: t('closeOut.make') })
    .click();
  const invoice = page.getByRole('complementary', { name: t('sheet.paper-invoice', { number: 1045 }) });
  await expect(invoice).toBeVisible();

  const text = await readPaper(page, t('papers.open'));
  for (const piece of ['1045', 'Ilse Vandermeer', 'KTB 4471', '42,190', 'Gear oil', OIL_SUM])
    expect(text).toContain(piece);
  // The same paper is the same bytes for ever: it comes from the store.
  expect(await readPaper(page, t('papers.open'))).toBe(text);

  await choose(payments(page), t('sheet.payWay'), t('sheet.way-cash'));
  await field(payments(page), t('sheet.payAmount')).fill('100');
  await field(payments(page), t('papers.cashGiven')).fill('120');
  await expect(payments(page)).toContainText(t('papers.change', { sum: '20.00' }));
  await take(page, t('sheet.payTake'));
  await expect(payments(page)).toContainText(t('papers.taken', { sum: '100.00', receipt: 500 }));
  await expect(payments(page).getByText(t('sheet.toPay', { sum: '85.47' }), { exact: true })).toBeVisible();
  await choose(payments(page), t('sheet.payWay'), t('sheet.way-card'));
  await expect(field(payments(page), t('sheet.payAmount'))).toHaveValue('85.47');
  await take(page, t('sheet.payTake'));
  await expect(payments(page)).toContainText(t('papers.nothingOpen'));

  // Both washers come back: 4.20 and 20 % tax.
  await page.getByRole('button', { name: t('sheet.creditOpen') }).click();
  const credit = page.getByRole('region', { name: t('sheet.credit') });
  await credit.getByRole('checkbox', { name: /Plug washer/ }).click();
  await credit.getByRole('button', { name: t('sheet.creditMake') }).click();
  await expect(field(credit, t('sheet.creditReason'))).toHaveAccessibleDescription(t('papers.creditReasonNeeded'));
  await field(credit, t('sheet.creditReason')).fill('Washers were in the kit');
  await credit.getByRole('button', { name: t('sheet.creditMake') }).click();
  await expect(credit).toContainText(t('papers.creditMade', { number: 20, sum: '5.04' }));
  expect(await readPaper(page, t('sheet.paper-credit-note', { number: 20 }))).toContain('Washers were in the kit');
  await take(page, t('sheet.payBack'));
  await expect(payments(page)).toContainText(t('papers.nothingOpen'));

  const hand = page.getByRole('region', { name: t('papers.handOver') });
  await expect(field(hand, t('papers.handedTo'))).toHaveValue('Ilse Vandermeer');
  await hand.getByRole('button', { name: t('papers.handIt') }).click();
  await expect(hand).toContainText(t('papers.gonePaid'));

  const order = await garage.order(id);
  expect(order.handedOverAt).not.toBeNull();
  expect(order.balance).toBe(0);
  expect(order.payments.map((one) => [one.kind, one.way, one.amount])).toEqual([
    ['payment', 'cash', 10_000],
    ['payment', 'card', 8547],
    ['refund', 'card', -504],
  ]);
  expect(await garage.did('Odile', 'care.verify', {})).toMatchObject({ sound: true });
});

test('nobody drives away unpaid without a name, and the invoice cannot be made twice', async ({ garage, page }) => {
  const id = await orderReadyToClose(garage);
  await enter(page, garage);
  await openOrder(page, garage, id, 'close-out');
  await field(page, t('closeOut.mileageOut')).fill('42190');
  await field(page, t('closeOut.mileageOut')).press('Enter');
  await foot(page)
    .getByRole('button', { name: t('closeOut.make') })
    .dblclick();
  const hand = page.getByRole('region', { name: t('papers.handOver') });
  await hand.getByRole('button', { name: t('papers.handIt') }).click();
  await expect(field(hand, t('papers.handedUnpaid'))).toHaveAccessibleDescription(t('papers.whoTook'));
  await field(hand, t('papers.handedUnpaid')).fill('Ilse Vandermeer');
  await hand.getByRole('button', { name: t('papers.handIt') }).click();
  await expect(hand).toContainText(t('papers.goneUnpaid', { sum: OIL_SUM }));
  const order = await garage.order(id);
  expect(order.papers.filter((paper) => paper.kind === 'invoice')).toHaveLength(1);
});
