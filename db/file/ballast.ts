import { randomBytes } from 'node:crypto';
import { closeSync, existsSync, fsyncSync, openSync, rmSync, statfsSync, statSync, writeSync } from 'node:fs';
import { mapSqliteError } from './errors.ts';
import type { ShopPaths } from './folder.ts';

const BYTES = 1_048_576;
// Laid again only where much more is free: on a disk that is all but full it would take the room that was just made.
const ROOM = 16 * BYTES;

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

/** Lays the ballast again once there is room in plenty; whether there is any now. Throws nothing. */
export function renewBallast(paths: ShopPaths): boolean {
  try {
    if (existsSync(paths.ballast)) return true;
    const disk = statfsSync(paths.folder);
    if (disk.bavail * disk.bsize < ROOM) return false;
    layBallast(paths);
    return true;
  } catch {
    // It is tried again later; without ballast the shop goes on as well as it can.
    return false;
  }
}
