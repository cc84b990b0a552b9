import { copyShop } from '../db/file/backup.ts';
import { shopPaths } from '../db/file/folder.ts';
import { holdShop } from '../db/file/lock.ts';
import { restoreShop } from '../db/file/restore.ts';
import { migrations } from '../db/schema/migrations.ts';

const here = () => ({ at: Date.now(), zone: Intl.DateTimeFormat().resolvedOptions().timeZone });

/**
 * A checked copy of the shop, papers and photos with it when it goes elsewhere than into the shop's own backups. The
 * shop can be in use. Returns its place. Throws the errors of db/file.
 */
export async function backUp(folder: string, to: string | undefined): Promise<string> {
  const target = to ?? shopPaths(folder).backups;
  return (await copyShop({ from: folder, to: target, withFiles: to !== undefined, ...here() })).path;
}

/** Puts a copy in the shop's place. Returns where the shop as it was stands now. Throws ShopHeld while it is open. */
export async function restore(folder: string, copy: string): Promise<string | null> {
  const lock = holdShop(folder, { at: Date.now() });
  try {
    return (await restoreShop({ lock, copy, knownVersion: migrations.length, ...here() })).aside;
  } finally {
    lock.release();
  }
}
