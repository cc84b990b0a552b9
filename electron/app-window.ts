import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** How long the page that leads to the shop stays, in milliseconds. */
const PAGE_LIFE = 60_000;

/**
 * Opens the shop in a window of its own, in a browser with its own profile. The link goes through a file that only this
 * account can read: on the browser's command line every account of the machine could read its key.
 */
export function openAppWindow(browser: string, link: string, profile: string): ChildProcess {
  mkdirSync(profile, { recursive: true, mode: 0o700 });
  const page = join(profile, 'to-the-shop.html');
  rmSync(page, { force: true });
  writeFileSync(page, `<!doctype html><title>Crownwheel</title><meta http-equiv="refresh" content="0;url=${link}">`, {
    mode: 0o600,
    flag: 'wx',
  });
  setTimeout(() => rmSync(page, { force: true }), PAGE_LIFE).unref();
  return spawn(browser, windowArguments(page, profile), { stdio: 'ignore' });
}

export function windowArguments(page: string, profile: string, isRoot = process.getuid?.() === 0): string[] {
  const plain = [`--app=${pathToFileURL(page).href}`, `--user-data-dir=${profile}`];
  // Chromium's sandbox refuses to run for root.
  return [...plain, '--no-first-run', '--no-default-browser-check', ...(isRoot ? ['--no-sandbox'] : [])];
}
