import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field, readPaper } from './window.ts';

/** An order whose invoice is made and not paid. */
async function invoiced(garage: Garage): Promise<string> {
  const id = await garage.booked();
  await garage.job(id);
  await garage.did('Odile', 'quote.issue', { orderId: id });
  await garage.yes(id);
  const { revision } = await garage.order(id);
  await garage.did('Odile', 'order.mileageOut', { id, revision, mileage: 42_190 });
  const { stops } = await garage.order(id);
  await garage.did('Odile', 'invoice.issue', {
    orderId: id,
    overrides: stops.map((stop) => ({ what: stop.what, reason: 'tried here' })),
  });
  return id;
}

test('an unpaid invoice is drawn, listed and opened; nothing is owed once it is paid', async ({ garage, page }) => {
  const id = await invoiced(garage);
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('money')}`);
  await expect(page.getByText(t('money.unpaid', { n: 1 }))).toBeVisible();
  await expect(page.getByRole('img', { name: t('money.chart') })).toContainText('Ilse Vandermeer');
  await expectAxeClean(page, 'money');
  const { unpaid } = await garage.did('Odile', 'money.get', {});
  const [row] = unpaid;
  const paper = await readPaper(page, `${t('money.invoice')} ${row?.number}`);
  expect(paper).toContain('181.44');
  await garage.did('Piet', 'payment.take', { orderId: id, kind: 'payment', way: 'card', amount: row?.open ?? 0 });
  await expect(page.getByText(t('money.way-card', { n: 1 }))).toBeVisible();
  await expect(page.getByRole('region', { name: t('money.owed') })).toContainText(t('money.allPaid'));
});

test('papers are found by kind and name; what was sent leaves the list of what waits', async ({ garage, page }) => {
  await invoiced(garage);
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/${hrefOf('money', 'papers')}`);
  const rows = page.getByRole('table').getByRole('row');
  await expect(rows).toHaveCount(3);
  await page.getByText(t('money.kind-invoice'), { exact: true }).click();
  await expect(rows).toHaveCount(2);
  await field(page, t('money.find')).fill('nobody at all');
  await expect(page.getByText(t('money.papersNoneFound'))).toBeVisible();
  await expectAxeClean(page, 'papers, none found');

  await page.goto(`${garage.door.host.address}/${hrefOf('money', 'to-send')}`);
  const how = page.getByRole('textbox', { name: t('money.how') }).first();
  await expect(how).toHaveValue(t('money.byEmail', { to: 'ilse@vandermeer.example' }));
  await how.fill('');
  await how.press('Enter');
  await expect(page.getByText(t('money.howNeeded'))).toBeVisible();
  await expectAxeClean(page, 'to send, with an error');
  const waiting = async () => (await garage.did('Odile', 'paper.toSend', {})).rows.length;
  const before = await waiting();
  await how.fill('by post');
  await how.press('Enter');
  await expect.poll(waiting).toBe(before - 1);
});

test('a mechanic sees no money', async ({ garage, page }) => {
  await invoiced(garage);
  await enter(page, garage, 'Runa');
  await page.goto(`${garage.door.host.address}/${hrefOf('money')}`);
  await expect(page.getByText(t('money.deskOnly'))).toBeVisible();
  await expect(page.getByText('181.44')).toHaveCount(0);
});
