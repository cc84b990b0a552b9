import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { _electron } from '@playwright/test';
import { findElectron } from '../../electron/electron-binary.ts';
import { openTheGarage } from './first-start.ts';
import { expect, test } from './shop-fixture.ts';

/** The desktop window itself. Where this program is built Electron's binary is not there, and this has never been run. */
const binary = findElectron();
const MAIN = resolve(import.meta.dirname, '../../dist/desktop/main.js');

test('in Electron: an empty folder becomes a garage, in a window that reaches nothing but its shop', async () => {
  test.skip(binary === null, 'Electron’s own program is not on this machine, so its window cannot be opened.');
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-desktop-'));
  const app = await _electron.launch({
    executablePath: binary ?? '',
    args: [MAIN],
    env: { ...process.env, CROWNWHEEL_SHOP: folder, CROWNWHEEL_PRACTICE: '1' } as Record<string, string>,
  });
  const page = await app.firstWindow();
  await openTheGarage(page);
  expect(new URL(page.url()).protocol).toBe('app:');
  expect(await page.evaluate(() => 'require' in window || 'process' in window)).toBe(false);
  await app.close();
  rmSync(folder, { recursive: true });
});
