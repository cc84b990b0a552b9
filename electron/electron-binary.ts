import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/**
 * Electron's binary if it is there, or null. Only files are looked at: importing the package outside Electron would
 * start its download.
 */
export function findElectron(env: NodeJS.ProcessEnv = process.env, from = import.meta.url): string | null {
  let folder: string;
  try {
    folder = dirname(createRequire(from).resolve('electron/package.json'));
  } catch {
    return null;
  }
  const note = join(folder, 'path.txt');
  const inside = existsSync(note) ? readFileSync(note, 'utf8').trim() : 'electron';
  const binary = join(env.ELECTRON_OVERRIDE_DIST_PATH ?? join(folder, 'dist'), inside);
  return existsSync(binary) ? binary : null;
}
