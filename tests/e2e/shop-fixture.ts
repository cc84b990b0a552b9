import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base } from '@playwright/test';
import { type OpenDoor, openWithDoor } from '../../electron/open.ts';

/** A practice shop of its own for every test, with the host in front of it. */
export const test = base.extend<{ shop: OpenDoor }>({
  shop: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'crownwheel-e2e-'));
    const open = await openWithDoor({ folder, practice: true, port: 0 });
    try {
      await use(open);
    } finally {
      await open.close();
      rmSync(folder, { recursive: true });
    }
  },
});

export { expect } from '@playwright/test';
