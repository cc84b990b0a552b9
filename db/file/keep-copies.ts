import { existsSync, statSync } from 'node:fs';
import { copyShop, listCopies, type ShopCopy } from './backup.ts';
import { openConnection } from './connection.ts';
import { mapSqliteError } from './errors.ts';
import { shopPaths } from './folder.ts';
import type { TrailNote } from './note.ts';
import { thinCopies } from './thin-copies.ts';
import { trailEnd } from './trail-end.ts';

export interface KeepOptions {
  /** The shop's folder; it can be in use. */
  readonly folder: string;
  /** Epoch ms. */
  readonly at: number;
  /** IANA zone of the shop. */
  readonly zone: string;
  /** None is made while the newest is younger than this, in milliseconds; 0 unless told. */
  readonly notWithin?: number;
}

/**
 * Makes a checked copy in the shop's own `backups/` when something was done since the last one, and lets those go that need
 * not stay. Returns the copy, or null where there was nothing to copy. Throws as copyShop does.
 */
export async function keepCopy(options: KeepOptions): Promise<ShopCopy | null> {
  const paths = shopPaths(options.folder);
  if (!existsSync(paths.database)) return null;
  const end = endOf(paths.database);
  if (end === null) return null;
  const copies = listCopies(paths.backups);
  if (copies.some((copy) => holds(copy, end))) return null;
  const newest = copies.reduce((latest, copy) => Math.max(latest, statSync(copy.path).mtimeMs), 0);
  if (options.notWithin !== undefined && Math.abs(options.at - newest) < options.notWithin) return null;
  const copy = await copyShop({ from: paths.folder, to: paths.backups, at: options.at, zone: options.zone });
  thinCopies(paths.backups);
  return copy;
}

/** Whether a copy ends where the shop ends. After a copy was brought back the same number can stand for something else. */
function holds(copy: ShopCopy, end: TrailNote): boolean {
  if (copy.trail !== end.n) return false;
  try {
    return endOf(copy.path)?.hash === end.hash;
  } catch {
    // A copy that cannot be read is none.
    return false;
  }
}

function endOf(path: string): TrailNote | null {
  const raw = openConnection(path, { readonly: true });
  try {
    return trailEnd(raw);
  } catch (error) {
    throw mapSqliteError(error, path);
  } finally {
    raw.close();
  }
}
