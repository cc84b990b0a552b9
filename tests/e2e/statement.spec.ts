import type { Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field } from './window.ts';

/** An invoice of 181.44 for somebody; returns whom. */
async function invoiced(garage: Garage, name: string, email: string): Promise<string> {
  const id = await garage.booked({
    customer: { add: { name, phone: '555-0142', email } },
    car: { add: { plate: `KTB ${name.length}${email.length}`, words: 'Corvane R', year: 2016, unit: 'km' } },
  });
  await garage.job(id);
  await garage.did('Odile', 'quote.issue', { orderId: id });
  await garage.yes(id);
  const { revision, customer } = await garage.order(id);
  await garage.did('Odile', 'order.mileageOut', { id, revision, mileage: 42_190 });
  const { stops } = await garage.order(id);
  await garage.did('Odile', 'invoice.issue', {
    orderId: id,
    overrides: stops.map((stop) => ({ what: stop.what, reason: 'tried here' })),
  });
  return customer.id;
}

const money = (page: Page, garage: Garage, at: string) =>
  page.goto(`${garage.door.host.address}/${hrefOf('money', at)}`);

test('a statement is made and recorded as sent on the customer’s page, by the keys', async ({ garage, page }) => {
  const customerId = await invoiced(garage, 'Ilse Vandermeer', 'ilse@vandermeer.example');
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', customerId)}`);
  await page.getByRole('button', { name: t('statement.open'), exact: true }).focus();
  await page.keyboard.press('Enter');
  const part = page.getByRole('region', { name: t('statement.title') });
  await expect(part).toContainText('181.44');
  const made = page.waitForEvent('download');
  await part.getByRole('button', { name: t('statement.print') }).press('Enter');
  expect((await made).suggestedFilename()).toContain('Ilse Vandermeer.pdf');
  const log = async () =>
    (await garage.did('Odile', 'message.list', { customerId })).rows
      .filter((row) => row.kind === 'statement')
      .map((row) => row.about);
  await expect.poll(log).toEqual(['made']);
  const how = field(part, t('statement.how'));
  await expect(how).toHaveValue(t('statement.byEmail', { to: 'ilse@vandermeer.example' }));
  await expect(part.getByRole('link', { name: t('statement.mail') })).toHaveAttribute('href', /^mailto:ilse@/);
  await how.fill(' ');
  await how.press('Enter');
  await expect(part.getByRole('alert')).toHaveText(t('statement.howNeeded'));
  await expectAxeClean(page, 'customer with a statement and an error');
  await how.fill('by hand');
  await how.press('Enter');
  const sent = async () =>
    (await garage.did('Odile', 'statement.get', { customerId })).sent.map((one) => [one.how, one.closing]);
  await expect.poll(sent).toEqual([['by hand', 18_144]]);
  await expect(part).toContainText('by hand: 181.44 owed until');
  await part.getByLabel(t('statement.until'), { exact: true }).fill('2099-01-01');
  await expect(part.getByRole('alert')).toBeVisible();
  await expect(part.getByRole('button', { name: t('statement.wasSent') })).toHaveCount(0);
});

test('nobody owes; then a run makes one each, and how each was sent is written down row by row', async ({
  garage,
  page,
}) => {
  await enter(page, garage, 'Piet');
  await money(page, garage, 'statements');
  await expect(page.locator('.empty')).toContainText('Nobody owed anything');
  await expectAxeClean(page, 'statements, nobody owes');
  await invoiced(garage, 'Ilse Vandermeer', 'ilse@vandermeer.example');
  await invoiced(garage, 'Bram Oduya', '');
  await money(page, garage, 'owed');
  await money(page, garage, 'statements');
  await page.getByRole('button', { name: t('statement.start', { n: 2 }), exact: true }).press('Enter');
  const run = page.getByRole('region', { name: t('statement.run') });
  const file = run.getByRole('button', { name: /Ilse Vandermeer\.pdf/ });
  // Made in a thread of its own, which a busy machine is slow to begin.
  await expect(file).toBeVisible({ timeout: 120_000 });
  await expect(run.getByRole('button', { name: /Bram Oduya\.pdf/ })).toBeVisible({ timeout: 120_000 });
  const opened = page.waitForEvent('download');
  await file.press('Enter');
  expect((await opened).suggestedFilename()).toBe('Ilse Vandermeer.pdf');
  await expectAxeClean(page, 'statements of everybody');
  const first = run.getByRole('listitem').first();
  const second = run.getByRole('listitem').nth(1);
  await field(first, t('statement.how')).press('Enter');
  await expect(first).toContainText('Sent');
  await expect(field(second, t('statement.how'))).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(run).toContainText(t('statement.allSent'));
  const ways = async () =>
    (await garage.did('Odile', 'statement.run', {})).run?.rows.map((row) => row.sent.map((one) => one.how)).sort();
  await expect
    .poll(ways)
    .toEqual([[t('statement.byEmail', { to: 'ilse@vandermeer.example' })], [t('statement.byPost')]]);
  await page.getByLabel(t('statement.until'), { exact: true }).fill('2099-01-01');
  await expect(page.getByRole('alert')).toBeVisible();
  await expectAxeClean(page, 'statements, a day to come');
});
