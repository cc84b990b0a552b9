import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { copyName, readCopyName } from './copy-name.ts';
import { mapSqliteError } from './errors.ts';
import { hashFile } from './file-hash.ts';
import { type ShopPaths, shopPaths, syncFolder } from './folder.ts';
import { type CopyHooks, runCopy } from './run-copy.ts';

/** A copy of a shop that was opened again and checked after it was made. */
export interface ShopCopy {
  /** The database file of the copy. */
  readonly path: string;
  /** Name without ending: `shop 2026-11-20 16.42 trail 1204`. */
  readonly name: string;
  /** The trail's last number in it; null where nothing had been done yet. */
  readonly trail: number | null;
  readonly bytes: number;
  readonly sha256: string;
}

export interface CopyOptions extends CopyHooks {
  /** The shop's folder; it can be in use. */
  readonly from: string;
  /** The folder that gets the copy, made if need be; usually the shop's `backups/`, or a stick. */
  readonly to: string;
  /** Epoch ms and IANA zone: they name the copy. */
  readonly at: number;
  readonly zone: string;
  /** Also papers and photos: the copy is then a folder that is a whole shop. */
  readonly withFiles?: boolean;
  /** 'quick' unless told; 'whole' also compares indexes with tables. */
  readonly depth?: 'quick' | 'whole';
}

const ENDING = '.sqlite';
const UNFINISHED = '.unfinished';

/**
 * Copies a shop while it is in use: one step of SQLite's own backup in a thread, then the copy is opened, checked and
 * hashed, and only then gets its name. Throws ShopMissing, ShopDamaged, ShopDiskFull, ShopReadOnly; then no copy is left.
 */
export async function copyShop(options: CopyOptions): Promise<ShopCopy> {
  const shop = shopPaths(options.from);
  try {
    mkdirSync(options.to, { recursive: true });
    return await (options.withFiles ? copyAsFolder(shop, options) : copyAsFile(shop, options));
  } catch (error) {
    throw mapSqliteError(error, options.to);
  }
}

async function copyAsFile(shop: ShopPaths, options: CopyOptions): Promise<ShopCopy> {
  const to = join(options.to, `${copyName(options.at, options.zone)}${ENDING}${UNFINISHED}`);
  rmSync(to, { force: true });
  const task = { from: shop.database, to, depth: options.depth ?? 'quick', folders: [] } as const;
  const { sha256, bytes, trail } = await runCopy(task, options);
  const name = freeName(options, trail?.n ?? null);
  const path = join(options.to, `${name}${ENDING}`);
  renameSync(to, path);
  writeHash(path, sha256);
  syncFolder(options.to);
  return { path, name, trail: trail?.n ?? null, bytes, sha256 };
}

async function copyAsFolder(shop: ShopPaths, options: CopyOptions): Promise<ShopCopy> {
  const fresh = shopPaths(join(options.to, `${copyName(options.at, options.zone)}${UNFINISHED}`));
  rmSync(fresh.folder, { recursive: true, force: true });
  mkdirSync(fresh.folder);
  try {
    const folders = [
      { from: shop.papers, to: fresh.papers },
      { from: shop.photos, to: fresh.photos },
    ].filter((each) => existsSync(each.from));
    const task = { from: shop.database, to: fresh.database, depth: options.depth ?? 'quick', folders };
    const { sha256, bytes, trail } = await runCopy(task, options);
    writeHash(fresh.database, sha256);
    syncFolder(fresh.folder);
    const name = freeName(options, trail?.n ?? null);
    const folder = join(options.to, name);
    renameSync(fresh.folder, folder);
    syncFolder(options.to);
    return { path: shopPaths(folder).database, name, trail: trail?.n ?? null, bytes, sha256 };
  } catch (error) {
    rmSync(fresh.folder, { recursive: true, force: true });
    throw error;
  }
}

/** The copy's name; with ` (2)` and so on behind it if that name is taken already. */
function freeName(options: CopyOptions, trail: number | null): string {
  const name = copyName(options.at, options.zone, trail);
  const taken = (each: string) =>
    existsSync(join(options.to, each)) || existsSync(join(options.to, `${each}${ENDING}`));
  for (let n = 1; ; n += 1) {
    const each = n === 1 ? name : `${name} (${n})`;
    if (!taken(each)) return each;
  }
}

/** Where a copy's hash is written down. */
export const hashPath = (path: string): string => `${path}.sha256`;

// The line that sha256sum writes and checks.
const writeHash = (path: string, sha256: string): void =>
  writeFileSync(hashPath(path), `${sha256}  ${basename(path)}\n`, { flush: true });

/** The hash written down beside a copy when it was made; null if there is none. */
export function writtenHash(path: string): string | null {
  if (!existsSync(hashPath(path))) return null;
  return /^([0-9a-f]{64}) /.exec(readFileSync(hashPath(path), 'utf8'))?.[1] ?? null;
}

/** Whether a copy is byte for byte what it was when made; null if no hash was written down. */
export function copyUnchanged(path: string): boolean | null {
  const written = writtenHash(path);
  return written === null ? null : written === hashFile(path);
}

/** The copies in a folder, newest first; files and whole folders. Only what was finished, checked and hashed counts. */
export function listCopies(folder: string): readonly ShopCopy[] {
  if (!existsSync(folder)) return [];
  const copies: ShopCopy[] = [];
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const name = entry.isDirectory() ? entry.name : basename(entry.name, ENDING);
    const path = join(folder, entry.isDirectory() ? join(entry.name, 'shop.sqlite') : `${name}${ENDING}`);
    const named = readCopyName(name);
    if (!named || !existsSync(path)) continue;
    const sha256 = writtenHash(path);
    if (sha256) copies.push({ path, name, trail: named.trail, bytes: statSync(path).size, sha256 });
  }
  return copies.sort((a, b) => compareNames(b.name, a.name));
}

function compareNames(a: string, b: string): number {
  const [x, y] = [readCopyName(a), readCopyName(b)];
  const [before, after] = [`${x?.day} ${x?.minute}`, `${y?.day} ${y?.minute}`];
  if (before !== after) return before < after ? -1 : 1;
  return (x?.trail ?? 0) - (y?.trail ?? 0) || (x?.nth ?? 0) - (y?.nth ?? 0);
}
