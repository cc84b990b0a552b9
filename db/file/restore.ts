import { constants, copyFileSync, existsSync, linkSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { writtenHash } from './backup.ts';
import { closeConnection, openConnection } from './connection.ts';
import { localMinute } from './copy-name.ts';
import { mapSqliteError, ShopDamaged, ShopMissing, ShopNewer, ShopStillOpen } from './errors.ts';
import { hashFile } from './file-hash.ts';
import { type ShopPaths, shopPaths, syncFolder } from './folder.ts';
import type { ShopLock } from './lock.ts';
import { type CopyHooks, runCopy } from './run-copy.ts';

export interface RestoreOptions extends CopyHooks {
  /** The held shop; nothing in this process may have its database open. */
  readonly lock: ShopLock;
  /** A copy: its file, or a folder that holds a `shop.sqlite`. */
  readonly copy: string;
  /** The last schema version that this program knows; a copy beyond it is refused. */
  readonly knownVersion: number;
  /** Epoch ms and IANA zone: they name what is put aside. */
  readonly at: number;
  readonly zone: string;
}

export interface Restored {
  /** Where the former database stands now, or null if there was none. */
  readonly aside: string | null;
  readonly schemaVersion: number;
  /** Papers and photos that came back with a folder copy; those already there stay as they are. */
  readonly files: number;
}

const sidecars = (path: string): readonly string[] => [`${path}-wal`, `${path}-shm`];

/**
 * Puts a copy in the place of the shop's database. The copy is checked whole before anything is touched; the present file
 * gets another name with its log beside it, and is never deleted. Throws ShopMissing, ShopDamaged, ShopNewer,
 * ShopStillOpen, ShopDiskFull, ShopReadOnly; after each of them the shop is as it was.
 */
export async function restoreShop(options: RestoreOptions): Promise<Restored> {
  const { lock } = options;
  if (!lock.held) throw new Error('a shop is restored only while it is held');
  const shop = lock.paths;
  const copy = soundCopy(options.copy);
  const incoming = `${shop.database}.incoming`;
  rmSync(incoming, { force: true });
  // Through SQLite and not as bytes: a copy made by hand may have a log beside it that belongs to it.
  const task = { from: copy, to: incoming, depth: 'whole', folders: filesOf(options.copy, shop) } as const;
  const { schemaVersion, files } = await runCopy(task, options);
  try {
    if (schemaVersion > options.knownVersion) throw new ShopNewer(schemaVersion, options.knownVersion);
    if (schemaVersion === 0) throw new ShopDamaged('not-a-shop', `${copy}: an empty database`);
    const aside = putAside(shop, localMinute(options.at, options.zone));
    renameSync(incoming, shop.database);
    syncFolder(shop.folder);
    return { aside, schemaVersion, files };
  } catch (error) {
    rmSync(incoming, { force: true });
    throw mapSqliteError(error, shop.folder);
  }
}

/** The database file of a copy, unchanged since it was made as far as its hash is there. Throws ShopMissing, ShopDamaged. */
export function soundCopy(given: string): string {
  const copy = copyFile(given);
  const written = writtenHash(copy);
  if (written !== null && written !== hashFile(copy))
    throw new ShopDamaged('changed', `${copy}: not what it was when it was made (its SHA-256 differs)`);
  return copy;
}

function copyFile(copy: string): string {
  if (!existsSync(copy)) throw new ShopMissing(copy);
  const file = statSync(copy).isDirectory() ? shopPaths(copy).database : copy;
  if (!existsSync(file)) throw new ShopMissing(file);
  return file;
}

function filesOf(copy: string, shop: ShopPaths): readonly { readonly from: string; readonly to: string }[] {
  if (!statSync(copy).isDirectory()) return [];
  const from = shopPaths(copy);
  return [
    { from: from.papers, to: shop.papers },
    { from: from.photos, to: shop.photos },
  ].filter((each) => existsSync(each.from));
}

/**
 * Gives the present file a second name before its own is taken over, so that at no moment there is none. A log that stays
 * behind would be played into the restored file: it goes along under the new name, and only then from its old place.
 */
function putAside(shop: ShopPaths, minute: string): string | null {
  if (!existsSync(shop.database)) {
    for (const left of sidecars(shop.database))
      if (existsSync(left)) renameSync(left, freeName(`${left} ${minute}`, ''));
    return null;
  }
  foldIn(shop.database);
  const aside = freeName(join(dirname(shop.database), `shop put aside ${minute}`), '.sqlite');
  secondName(shop.database, aside);
  if (existsSync(`${shop.database}-wal`)) secondName(`${shop.database}-wal`, `${aside}-wal`);
  if (existsSync(shop.note)) secondName(shop.note, `${aside}.note.json`);
  syncFolder(shop.folder);
  for (const left of [...sidecars(shop.database), shop.note]) rmSync(left, { force: true });
  return aside;
}

/** Folds a sound file's log in. If the log is still there after that, somebody else has the file open. */
function foldIn(database: string): void {
  try {
    closeConnection(openConnection(database));
  } catch (error) {
    // Damaged is why one restores: then the log goes along as it is.
    if (error instanceof ShopDamaged) return;
    throw error;
  }
  if (sidecars(database).some((each) => existsSync(each))) throw new ShopStillOpen(database);
}

function secondName(path: string, second: string): void {
  try {
    linkSync(path, second);
  } catch {
    // A stick's file system knows no second names.
    copyFileSync(path, second, constants.COPYFILE_EXCL);
  }
}

function freeName(stem: string, ending: string): string {
  for (let n = 1; ; n += 1) {
    const each = n === 1 ? `${stem}${ending}` : `${stem} (${n})${ending}`;
    if (!existsSync(each)) return each;
  }
}
