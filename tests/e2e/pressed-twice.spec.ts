import { t } from '../../renderer/words/t.ts';
import { orderReadyToClose } from './oil-job.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field, foot, openOrder } from './window.ts';

/** A hurried hand presses twice; it is done once. */

test('a payment sent twice before its answer is taken once', async ({ garage, page }) => {
  const id = await orderReadyToClose(garage);
  const { revision } = await garage.order(id);
  await garage.did('Odile', 'order.mileageOut', { id, revision, mileage: 42_190 });
  await garage.did('Odile', 'invoice.issue', { orderId: id });
  await enter(page, garage);
  await openOrder(page, garage, id);
  const payments = page.getByRole('region', { name: t('sheet.payments') });
  await field(payments, t('sheet.payAmount')).fill('50');
  // The answer waits at the door until every press has been made.
  let letGo = () => {};
  const held = new Promise<void>((go) => {
    letGo = go;
  });
  let sent = 0;
  await page.route('**/call', async (route) => {
    if (route.request().postData()?.includes('payment.take')) {
      sent += 1;
      await held;
    }
    await route.continue();
  });
  await page.keyboard.press('Control+Enter');
  await field(payments, t('sheet.payAmount')).press('Enter');
  await page.keyboard.press('Control+Enter');
  await payments.getByRole('button', { name: t('sheet.payTake') }).click({ force: true });
  letGo();
  await expect(payments).toContainText(t('sheet.toPay', { sum: '135.47' }));
  expect((await garage.order(id)).payments.map((one) => one.amount)).toEqual([5000]);
  expect(sent).toBe(1);
});

test('a button that is under way keeps the focus, so that the keys go on from there', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id, 'yes');
  const form = page.getByRole('form', { name: t('decision.title') });
  await form.getByRole('button', { name: t('decision.triedOpen') }).click();
  const add = form.getByRole('button', { name: t('decision.triedAdd') });
  let letGo = () => {};
  const held = new Promise<void>((go) => {
    letGo = go;
  });
  await page.route('**/call', async (route) => {
    if (route.request().postData()?.includes('decision.tried')) await held;
    await route.continue();
  });
  await add.focus();
  await page.keyboard.press('Enter');
  await expect(add).toBeDisabled();
  await expect(add).toBeFocused();
  letGo();
  await expect(foot(page)).toBeVisible();
});
