import type { Locator, Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field, openOrder, sheetOf, typeCell } from './window.ts';

/** What a person may well type: each gets a sentence where it was typed, and nothing is lost or half saved. */

const MEGABYTES = 10_000_000;

/** Puts a long text on the clipboard and pastes it with the keys, as a person does by mistake. */
async function paste(page: Page, into: Locator, text: string): Promise<void> {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate((long) => navigator.clipboard.writeText(long), text);
  await into.click();
  await page.keyboard.press('Control+A');
  await page.keyboard.press('Control+V');
}

test('letters in a sum and less than nothing of a thing: said at the cell, the words stay, the sheet too', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id);
  for (const [label, typed] of [
    [t('sheet.cellPrice', { words: 'Road test' }), 'ninety-six'],
    [t('sheet.cellPrice', { words: 'Road test' }), '-96'],
    [t('sheet.cellQuantity', { words: 'Road test' }), '-2 h'],
    [t('sheet.cellQuantity', { words: 'Road test' }), '1.5.2 h'],
  ] as const) {
    await typeCell(page, label, typed);
    await expect(field(page, label)).toHaveAccessibleDescription(t('sheet.unread', { label }));
    await expect(field(page, label)).toHaveValue(typed);
    await field(page, label).press('Escape');
    await expect(field(page, label)).toHaveValue(/^(96\.00|1\.5.h)$/);
  }
  const price = t('sheet.cellPrice', { words: 'Road test' });
  await typeCell(page, price, '96.005');
  await expect(field(page, price)).toHaveAccessibleDescription(t('sheet.unread', { label: price }));
  await typeCell(page, price, '96.00');
  await expect(field(page, price)).toHaveAccessibleDescription('');
  const payments = page.getByRole('region', { name: t('sheet.payments') });
  for (const typed of ['a hundred', '-100', '0']) {
    await field(payments, t('sheet.payAmount')).fill(typed);
    await payments.getByRole('button', { name: t('sheet.payTake') }).click();
    await expect(field(payments, t('sheet.payAmount'))).toHaveAccessibleDescription(
      t('sheet.unread', { label: t('sheet.payAmount') }),
    );
    await expect(field(payments, t('sheet.payAmount'))).toHaveValue(typed);
  }
  const order = await garage.order(id);
  expect(order.payments).toEqual([]);
  expect(order.jobs[0]?.lines[0]).toMatchObject({ revision: 1, quantity: 1500, unitPrice: 9600 });
});

test('ten megabytes pasted into a cell and into the complaint: a sentence, and the program goes on', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id);
  const title = field(page, t('sheet.jobTitle', { letter: 'A' }));
  await paste(page, title, 'word '.repeat(MEGABYTES / 5));
  await page.keyboard.press('Tab');
  await expect(title).toHaveAccessibleDescription(
    t('errors.bad-input-one', { problem: t('errors.problem-too-long', { most: 200 }) }),
  );
  await expect(title).toHaveValue(/^word word word/);
  await title.press('Escape');
  await expect(title).toHaveValue('Find the whine');
  await typeCell(page, t('sheet.jobTitle', { letter: 'A' }), 'Find the whine, again');
  await expect.poll(async () => (await garage.order(id)).jobs[0]?.title).toBe('Find the whine, again');
  expect((await garage.order(id)).jobs[0]?.revision).toBe(2);

  await page.goto(`${garage.door.host.address}/${hrefOf('today', 'book')}`);
  await paste(page, field(page, t('intake.complaint')), 'word '.repeat(MEGABYTES / 5));
  await expect(field(page, t('intake.complaint'))).toHaveValue(/^word word word/);
  await field(page, t('intake.name')).fill('Ilse Vandermeer');
  await expect(field(page, t('intake.name'))).toHaveValue('Ilse Vandermeer');
});

test('a plate of pictures and a promise for 1899: said at the field, and what was typed stays', async ({
  garage,
  page,
}) => {
  await enter(page, garage);
  await page.getByRole('button', { name: t('today.book') }).click();
  const plate = field(page, t('intake.plate'));
  await field(page, t('intake.name')).fill('Ilse Vandermeer');
  await plate.fill('🚗💨🔧');
  await field(page, t('intake.words')).fill('Corvane R');
  await field(page, t('intake.complaint')).fill('It whines.');
  const book = page.getByRole('button', { name: t('intake.go') });
  await book.click();
  await expect(plate).toHaveAccessibleDescription(
    t('errors.bad-input-one', { problem: t('errors.problem-not-a-plate') }),
  );
  await expect(plate).toBeFocused();
  await expect(plate).toHaveValue('🚗💨🔧');
  await plate.fill('KTB 4471');
  const promise = page.getByLabel(t('intake.promise'), { exact: true });
  await promise.fill('1899-12-31T10:00');
  await book.click();
  await expect(promise).toHaveAccessibleDescription(
    t('parts.noSuchDay', { typed: '1899-12-31T10:00', example: '29/11/2026 7:30' }),
  );
  await expect(promise).toHaveValue('1899-12-31T10:00');
  await expect(field(page, t('intake.complaint'))).toHaveValue('It whines.');
  expect((await garage.did('Odile', 'order.page', { filter: { which: 'all' } })).rows).toEqual([]);
  await promise.fill('');
  await book.click();
  await expect(sheetOf(page)).toContainText('KTB 4471');
});
