import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** The newest change under a file or folder, in epoch milliseconds; 0 where there is nothing. */
function newest(path: string): number {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return 0;
  if (!found.isDirectory()) return found.mtimeMs;
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), found.mtimeMs);
}

/** Whether `built` is missing or older than anything that it was made from. An install without sources is never stale. */
export function isStale(built: string, sources: readonly string[]): boolean {
  if (!existsSync(built)) return true;
  const made = statSync(built).mtimeMs;
  return sources.some((source) => newest(source) > made);
}
