import { randomBytes } from 'node:crypto';
import { closeSync, existsSync, fsyncSync, openSync, rmSync, statSync, writeSync } from 'node:fs';
import { mapSqliteError } from './errors.ts';
import type { ShopPaths } from './folder.ts';

const BYTES = 1_048_576;

/** Lays the ballast file if it is missing or short. Throws ShopDiskFull, ShopReadOnly; then no ballast is left half-laid. */
export function layBallast(paths: ShopPaths): void {
  if (existsSync(paths.ballast) && statSync(paths.ballast).size === BYTES) return;
  try {
    const file = openSync(paths.ballast, 'w', 0o600);
    try {
      // Random, so that a file system that compresses really gives it its room.
      writeSync(file, randomBytes(BYTES));
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    if (statSync(paths.ballast).size !== BYTES)
      throw Object.assign(new Error('no room for ballast'), { code: 'ENOSPC' });
  } catch (error) {
    rmSync(paths.ballast, { force: true });
    throw mapSqliteError(error, paths.ballast);
  }
}

/**
 * Lets the ballast go when the disk is full: on a full disk even deleting rows fails, since the log has to grow for it.
 * Returns whether there was any, so whether it is worth trying once more.
 */
export function dropBallast(paths: ShopPaths): boolean {
  const there = existsSync(paths.ballast);
  rmSync(paths.ballast, { force: true });
  return there;
}
