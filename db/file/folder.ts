import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import { mapSqliteError } from './errors.ts';

/** Where everything of one shop stands. One shop is one folder. */
export interface ShopPaths {
  readonly folder: string;
  /** The shop's one file. */
  readonly database: string;
  /** Issued PDFs. */
  readonly papers: string;
  /** Named by the hash of their content. */
  readonly photos: string;
  readonly backups: string;
  /** Locked by the operating system while a process has the shop. */
  readonly lock: string;
  /** Who has the shop, and at which door. */
  readonly holder: string;
  /** The trail's last number and hash, outside the database. */
  readonly note: string;
  readonly ballast: string;
}

/** The layout of a shop's folder; nothing is made or read. */
export function shopPaths(folder: string): ShopPaths {
  const at = resolve(folder);
  return {
    folder: at,
    database: join(at, 'shop.sqlite'),
    papers: join(at, 'papers'),
    photos: join(at, 'photos'),
    backups: join(at, 'backups'),
    lock: join(at, 'shop.lock'),
    holder: join(at, 'held-by.json'),
    note: join(at, 'trail-note.json'),
    ballast: join(at, 'ballast'),
  };
}

/**
 * Makes what is missing of the folder, the database aside; what it makes, other accounts of the machine cannot read.
 * Throws ShopReadOnly or ShopDiskFull.
 */
export function createShopFolder(folder: string): ShopPaths {
  const paths = shopPaths(folder);
  try {
    for (const each of [paths.folder, paths.papers, paths.photos, paths.backups])
      mkdirSync(each, { recursive: true, mode: 0o700 });
  } catch (error) {
    throw mapSqliteError(error, folder);
  }
  return paths;
}

/**
 * Whether this folder has never held a shop: no database, and nothing that one leaves behind. Where only the database is
 * missing or empty it was lost, and making a new one in its place would hide that.
 */
export function isNewShop(paths: ShopPaths): boolean {
  if (existsSync(paths.database) && statSync(paths.database).size > 0) return false;
  const left = [paths.note, `${paths.database}-wal`, paths.papers, paths.photos, paths.backups];
  return left.every((each) => !existsSync(each) || (statSync(each).isDirectory() && readdirSync(each).length === 0));
}

/**
 * Writes a small file into each of the shop's folders, and takes it away again: permissions alone do not tell (a disk
 * mounted read-only, a locked stick). The database itself is tried by openConnection. Throws ShopReadOnly, ShopDiskFull.
 */
export function checkWritable(paths: ShopPaths): void {
  for (const folder of [paths.folder, paths.papers, paths.photos, paths.backups]) {
    if (!existsSync(folder)) continue;
    const probe = join(folder, `.write-test-${process.pid}`);
    try {
      const file = openSync(probe, 'w', 0o600);
      try {
        writeSync(file, 'this file can be deleted\n');
        fsyncSync(file);
      } finally {
        closeSync(file);
        rmSync(probe, { force: true });
      }
    } catch (error) {
      throw mapSqliteError(error, folder);
    }
  }
}

/** Makes a rename or a new name in a folder outlast a power cut. Windows cannot do it and does not need it. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
