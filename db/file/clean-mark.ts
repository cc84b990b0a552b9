import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ShopPaths } from './folder.ts';

// Beside the database, with what the file system said of it after it was closed in order.
const markOf = (paths: ShopPaths): string => join(paths.folder, 'closed-whole.json');

/** What tells a file from itself after somebody wrote to it: its place on the disk, its size, and when it was written. */
function looks(paths: ShopPaths): string | null {
  const found = statSync(paths.database, { bigint: true, throwIfNoEntry: false });
  if (found === undefined || statSync(`${paths.database}-wal`, { throwIfNoEntry: false }) !== undefined) return null;
  return `${JSON.stringify({ inode: String(found.ino), bytes: String(found.size), written: String(found.mtimeNs) })}\n`;
}

/** After the database was closed in order. A mark that cannot be written only costs the next start its time. */
export function markClosed(paths: ShopPaths): void {
  try {
    const seen = looks(paths);
    if (seen !== null) writeFileSync(markOf(paths), seen, { mode: 0o600 });
  } catch {
    // A full disk.
  }
}

/**
 * Whether the database is the file that was closed in order last time, not written to since: then a start need not walk
 * all of it, which takes seconds on a shop of many years. The mark goes with being read: a start that does not come to its
 * end leaves none. (A bit that falls over by itself is found by the next copy, which is checked page by page.)
 */
export function takeClosedMark(paths: ShopPaths): boolean {
  try {
    const marked = readFileSync(markOf(paths), 'utf8');
    rmSync(markOf(paths));
    return marked === looks(paths);
  } catch {
    return false;
  }
}
