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

const PAPER = /\/papers\/.*\.pdf$/;

/**
 * Presses what opens a paper in a window of its own; gives the paper's address. A browser without a reader of papers takes
 * it as a file; in both the new window has asked the host for it.
 */
export async function opensPaper(page: Page, press: () => Promise<unknown>): Promise<string> {
  const [reader, asked] = await Promise.all([
    page.waitForEvent('popup'),
    page.context().waitForEvent('request', (request) => PAPER.test(request.url())),
    press(),
  ]);
  await reader.close();
  return asked.url();
}

/**
 * Presses what prints a paper: its reader opens and asks for the printer at once, of which it only notes here that it was
 * asked. A browser without a reader is lent one.
 */
export async function printsPaper(page: Page, press: () => Promise<unknown>): Promise<void> {
  const context = page.context();
  if (!(await page.evaluate(() => navigator.pdfViewerEnabled)))
    await context.route(PAPER, async (route) => {
      const response = await route.fetch();
      const headers = { ...response.headers(), 'content-type': 'text/html' };
      await route.fulfill({ response, headers, body: 'paper' });
    });
  await context.addInitScript(() => {
    window.print = () => document.documentElement.setAttribute('data-printed', 'yes');
  });
  const [reader] = await Promise.all([page.waitForEvent('popup'), press()]);
  await expect(reader.locator('html[data-printed]')).toBeAttached();
  await reader.close();
  await context.unroute(PAPER);
}

/** Presses what opens a paper, and reads what comes with another reader than the program's. */
export async function readPaper(page: Page, name: string): Promise<string> {
  const address = await opensPaper(page, () => page.getByRole('button', { name, exact: true }).click());
  const answer = await page.request.get(address);
  expect(answer.headers()['content-type']).toBe('application/pdf');
  return (await readPages(new Uint8Array(await answer.body()))).map(textOf).join('\n');
}
