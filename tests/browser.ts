import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { findChromium } from '../electron/chromium.ts';

/** Debian's package, and the name of its program: the same engine without the browser round it. */
export const SHELL = 'chromium-headless-shell';

/**
 * The browser that end-to-end tests run in, or null: the headless shell, in which a window opens in a third of the time,
 * else any that `findChromium` finds. CROWNWHEEL_BROWSER goes before all.
 */
export function findTestBrowser(env: NodeJS.ProcessEnv = process.env): string | null {
  const shells = (env.PATH ?? '').split(delimiter).map((folder) => join(folder, SHELL));
  return [env.CROWNWHEEL_BROWSER ?? '', ...shells].find((file) => file !== '' && existsSync(file)) ?? findChromium(env);
}
