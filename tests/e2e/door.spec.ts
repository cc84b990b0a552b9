import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from './shop-fixture.ts';

test('the link lets the window in once, and the key does not stay in its address', async ({ shop, page, browser }) => {
  const link = shop.host.newLink('window');
  const broken: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') broken.push(message.text());
  });
  await page.goto(link);
  await page.waitForURL((url) => !url.search.includes('key'));
  await expect(page).toHaveTitle(/Crownwheel/);
  await expect(page.locator('#window')).not.toBeEmpty();
  expect(broken).toEqual([]);
  const stranger = await browser.newPage();
  expect((await stranger.goto(link))?.status()).toBe(401);
  await stranger.close();
});

test('a local file may lead to the shop, as the launcher does it', async ({ shop, page }) => {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-link-'));
  const file = join(folder, 'to-the-shop.html');
  writeFileSync(file, `<meta http-equiv="refresh" content="0;url=${shop.host.newLink('window')}">`);
  await page.goto(pathToFileURL(file).href);
  await expect(page.locator('#window')).not.toBeEmpty();
  expect(new URL(page.url()).origin).toBe(shop.host.address);
  rmSync(folder, { recursive: true });
});
