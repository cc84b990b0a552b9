import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base } from '@playwright/test';
import { type OpenDoor, openWithDoor } from '../../electron/open.ts';
import { Garage } from './garage.ts';

/** Another built window than the tree's own, such as one built apart; absent: the usual folder. */
const root = process.env.CROWNWHEEL_WINDOW;

interface Fixtures {
  /** An empty practice shop of its own for every test, with the host in front of it. */
  readonly shop: OpenDoor;
  /** The same shop, set up as an invented garage. */
  readonly garage: Garage;
}

export const test = base.extend<Fixtures>({
  shop: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'crownwheel-e2e-'));
    const open = await openWithDoor({ folder, practice: true, port: 0, ...(root === undefined ? {} : { root }) });
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
