import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, test as base, type Page } from '@playwright/test';
import { type OpenDoor, openWithDoor } from '../../electron/open.ts';
import { now, ORDINARY, pageClock, setClock } from './clock.ts';
import { Garage } from './garage.ts';

/** Another built window than the tree's own, such as one built apart; absent: the usual folder. */
const root = process.env.CROWNWHEEL_WINDOW;

interface Fixtures {
  /** When the test begins, an instant; `real`: now. */
  readonly begins: string;
  /** The test's clock, set before anything else. */
  readonly clock: () => number;
  /** A window of its own, on another desk. */
  readonly anotherWindow: (options?: BrowserContextOptions) => Promise<Page>;
  /** An empty practice shop of its own for every test, with the host in front of it. */
  readonly shop: OpenDoor;
  /** The same shop, set up as an invented garage. */
  readonly garage: Garage;
}

async function withClock(browser: Browser, options: BrowserContextOptions) {
  const context = await browser.newContext(options);
  await context.addInitScript({ content: pageClock() });
  return context;
}

export const test = base.extend<Fixtures>({
  begins: [ORDINARY, { option: true }],
  clock: [
    async ({ begins }, use) => {
      setClock(begins);
      await use(now);
    },
    { auto: true },
  ],
  context: async ({ clock: _, context }, use) => {
    await context.addInitScript({ content: pageClock() });
    await use(context);
  },
  anotherWindow: async ({ browser }, use) => {
    const contexts: Awaited<ReturnType<typeof withClock>>[] = [];
    await use(async (options = {}) => {
      const context = await withClock(browser, options);
      contexts.push(context);
      return context.newPage();
    });
    for (const context of contexts) await context.close();
  },
  shop: async ({ clock }, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'crownwheel-e2e-'));
    const where = root === undefined ? {} : { root };
    const open = await openWithDoor({ folder, practice: true, port: 0, clock, ...where });
    try {
      await use(open);
    } finally {
      await open.close();
      rmSync(folder, { recursive: true });
    }
  },
  garage: async ({ shop }, use) => use(await Garage.setUp(shop)),
});

export { expect } from '@playwright/test';
