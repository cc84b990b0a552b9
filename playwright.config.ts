import { defineConfig } from '@playwright/test';
import { HOW_TO_GET_A_BROWSER } from './electron/chromium.ts';
import { findTestBrowser } from './tests/browser.ts';

const browser = findTestBrowser();
if (browser === null) throw new Error(HOW_TO_GET_A_BROWSER);

/** End to end, in a browser of this machine; every test has a host and a shop of its own. */
export default defineConfig({
  testDir: 'tests/e2e',
  testMatch: '**/*.spec.ts',
  fullyParallel: true,
  workers: 2,
  // A machine that does ten other things beside is slow, not wrong.
  timeout: 300_000,
  expect: { timeout: 20_000 },
  forbidOnly: true,
  outputDir: 'test-results',
  use: {
    launchOptions: { executablePath: browser },
    viewport: { width: 1440, height: 900 },
    actionTimeout: 30_000,
    // A trace of every test costs as much again as the test; `--trace on` makes one of the spec in question.
    screenshot: 'only-on-failure',
  },
});
