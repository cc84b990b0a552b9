import { t } from '../../renderer/words/t.ts';
import { Keys } from './keys.ts';
import { expect, test } from './shop-fixture.ts';
import { DISCOUNTED, SWAP, SWAP_PRICES, SWAP_TITLE } from './swap.ts';
import { expectOnSheet, field, sheetOf } from './window.ts';

test('the swap from the job book: priced, discounted, quoted and said yes to, without the mouse', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  const keys = new Keys(page);
  await keys.enter(garage);
  await expect(page.getByRole('main')).toContainText('KTB 4471');
  await keys.press('ArrowDown', 'Enter');
  await expect(sheetOf(page)).toBeVisible();
  await keys.press('Alt+j');
  await expect(page.getByRole('combobox', { name: t('sheet.newJob') })).toBeFocused();
  await keys.type(SWAP_TITLE);
  await keys.press('Enter');
  await expect(page.getByRole('textbox', { name: t('sheet.jobTitle', { letter: 'A' }) })).toHaveValue(SWAP_TITLE);
  keys.report('the swap on the sheet', 87);

  // From the foot of the sheet up its column of prices, line by line.
  const prices = Object.entries(SWAP_PRICES).reverse();
  await keys.to(field(page, t('sheet.cellPrice', { words: prices[0]?.[0] ?? '' })), 'Shift+Tab');
  for (const [words, price] of prices) {
    await expect(field(page, t('sheet.cellPrice', { words }))).toBeFocused();
    await keys.type(price);
    await keys.press('Shift+Enter');
  }
  await expectOnSheet(page, SWAP);
  keys.report('and priced', 136);

  await keys.press('Alt+j');
  await expect(page.getByRole('combobox', { name: t('sheet.newJob') })).toBeFocused();
  await keys.to(field(page, t('sheet.discountNew')));
  await keys.type('5 %');
  await keys.to(page.getByRole('combobox', { name: t('sheet.discountOn') }));
  await keys.type('on the p');
  await keys.press('Enter');
  if ((await garage.order(id)).discounts.length === 0) {
    await keys.to(page.getByRole('button', { name: t('sheet.add'), exact: true }));
    await keys.press('Enter');
  }
  await expectOnSheet(page, DISCOUNTED);
  await keys.to(page.getByRole('button', { name: t('sheet.quote'), exact: true }));
  await keys.press('Enter');
  await expect(page.getByRole('form', { name: t('quote.title') })).toBeVisible();
  await keys.press('Control+Enter');
  await expect(
    page.getByRole('button', { name: t('sheet.paper-quote', { number: 300, version: 1 }), exact: true }),
  ).toBeVisible();
  keys.report('and quoted', 190);

  await keys.press('Alt+y');
  const form = page.getByRole('form', { name: t('decision.title') });
  await expect(form).toBeVisible();
  await keys.choose(form, t('decision.how'), t('decision.way-phone'));
  await keys.to(field(form, t('decision.wordsLabel')));
  await keys.type('Go ahead.');
  await keys.press('Control+Enter');
  await expect(form).toBeHidden();
  await expect(sheetOf(page)).toContainText(t('sheet.covers', { letters: 'A' }));
  keys.report('and said yes to', 213);

  const order = await garage.order(id);
  expect(order.decisions).toMatchObject([{ way: 'phone', words: 'Go ahead.', ceiling: 343_141, quoteNumber: 300 }]);
});
