import type { Page } from '@playwright/test';
import { t } from '../../renderer/words/t.ts';
import { expect, test } from './shop-fixture.ts';
import { DISCOUNTED, SWAP, SWAP_PRICES, SWAP_TITLE } from './swap.ts';
import { choose, enter, expectOnSheet, field, openOrder, readPaper, sheetOf, typeCell } from './window.ts';

async function putSwapOnSheet(page: Page): Promise<void> {
  await page.getByRole('combobox', { name: t('sheet.newJob') }).fill(SWAP_TITLE);
  await page.getByRole('button', { name: t('sheet.addJob') }).click();
  await expect(page.getByRole('textbox', { name: t('sheet.jobTitle', { letter: 'A' }) })).toHaveValue(SWAP_TITLE);
  for (const [words, price] of Object.entries(SWAP_PRICES))
    await typeCell(page, t('sheet.cellPrice', { words }), price);
}

test('the swap from the job book: priced, discounted, quoted as a PDF, said yes to by phone', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await enter(page, garage);
  await openOrder(page, garage, id);
  await putSwapOnSheet(page);
  await expectOnSheet(page, SWAP);
  await field(page, t('sheet.discountNew')).fill('5 %');
  await page.getByRole('combobox', { name: t('sheet.discountOn') }).selectOption(t('sheet.on-parts'));
  await page.getByRole('button', { name: t('sheet.add'), exact: true }).click();
  await expectOnSheet(page, DISCOUNTED);

  await page.getByRole('button', { name: t('sheet.quote'), exact: true }).click();
  await expect(page.getByRole('form', { name: t('quote.title') })).toBeVisible();
  await page.getByRole('button', { name: t('sheet.quote'), exact: true }).click();
  const name = t('sheet.paper-quote', { number: 300, version: 1 });
  await expect(page.getByRole('button', { name, exact: true })).toBeVisible();
  const text = await readPaper(page, name);
  for (const piece of ['Ilse Vandermeer', 'KTB 4471', 'Rebuilt carrier, exchange', DISCOUNTED, '300'])
    expect(text).toContain(piece);

  await page.getByRole('button', { name: t('decision.record') }).click();
  const form = page.getByRole('form', { name: t('decision.title') });
  await choose(form, t('decision.how'), t('decision.way-phone'));
  await expect(field(form, t('decision.reached-phone'))).toHaveValue('555-0142');
  await field(form, t('decision.wordsLabel')).fill('Go ahead, and ring me when it is done.');
  await page.getByRole('button', { name: t('decision.record') }).click();

  await expect(form).toBeHidden();
  await expect(sheetOf(page)).toContainText(t('sheet.covers', { letters: 'A' }));
  await expect(page.getByRole('region', { name: t('parts.yesUpTo') })).toContainText(t('parts.insideWhole'));
  const order = await garage.order(id);
  expect(order.decisions).toMatchObject([
    { way: 'phone', reached: '555-0142', ceiling: 343_141, quoteNumber: 300, quoteVersion: 1 },
  ]);
});

test('a line typed in plain words is read as hours; a line taken out comes back', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id);
  await expectOnSheet(page, '181.44');
  await field(page, t('sheet.newWords', { letter: 'A' })).fill('Take the wheels off 0.5 h');
  await page.getByRole('button', { name: t('sheet.add'), exact: true }).click();
  await expectOnSheet(page, '241.92');
  await page.getByRole('button', { name: t('sheet.takeOutLine', { words: 'Take the wheels off' }) }).click();
  await expectOnSheet(page, '181.44');
  await page.getByRole('button', { name: t('parts.putBack') }).click();
  await expectOnSheet(page, '241.92');
  const [job] = (await garage.order(id)).jobs;
  expect(job?.lines.map((line) => [line.kind, line.quantity, line.unitPrice])).toEqual([
    ['labour', 1500, 9600],
    ['labour', 500, 9600],
  ]);
});
