import { t } from '../../renderer/words/t.ts';
import { expectAxeClean } from './axe.ts';
import type { Garage } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { enter, field, foot, openOrder, typeCell } from './window.ts';

/** Every test begins on Tuesday, 10 November 2026. */
async function monthFirst(garage: Garage): Promise<void> {
  const { revision } = await garage.did('Odile', 'shop.get', {});
  await garage.did('Odile', 'shop.change', { revision, settings: { dateForm: 'month-day' } });
}

test('a day is typed in the shop’s order, stepped, picked from its month, and holds the quote while it is none', async ({
  garage,
  page,
}) => {
  await monthFirst(garage);
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id, 'quote');
  const form = page.getByRole('form', { name: t('quote.title') });
  // Its name says where a day came from that was filled in.
  const until = form.getByRole('textbox', { name: t('quote.until') });
  await expect(until).toBeFocused();
  await expect(until).toHaveValue(/^1[12]\/\d\d\/2026$/);
  await until.fill('12/3');
  await expect(form).toContainText('Thursday 3 Dec 2026');
  await until.press('ArrowUp');
  await expect(until).toHaveValue('12/04/2026');
  await expect(form).toContainText('Friday');

  // What cannot be read stays as it was typed; its sentence stands under it, and neither key nor button sends it.
  const unread = t('parts.dateUnread', { typed: 'soonish', example: '11/29/2026' });
  await until.fill('soonish');
  await expect(form.getByText(unread)).toBeHidden();
  await page.keyboard.press('Control+Enter');
  await expect(form.getByText(unread)).toBeVisible();
  await expect(until).toBeFocused();
  await foot(page)
    .getByRole('button', { name: t('sheet.quote'), exact: false })
    .first()
    .click();
  await expect(until).toHaveValue('soonish');
  await expect(until).toHaveAttribute('aria-invalid', 'true');
  await expect(until).toHaveAccessibleDescription(/soonish/);
  await expectAxeClean(page, 'a day that cannot be read');
  expect((await garage.did('Odile', 'quote.list', { orderId: id })).quotes).toEqual([]);

  // Emptied and left, the shop's own day stands there again.
  await until.fill('');
  await until.press('Tab');
  await expect(until).toHaveValue(/^1[12]\/\d\d\/2026$/);

  await until.fill('2026-11-29');
  await until.press('Alt+ArrowDown');
  const month = page.getByRole('dialog', { name: t('quote.until') });
  await expect(month.getByRole('button', { name: '29 Nov 2026' })).toBeFocused();
  await expectAxeClean(page, 'a month to pick a day from');
  await page.keyboard.press('Escape');
  await expect(month).toBeHidden();
  await expect(until).toBeFocused();
  await expect(form).toBeVisible();
  await until.press('Alt+ArrowDown');
  await page.keyboard.press('PageDown');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(month).toBeHidden();
  await expect(until).toHaveValue('12/30/2026');
  await expect(until).toBeFocused();
  await page.keyboard.press('Control+Enter');
  const papers = async () => (await garage.order(id)).papers.map((one) => one.validUntil);
  await expect.poll(papers).toEqual(['2026-12-30']);
});

test('a day and a time of it in a cell of the head, and what is no such day keeps what was typed', async ({
  garage,
  page,
}) => {
  await monthFirst(garage);
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id);
  await page.getByRole('button', { name: t('edit.headOpen') }).click();
  const promise = t('edit.promise');
  await typeCell(page, promise, 'tomorrow 5 pm');
  await expect.poll(async () => (await garage.order(id)).promiseAt).toBe(Date.parse('2026-11-11T17:00Z'));
  await expect(field(page, promise)).toHaveValue('11/11/2026 17:00');
  await typeCell(page, promise, '2/30/2027 9:00');
  await expect(
    page.getByText(t('parts.noSuchDay', { typed: '2/30/2027 9:00', example: '11/29/2026 7:30' })),
  ).toBeVisible();
  await expect(field(page, promise)).toHaveValue('2/30/2027 9:00');
  await typeCell(page, promise, '12/2/2026');
  await expect(page.getByText(t('parts.noTime', { typed: '12/2/2026', example: '11/29/2026 7:30' }))).toBeVisible();
  expect((await garage.order(id)).promiseAt).toBe(Date.parse('2026-11-11T17:00Z'));
  await typeCell(page, promise, '');
  await expect.poll(async () => (await garage.order(id)).promiseAt).toBeNull();
});

test('when a yes was said: typed as day and time, kept while it cannot be read, now again where it is emptied', async ({
  garage,
  page,
}) => {
  const id = await garage.booked();
  await garage.job(id);
  await enter(page, garage);
  await openOrder(page, garage, id, 'yes');
  const form = page.getByRole('form', { name: t('decision.title') });
  const when = field(form, t('decision.when'));
  await when.fill('yesterday');
  await when.press('Tab');
  const noTime = t('parts.noTime', { typed: 'yesterday', example: '29/11/2026 7:30' });
  await expect(form.getByText(noTime)).toBeVisible();
  await page.keyboard.press('Control+Enter');
  await expect(when).toBeFocused();
  await expect(when).toHaveValue('yesterday');
  expect((await garage.order(id)).decisions).toEqual([]);
  await when.fill('');
  await when.press('Tab');
  await expect(when).toHaveValue(/^10\/11\/2026 10:\d\d$/);
  await when.fill('yesterday 16:20');
  await page.keyboard.press('Control+Enter');
  await expect
    .poll(async () => (await garage.order(id)).decisions.map(({ at }) => at))
    .toEqual([Date.parse('2026-11-09T16:20Z')]);
});
