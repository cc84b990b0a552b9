import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

/** Where this account's programs keep their data. */
export function dataFolder(platform = process.platform, env: NodeJS.ProcessEnv = process.env): string {
  if (platform === 'win32') return join(env.APPDATA ?? join(homedir(), 'AppData', 'Roaming'), 'Crownwheel');
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Crownwheel');
  return join(env.XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'crownwheel');
}

/** The shop's folder: the flag, else CROWNWHEEL_SHOP, else `shop` in this account's data folder. */
export function shopFolder(flag: string | undefined, env: NodeJS.ProcessEnv = process.env): string {
  return resolve(flag ?? env.CROWNWHEEL_SHOP ?? join(dataFolder(process.platform, env), 'shop'));
}
