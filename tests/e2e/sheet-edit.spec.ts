import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import { ROAD_TEST } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, expectOnSheet, openOrder, typeCell } from './window.ts';

test('the rest of a line: by the book less what it shares, a discount, who works how long', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await garage.job(id, 'Seal', [{ ...ROAD_TEST, words: 'Fit the seal' }]);
  await enter(page, garage);
  await openOrder(page, garage, id);
  await expectOnSheet(page, '362.88');
  const words = 'Fit the seal';
  // What can be done with a line shows while the pointer is on it.
  await page.getByRole('textbox', { name: t('sheet.cellPrice', { words }) }).hover();
  await page.getByRole('button', { name: t('edit.moreOf', { words }) }).click();
  await page.getByRole('combobox', { name: t('edit.billingOf', { words }) }).selectOption('book');
  await page.getByRole('combobox', { name: t('edit.sharesOf', { words }) }).selectOption('A Find the whine');
  await typeCell(page, t('edit.overlapOf', { words }), '0.5');
  // 1.5 h and 1.5 less 0.5 h at 96.00, 5 % supplies, 20 % tax
  await expectOnSheet(page, '302.40');
  await expect(page.locator('body')).toContainText(
    t('edit.bookLess', { book: '1.5\u00a0h', overlap: '0.5\u00a0h', letter: 'A', charged: '1\u00a0h' }),
  );
  await typeCell(page, t('edit.discountOf', { words }), '10 %');
  // 144.00 and 86.40, 5 % supplies on both, 20 % tax
  await expectOnSheet(page, '290.30');
  await typeCell(page, t('edit.discountOf', { words }), 'half');
  await expect(page.getByRole('alert')).toContainText(t('sheet.discountUnread'));
  await expectAxeClean(page, 'the rest of a line, one cell wrong');
  await typeCell(page, t('edit.hoursOf', { name: 'Runa', words }), '1');
  await expect
    .poll(async () => (await garage.order(id)).jobs[1]?.lines[0]?.people)
    .toEqual([{ personId: garage.personId('Runa'), hours: 1000 }]);
});

test('a fixed price, an offered job and the reckoning of a sum, by keys', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id);
  await page.getByRole('button', { name: t('edit.moreOf', { words: 'A Find the whine' }) }).focus();
  await page.keyboard.press('Enter');
  await typeCell(page, t('edit.fixedPriceOf', { letter: 'A' }), '100');
  // 100.00 and 20 % tax: supplies are inside a fixed price.
  await expectOnSheet(page, '120.00');
  const job = page.getByRole('region', { name: t('sheet.jobLabel', { letter: 'A', title: 'Find the whine' }) });
  await job.locator('summary').focus();
  await page.keyboard.press('Enter');
  await expect(job.locator('details')).toContainText('144.00');
  await page.keyboard.press('Enter');
  await page.getByRole('combobox', { name: t('edit.standsOf', { letter: 'A' }) }).selectOption('offered');
  await expect(job).toContainText(t('sheet.offered'));
  await expectOnSheet(page, '0.00');
});

test('the customer’s own maximum is kept, and a yes beyond it says so at its place', async ({ garage, page }) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id);
  await page.getByRole('button', { name: t('edit.headOpen') }).click();
  await typeCell(page, t('edit.ownMaximum'), '150');
  await expect.poll(async () => (await garage.order(id)).ownMaximum).toBe(15_000);
  await typeCell(page, t('edit.po'), 'PO 77');
  await expect.poll(async () => (await garage.order(id)).poNumber).toBe('PO 77');
  await typeCell(page, t('sheet.says'), 'It whines from the back, and clunks.');
  await expect.poll(async () => (await garage.order(id)).complaint).toBe('It whines from the back, and clunks.');
  await expectAxeClean(page, 'the head of the sheet, open');
  await page.keyboard.press('Alt+y');
  await page.getByRole('button', { name: t('decision.record') }).click();
  await expect(page.getByRole('form', { name: t('decision.title') })).toContainText(
    t('decision.overOwnMaximum', { sum: '150.00' }),
  );
  expect((await garage.order(id)).decisions).toEqual([]);
});

test('the same choice made in two windows: both stand, the person picks', async ({ garage, anotherWindow }) => {
  const id = await garage.booked();
  await garage.job(id, 'Seal', [{ kind: 'part', words: 'Seal', quantity: 1000, unitPrice: 1875 }]);
  const [odile, piet] = await Promise.all(
    (['Odile', 'Piet'] as const).map(async (name) => {
      const page = await anotherWindow();
      await enter(page, garage, name);
      await openOrder(page, garage, id);
      await page.getByRole('textbox', { name: t('sheet.cellPrice', { words: 'Seal' }) }).hover();
      await page.getByRole('button', { name: t('edit.moreOf', { words: 'Seal' }), exact: true }).click();
      return page;
    }),
  );
  if (odile === undefined || piet === undefined) throw new Error('two windows are wanted');
  const pick = (page: typeof odile) => page.getByRole('combobox', { name: t('edit.conditionOf', { words: 'Seal' }) });
  // Piet's window hears of nothing meanwhile: the door is shut for what it asks, not for what it does.
  await piet.route('**/*', async (route) => {
    const body = route.request().postData() ?? '';
    if (body.includes('"order.get"')) return;
    await route.continue();
  });
  await pick(odile).selectOption('used');
  await expect.poll(async () => (await garage.order(id)).jobs[0]?.lines[0]?.condition).toBe('used');
  await pick(piet).selectOption('new');
  const both = piet.getByRole('group', { name: t('errors.changed-meanwhile') });
  await expect(both).toContainText(t('sheet.condition-used'));
  expect((await garage.order(id)).jobs[0]?.lines[0]?.condition).toBe('used');
  await both.getByRole('button', { name: t('parts.keep', { value: t('sheet.condition-new') }) }).click();
  await expect.poll(async () => (await garage.order(id)).jobs[0]?.lines[0]?.condition).toBe('new');
});

test('a part number typed whole is that part of the shelf, with its words and price; found by its words too', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  const part = { number: 'OS-2214', words: 'Output seal', unit: '', price: 3850, cost: 2100 };
  await garage.did('Odile', 'part.add', { ...part, onHand: 2000 });
  await enter(page, garage);
  await openOrder(page, garage, id);
  const words = page.getByRole('textbox', { name: t('sheet.newWords', { letter: 'A' }) });
  await words.fill('os-2214');
  await expect(page.getByRole('list', { name: t('edit.onTheShelf') })).toContainText('Output seal');
  await words.press('Enter');
  await expect(page.getByRole('textbox', { name: t('sheet.cellPrice', { words: 'Output seal' }) })).toHaveValue(
    '38.50',
  );
  await expect(words).toHaveValue('');
  await words.fill('seal');
  await page.getByRole('button', { name: 'OS-2214 Output seal' }).click();
  await expect(words).toBeFocused();
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await garage.order(id)).jobs[0]?.lines.length).toBe(3);
  expect((await garage.order(id)).jobs[0]?.lines.slice(1)).toMatchObject([
    { kind: 'part', partNumber: 'OS-2214', unitPrice: 3850, quantity: 1000 },
    { kind: 'part', partNumber: 'OS-2214', unitPrice: 3850, quantity: 1000 },
  ]);
});
