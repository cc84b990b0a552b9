import { readFileSync } from 'node:fs';
import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { expect, test } from './shop-fixture.ts';
import { enter } from './window.ts';

const ROWS = 2000;
const HEAD = 'Kennzeichen;Modell;Vorname;Nachname;Telefon;E-Mail;Datum;km-Stand;Arbeit';
const row = (n: number) =>
  `ABC ${n};Oriel Estate;Måns;Öst ${n};0171 ${5_550_000 + n};${n % 100 === 50 ? 'nonsense' : `p${n}@example.test`};13.04.2019;61.000;Oil`;
const file = Buffer.from(`${HEAD}\r\n${Array.from({ length: ROWS }, (_, n) => row(n)).join('\r\n')}\r\n`, 'latin1');
const BAD = ROWS / 100;

test('a file from elsewhere: shown, tried, stopped on the way, gone on, known the second time, taken back', async ({
  page,
  garage,
}) => {
  test.slow();
  await enter(page, garage, 'Piet');
  // The third piece waits at the door until it was stopped.
  let letGo = () => {};
  const stopped = new Promise<void>((go) => {
    letGo = go;
  });
  let pieces = 0;
  await page.route('**/call', async (route) => {
    if (route.request().postData()?.includes('import.put')) {
      pieces += 1;
      if (pieces > 2) await stopped;
    }
    await route.continue();
  });
  await page.goto(`${garage.door.host.address}/#/shop/in`);
  await expect(page.getByText(t('bringIn.noEarlier'))).toBeVisible();
  const choose = async () => {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: /file$/ }).click();
    await (await chooser).setFiles({ name: 'old.csv', mimeType: 'text/csv', buffer: file });
  };
  await choose();
  await expect(page.getByText('2000 rows, windows-1252, columns parted by semicolons')).toBeVisible();
  const plate = page.getByRole('combobox', { name: t('bringIn.holdsWhat', { name: 'Kennzeichen' }) });
  await expect(plate).toHaveValue('car-plate');
  await expect(page.getByRole('cell', { name: 'Öst 0' })).toBeVisible();
  await expect(page.getByRole('radio', { name: t('bringIn.dates-dmy') })).toBeChecked();
  await expectAxeClean(page, 'file chosen');

  await page.getByRole('button', { name: t('bringIn.try') }).click();
  const whole = { customers: ROWS - BAD, cars: ROWS - BAD, visits: ROWS - BAD };
  await expect(page.getByText(t('bringIn.would', whole))).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText(`line 52 ${t('bringIn.field-customer-email')}`)).toBeVisible();
  await expectAxeClean(page, 'tried');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: t('bringIn.saveBad') }).click();
  expect((await saved).suggestedFilename()).toBe('rows-to-put-right.csv');

  await page.getByRole('button', { name: t('bringIn.go', { n: ROWS - BAD }) }).click();
  await page.getByRole('button', { name: t('bringIn.stop') }).click();
  letGo();
  await expect(page.getByText(/^Stopped: /)).toBeVisible();
  await page.getByRole('button', { name: t('bringIn.goOn') }).click();
  await expect(page.getByText(t('bringIn.cameIn', whole))).toBeVisible({ timeout: 60_000 });

  await choose();
  await page.getByRole('button', { name: t('bringIn.try') }).click();
  await expect(page.getByText(t('bringIn.nothingNew'))).toBeVisible({ timeout: 60_000 });
  // Stopped and gone on with, it is one file to take back.
  await page.getByRole('button', { name: t('bringIn.takeBack') }).click();
  await expect(page.getByText(/^Taken back: /)).toBeVisible({ timeout: 60_000 });
  expect((await garage.did('Piet', 'customer.list', { text: 'Öst' })).rows).toEqual([]);
  await expectAxeClean(page, 'taken back');
});

test('what is here goes out as CSV', async ({ page, garage }) => {
  await garage.booked();
  await enter(page, garage, 'Piet');
  await page.goto(`${garage.door.host.address}/#/shop/in`);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: t('bringIn.out-customers'), exact: true }).click();
  const text = readFileSync(await (await saved).path(), 'utf8');
  expect(text).toMatch(/^\uFEFFcustomer-key,customer-name,.*\r\n[^,]+,Ilse Vandermeer,555-0142,/);
});
