import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { orderReadyToClose, orderWithOilJob } from './oil-job.ts';
import { expect, test } from './shop-fixture.ts';
import { signWrongly } from './steps.ts';
import { choose, enter, field, foot, openOrder } from './window.ts';

test('axe finds nothing where a quote is made, with its words and a day that is over', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await garage.did('Odile', 'quote.issue', { orderId: id });
  await garage.job(id, 'Change the belt');
  await enter(page, garage);
  await openOrder(page, garage, id, 'quote');
  const form = page.getByRole('form', { name: t('quote.title') });
  await choose(form, t('quote.goes'), t('quote.goes-text'));
  await form.getByLabel(t('quote.until')).fill('2020-01-01');
  await foot(page)
    .getByRole('button', { name: t('sheet.quoteAgain') })
    .click();
  await expect(form.getByText(t('quote.past'))).toBeVisible();
  await expectAxeClean(page, 'a quote for a day that is over');
});

test('axe finds nothing where a step goes otherwise and its second person types a wrong code', async ({
  garage,
  page,
}) => {
  const id = await orderWithOilJob(garage);
  const { jobs } = await garage.order(id);
  for (const n of [1, 2]) await garage.did('Runa', 'step.tick', { jobId: jobs[0]?.id ?? '', n, state: 'done' });
  await enter(page, garage);
  await openOrder(page, garage, id);
  await signWrongly(page, 3);
  await expectAxeClean(page, 'a step that goes otherwise, a wrong code');
});

test('axe finds nothing where a paper is sent and the car is handed over to nobody', async ({ garage, page }) => {
  const id = await orderReadyToClose(garage);
  const { revision } = await garage.order(id);
  await garage.did('Odile', 'order.mileageOut', { id, revision, mileage: 42_190 });
  await garage.did('Odile', 'invoice.issue', { orderId: id });
  await enter(page, garage);
  await openOrder(page, garage, id);
  await page.getByRole('button', { name: new RegExp(`^${t('sheet.markSent')}`) }).click();
  const hand = page.getByRole('region', { name: t('papers.handOver') });
  await hand.getByRole('button', { name: t('papers.handIt') }).click();
  await expect(hand.getByText(t('papers.whoTook'))).toBeVisible();
  await expectAxeClean(page, 'how a paper was sent, handed over to nobody');
});

test('axe finds nothing on the pages of a car and a customer, with their forms open and wrong', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  const { car, customer } = await garage.order(id);
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('cars', car.id)}`);
  await page.getByRole('button', { name: t('cars.newPlate') }).click();
  await page
    .getByRole('button', { name: t('cars.write') })
    .last()
    .click();
  await expect(page.getByText(t('cars.plateNeeded'))).toBeVisible();
  await expectAxeClean(page, 'a new plate, none typed');
  await page.getByRole('button', { name: t('cars.newOwner') }).click();
  await page.getByLabel(t('cars.ownerNow')).fill('Nobody yet');
  await expect(page.getByRole('button', { name: t('customers.addNamed', { name: 'Nobody yet' }) })).toBeVisible();
  await expectAxeClean(page, 'a new owner, looked for');

  await page.goto(`${garage.door.host.address}/${hrefOf('customers', customer.id)}`);
  await page.getByLabel(t('customers.anotherUpTo'), { exact: true }).fill('a lot');
  await page.getByRole('button', { name: t('customers.anotherAdd') }).click();
  await expect(page.getByText(t('customers.upToWrong'))).toBeVisible();
  await expectAxeClean(page, 'somebody else who may say yes, wrong');
});

test('axe finds nothing where the shop does not answer, nor where nothing is found', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('orders')}`);
  await page.getByLabel(t('orders.text'), { exact: true }).fill('zzzz');
  await expect(page.getByRole('main')).not.toContainText('KTB 4471');
  await expectAxeClean(page, 'orders, none found');
  await openOrder(page, garage, id);
  await page.route('**/call', (route) => route.abort());
  const title = field(page, t('sheet.jobTitle', { letter: 'A' }));
  await title.fill('Another');
  await title.press('Tab');
  await expect(title).toHaveAccessibleDescription(t('errors.no-answer'));
  await expectAxeClean(page, 'the shop does not answer');
});
