import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { enter } from './window.ts';

test('a statement is made and recorded as sent on the customer’s page; a run makes one for whoever owes', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await garage.did('Odile', 'quote.issue', { orderId: id });
  await garage.yes(id);
  const { revision, customer } = await garage.order(id);
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('money', 'statements')}`);
  await expect(page.getByText(t('statement.owingNone'))).toBeVisible();
  await garage.did('Odile', 'order.mileageOut', { id, revision, mileage: 42_190 });
  const { stops } = await garage.order(id);
  await garage.did('Odile', 'invoice.issue', {
    orderId: id,
    overrides: stops.map((stop) => ({ what: stop.what, reason: 'tried here' })),
  });
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', customer.id)}`);
  await page.getByRole('button', { name: t('statement.open'), exact: true }).focus();
  await page.keyboard.press('Enter');
  const part = page.getByRole('region', { name: t('statement.title') });
  await expect(part).toContainText('181.44');
  const made = page.waitForEvent('download');
  await part.getByRole('button', { name: t('statement.print') }).press('Enter');
  expect((await made).suggestedFilename()).toContain('Ilse Vandermeer.pdf');
  await part.getByRole('textbox', { name: t('statement.how') }).press('Enter');
  const sent = async () => (await garage.did('Odile', 'statement.get', { customerId: customer.id })).sent.length;
  await expect.poll(sent).toBe(1);
  await expectAxeClean(page, 'customer with a statement');

  await page.goto(`${garage.door.host.address}/${hrefOf('money', 'statements')}`);
  await page.getByRole('button', { name: t('statement.start'), exact: true }).press('Enter');
  const file = page.getByRole('button', { name: /Ilse Vandermeer\.pdf/ });
  await expect(file).toBeVisible();
  const opened = page.waitForEvent('download');
  await file.press('Enter');
  expect((await opened).suggestedFilename()).toBe('Ilse Vandermeer.pdf');
  await expectAxeClean(page, 'statements of everybody');
});
