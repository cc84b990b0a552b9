import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field } from './window.ts';

/** An account over its limit and a request about somebody's own data, by the keys alone once the page is open. */

test('the owner sets a limit, sees what is over it, and lets the work pass once with a reason, by keys', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  const { customer } = await garage.order(id);
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', customer.id)}`);
  const limit = field(page, t('customers.creditLimit'));
  await limit.focus();
  await page.keyboard.type('100');
  await page.keyboard.press('Tab');
  await expect(page.getByText(t('customers.creditOver', { sum: '81.44' }))).toBeVisible();
  await expectAxeClean(page, 'a customer over the limit');
  await garage.yes(id);
  await page.goto(`${garage.door.host.address}/${hrefOf('orders', id)}`);
  const reason = field(page, t('account.reason'));
  await reason.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(t('account.reasonNeeded'))).toBeVisible();
  await page.keyboard.type('Pays on Friday');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await garage.order(id)).credit?.pass?.reason).toBe('Pays on Friday');
  await expect(page.getByText(/Pays on Friday/)).toBeVisible();
});

test('a request is written down with its last day, and what may go is listed before it goes, by keys', async ({
  garage,
  page,
}) => {
  const { id } = await garage.did('Odile', 'customer.add', { name: 'Per Halloran', phone: '555-0177', note: 'Loud' });
  await enter(page, garage);
  await page.goto(`${garage.door.host.address}/${hrefOf('customers', id)}`);
  const photos = page.getByRole('group', { name: t('customers.consent-photos') });
  await photos.getByRole('radio', { checked: true }).focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  const said = page.getByRole('form', { name: t('customers.consentHow', { what: t('customers.consent-photos') }) });
  await said.getByRole('button', { name: t('contact.keep') }).focus();
  await page.keyboard.press('Enter');
  const consents = async () =>
    (await garage.did('Odile', 'customer.get', { id })).consents.map(({ what, answer, way }) => [what, answer, way]);
  await expect.poll(consents).toEqual([['photos', 'yes', 'person']]);
  await page.getByRole('button', { name: t('privacy.askOpen') }).focus();
  await page.keyboard.press('Enter');
  await field(page, t('privacy.words')).focus();
  await page.keyboard.type('What do you keep of me?');
  await page.keyboard.press('Enter');
  const requests = async () => (await garage.did('Odile', 'privacy.list', { customerId: id })).rows;
  await expect.poll(async () => (await requests()).length).toBe(1);
  await page.getByRole('button', { name: t('privacy.look') }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(t('privacy.stays-copies'))).toBeVisible();
  await expectAxeClean(page, 'what may go of a customer');
  const note = async () => (await garage.did('Odile', 'customer.get', { id })).fields.note;
  expect(await note()).toBe('Loud');
  await page.getByRole('button', { name: t('privacy.go') }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(t('privacy.gone'))).toBeVisible();
  await expect.poll(note).toBe('');
  await page.goto(`${garage.door.host.address}/${hrefOf('today')}`);
  await expect(page.getByText(/asked what is kept about them/)).toBeVisible();
});
