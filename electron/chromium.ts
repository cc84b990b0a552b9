import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
];

const MAC = [
  'Google Chrome.app/Contents/MacOS/Google Chrome',
  'Chromium.app/Contents/MacOS/Chromium',
  'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];

const WINDOWS = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

/** How to come by a browser, in one sentence. */
export const HOW_TO_GET_A_BROWSER =
  'No Chromium, Chrome or Edge was found: install one (on Debian "apt-get install chromium") or set CROWNWHEEL_BROWSER to its file.';

/** The file of a Chromium, Chrome or Edge on this machine, or null. CROWNWHEEL_BROWSER goes before all. */
export function findChromium(env: NodeJS.ProcessEnv = process.env, platform = process.platform): string | null {
  return (
    [env.CROWNWHEEL_BROWSER ?? '', ...places(env, platform)].find((file) => file !== '' && existsSync(file)) ?? null
  );
}

function places(env: NodeJS.ProcessEnv, platform: NodeJS.Platform): string[] {
  if (platform === 'darwin') return MAC.map((file) => join('/Applications', file));
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter((root) => root !== undefined);
    return WINDOWS.flatMap((file) => roots.map((root) => join(root, file)));
  }
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** Whether a window can be shown at all. */
export function hasDisplay(env: NodeJS.ProcessEnv = process.env, platform = process.platform): boolean {
  return platform !== 'linux' || Boolean(env.DISPLAY) || Boolean(env.WAYLAND_DISPLAY);
}
