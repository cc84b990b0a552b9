import type { Locator, Page } from '@playwright/test';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { readPages, textOf } from '../paper/read-back.ts';
import { type Garage, PEOPLE, type PersonName } from './garage.ts';
import { expect } from './shop-fixture.ts';

/** What a person does at the window with the mouse and the keys, by the words that stand there. */

/** Opens the window and says who is working. */
export async function enter(page: Page, garage: Garage, name: PersonName = 'Odile'): Promise<void> {
  await page.goto(garage.door.host.newLink('window'));
  await choose(page, t('frame.enterWho'), name);
  await page.getByLabel(t('frame.enterCode')).fill(PEOPLE.find((one) => one.name === name)?.code ?? '');
  await page.getByRole('button', { name: t('frame.enterGo') }).click();
  await expect(page.getByRole('heading', { level: 1, name: t('today.title') })).toBeVisible();
}

/** Opens an order by its address. */
export async function openOrder(page: Page, garage: Garage, orderId: string, ...beside: string[]): Promise<void> {
  await page.goto(`${garage.door.host.address}/${hrefOf('orders', orderId, ...beside)}`);
  await expect(sheetOf(page)).toBeVisible();
}

/** The paper in the middle. */
export function sheetOf(page: Page): Locator {
  return page.getByRole('article', { name: t('sheet.order') });
}

/** One of a few, all in sight: presses its words. */
export async function choose(scope: Page | Locator, group: string, option: string): Promise<void> {
  await scope.getByRole('group', { name: group, exact: true }).getByText(option, { exact: true }).click();
}

/** The field under this label. */
export function field(scope: Page | Locator, label: string): Locator {
  return scope.getByRole('textbox', { name: label, exact: true });
}

/** A cell of the sheet: typed over, and left with Tab, which saves it. */
export async function typeCell(scope: Page | Locator, label: string, text: string): Promise<void> {
  const cell = scope.getByRole('textbox', { name: label, exact: true });
  await cell.fill(text);
  await cell.press('Tab');
}

/** The bar under the sheet: yes up to against on the sheet, and the main action. */
export function foot(page: Page): Locator {
  return page.getByRole('region', { name: t('parts.yesUpTo') });
}

/** The sum on the sheet as the foot bar says it. */
export async function expectOnSheet(page: Page, sum: string): Promise<void> {
  await expect(foot(page)).toContainText(`${t('parts.onTheSheet')}${sum}`);
}

/**
 * Presses what opens a paper, and reads what comes with another reader than the program's. A browser without a reader of
 * its own takes the paper as a file; in both the new window has asked the host for it.
 */
export async function readPaper(page: Page, name: string): Promise<string> {
  const [reader, asked] = await Promise.all([
    page.waitForEvent('popup'),
    page.context().waitForEvent('request', (request) => /\/papers\/.*\.pdf$/.test(request.url())),
    page.getByRole('button', { name, exact: true }).click(),
  ]);
  await reader.close();
  const answer = await page.request.get(asked.url());
  expect(answer.headers()['content-type']).toBe('application/pdf');
  return (await readPages(new Uint8Array(await answer.body()))).map(textOf).join('\n');
}
