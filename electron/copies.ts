import { copyShop, listCopies, type ShopCopy } from '../db/file/backup.ts';
import { shopPaths } from '../db/file/folder.ts';
import { holdShop, type ShopLock } from '../db/file/lock.ts';
import { type CopyLook, lookAtCopy } from '../db/file/look-copy.ts';
import { restoreShop } from '../db/file/restore.ts';
import type { Numbers } from '../db/restored.ts';
import { migrations } from '../db/schema/migrations.ts';
import { openShop } from '../db/shop.ts';

const here = () => ({ at: Date.now(), zone: Intl.DateTimeFormat().resolvedOptions().timeZone });

/**
 * A checked copy of the shop, papers and photos with it when it goes elsewhere than into the shop's own backups. The
 * shop can be in use. Returns its place. Throws the errors of db/file.
 */
export async function backUp(folder: string, to: string | undefined): Promise<ShopCopy> {
  const target = to ?? shopPaths(folder).backups;
  return copyShop({ from: folder, to: target, withFiles: to !== undefined, ...here() });
}

/** The copies in the shop's own backups, newest first. */
export const copiesOf = (folder: string): readonly ShopCopy[] => listCopies(shopPaths(folder).backups);

/** What was brought back. */
export interface BroughtBack {
  /** Where the shop as it was stands now, or null where there was none. */
  readonly kept: string | null;
  /** How the invoice numbers stand now; null where the copy is of a shop that was not set up. */
  readonly numbers: Numbers | null;
  /** The fault because of which nothing was noted and no number lifted, although the copy is in place. */
  readonly unnoted?: unknown;
}

/**
 * Puts a copy in the shop's place; the shop as it was is kept beside it. `lastInvoice` is the last invoice number that
 * stands on paper, null where nobody knows one. Throws ShopHeld while the shop is open, and what restoring throws.
 */
export async function restore(folder: string, copy: string, lastInvoice: number | null): Promise<BroughtBack> {
  const lock = holdShop(folder, { at: Date.now() });
  try {
    return await restoreHeld(lock, copy, lastInvoice);
  } finally {
    lock.release();
  }
}

/** The same for a folder that this process holds already, with its shop closed. */
export async function restoreHeld(lock: ShopLock, copy: string, lastInvoice: number | null): Promise<BroughtBack> {
  const { aside } = await restoreShop({ lock, copy, knownVersion: migrations.length, ...here() });
  // From here on the copy is in place: what fails now is told beside that, never instead of it.
  try {
    const shop = await openShop({ folder: lock.paths.folder });
    try {
      return { kept: aside, numbers: await shop.restored(lastInvoice) };
    } finally {
      await shop.close();
    }
  } catch (unnoted) {
    return { kept: aside, numbers: null, unnoted };
  }
}

/** What a copy holds, without touching the shop in the folder. Throws as {@link lookAtCopy} does. */
export const lookInto = (folder: string, copy: string): Promise<CopyLook> =>
  lookAtCopy(copy, `${shopPaths(folder).database}.looked`, migrations.length);
