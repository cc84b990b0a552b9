import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import Database from 'better-sqlite3';
import { codeOf, type Holder, mapSqliteError, ShopHeld, ShopReadOnly } from './errors.ts';
import { type ShopPaths, shopPaths } from './folder.ts';

export interface HoldOptions {
  /** Epoch ms. */
  readonly at: number;
  /** Take the shop though another machine's name stands on it (its process cannot be seen from here). */
  readonly takeOver?: boolean;
}

/**
 * Takes the shop's folder for this process. What decides is a lock of the operating system on `shop.lock`, which ends with
 * its process however that ends; the holder's file only says who. One left behind by a dead process is taken over.
 * Throws ShopHeld, ShopReadOnly, ShopDiskFull.
 */
export function holdShop(folder: string, options: HoldOptions): ShopLock {
  const paths = shopPaths(folder);
  const system = lockFile(paths);
  try {
    const left = readHolder(folder);
    if (left && left.host !== hostname() && !options.takeOver) throw new ShopHeld(left, false);
    const lock = new ShopLock(paths, system, options.at);
    lock.announce(null, null);
    return lock;
  } catch (error) {
    system.close();
    throw mapSqliteError(error, paths.holder);
  }
}

/** A lock of the operating system, through SQLite because Node has none of its own. Nothing is ever written to it. */
function lockFile(paths: ShopPaths): Database.Database {
  let system: Database.Database | undefined;
  try {
    system = new Database(paths.lock, { timeout: 0 });
    system.pragma('journal_mode = MEMORY');
    system.exec('BEGIN EXCLUSIVE');
    return system;
  } catch (error) {
    system?.close();
    // The folder was there a moment ago: where nothing can be made in it, it is read-only.
    if (codeOf(error) === 'SQLITE_CANTOPEN') throw new ShopReadOnly(paths.folder, error);
    if (codeOf(error) !== 'SQLITE_BUSY') throw mapSqliteError(error, paths.lock);
    const holder = readHolder(paths.folder);
    throw new ShopHeld(holder && isDead(holder) ? null : holder, true);
  }
}

/** Whether a holder on this machine is known to be gone: then its file is of a start before the present one. */
function isDead(holder: Holder): boolean {
  if (holder.host !== hostname()) return false;
  try {
    process.kill(holder.pid, 0);
    return false;
  } catch (error) {
    return codeOf(error) === 'ESRCH';
  }
}

/** The shop is held as long as this is not released. */
export class ShopLock {
  readonly paths: ShopPaths;
  readonly #system: Database.Database;
  readonly #since: number;

  constructor(paths: ShopPaths, system: Database.Database, since: number) {
    this.paths = paths;
    this.#system = system;
    this.#since = since;
  }

  /** Whether the lock is still there. */
  get held(): boolean {
    return this.#system.open;
  }

  /** Writes down at which door this process can be reached, and the key to show there. */
  announce(address: string | null, key: string | null): void {
    const holder: Holder = { pid: process.pid, host: hostname(), since: this.#since, address, key };
    const fresh = `${this.paths.holder}.new`;
    rmSync(fresh, { force: true });
    writeFileSync(fresh, `${JSON.stringify(holder)}\n`, { mode: 0o600, flag: 'wx' });
    renameSync(fresh, this.paths.holder);
  }

  /** Lets go. Twice is no harm. */
  release(): void {
    if (!this.#system.open) return;
    rmSync(this.paths.holder, { force: true });
    this.#system.close();
  }
}

/** Who wrote down that it has the shop; null when nobody did or the file cannot be read. It may be a dead process. */
export function readHolder(folder: string): Holder | null {
  try {
    const read: unknown = JSON.parse(readFileSync(shopPaths(folder).holder, 'utf8'));
    return isHolder(read) ? read : null;
  } catch {
    return null;
  }
}

function isHolder(read: unknown): read is Holder {
  if (typeof read !== 'object' || read === null) return false;
  const { pid, host, since, address, key } = read as Record<string, unknown>;
  const textOrNull = (value: unknown) => value === null || typeof value === 'string';
  return (
    Number.isSafeInteger(pid) &&
    typeof host === 'string' &&
    Number.isSafeInteger(since) &&
    textOrNull(address) &&
    textOrNull(key)
  );
}
