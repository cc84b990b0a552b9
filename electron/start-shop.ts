import { spawn } from 'node:child_process';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type Holder, ShopFileError, ShopHeld } from '../db/file/errors.ts';
import { openAppWindow } from './app-window.ts';
import { buildIfStale } from './build-window.ts';
import { findChromium, HOW_TO_GET_A_BROWSER, hasDisplay } from './chromium.ts';
import { copiesOf, restore } from './copies.ts';
import { findElectron } from './electron-binary.ts';
import { dataFolder, shopFolder } from './folder.ts';
import { type OpenDoor, openWithDoor } from './open.ts';
import { askForLink } from './passing-on.ts';
import { openTrouble } from './trouble.ts';
import { sayBroughtBack, sayCopies, sayFault, sayHolder, sayWarning } from './words.ts';

const HELP = `Crownwheel, the desk and the bench of a garage.

  npm start                        open the shop
  npm start -- --shop FOLDER       the shop in this folder; else CROWNWHEEL_SHOP, else the usual place
  npm start -- --practice          when the shop is made by this start: a practice shop
  npm start -- --port NUMBER       the browser host's port; else any free one
  npm start -- --no-window         open no window, only say where the shop is
`;

/** How long a window may be away, while it is loaded anew, before the shop closes after it, in milliseconds. */
const GRACE = 3_000;

const root = resolve(import.meta.dirname, '..');
const say = (sentence: string) => process.stdout.write(`${sentence}\n`);

const FLAGS = {
  shop: { type: 'string' },
  practice: { type: 'boolean' },
  port: { type: 'string' },
  'no-window': { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

function readFlags() {
  try {
    return parseArgs({ options: FLAGS }).values;
  } catch (fault) {
    process.stderr.write(`${fault instanceof Error ? fault.message : String(fault)}\n${HELP}`);
    process.exit(2);
  }
}

/** Shows the link in a window of its own, or says it. Resolves when that window is closed, or never. */
async function show(link: string, words: string): Promise<void> {
  const browser = wanted && hasDisplay() ? findChromium() : null;
  if (browser === null) {
    if (wanted && hasDisplay()) say(HOW_TO_GET_A_BROWSER);
    say(`${words}: ${link}`);
    return new Promise(() => {});
  }
  const window = openAppWindow(browser, link, profile);
  await new Promise((closed, failed) => window.once('close', closed).once('error', failed));
}

/** Waits until no window has been open for a moment: a browser that was running already takes the window over. */
async function noWindows(open: OpenDoor): Promise<void> {
  for (let quiet = 0; quiet < GRACE; quiet += 500) {
    await new Promise((later) => setTimeout(later, 500));
    if (open.host.windows() > 0) quiet = 0;
  }
}

/** A second start: the shop stays where it is, and its window is opened once more. */
async function handOver(holder: Holder | null): Promise<void> {
  say(sayHolder(holder, folder));
  if (holder === null || holder.address === null) return process.exit(1);
  const link = await askForLink(holder, 'window').catch(() => null);
  if (link === null) return process.exit(1);
  const browser = wanted && hasDisplay() ? findChromium() : null;
  if (browser === null) say(`Open it in a browser on this machine, once: ${link}`);
  else openAppWindow(browser, link, profile).unref();
}

/**
 * A shop that cannot be opened: a page says why and offers its copies. Resolves with the shop once one is back; ends the
 * process when the page is closed before that.
 */
async function mend(fault: ShopFileError): Promise<{ readonly open: OpenDoor; readonly window: Promise<unknown> }> {
  const why = sayFault(fault, folder);
  const offered = fault.code === 'damaged' || fault.code === 'missing';
  const copies = () => (offered ? copiesOf(folder) : []);
  say(offered ? `${why}\n${sayCopies(copies())}` : why);
  let open: OpenDoor | undefined;
  const trouble = await openTrouble({
    why,
    copies,
    say: (wrong) => sayFault(wrong, folder),
    async bringBack(copy, lastInvoice) {
      const back = await restore(folder, copy.path, lastInvoice);
      open = await openWithDoor(settings());
      return { said: sayBroughtBack(back, folder), link: open.host.newLink('window') };
    },
  });
  const window = show(trouble.link, 'Its page in a browser on this machine, once');
  await Promise.race([window, trouble.mended]);
  if (open === undefined) process.exit(1);
  // Its last page leads into the shop: it stays for whoever is still reading it.
  setTimeout(() => void trouble.close(), 60_000).unref();
  return { open, window };
}

const settings = () => ({
  folder,
  root: join(dist, 'renderer'),
  ...(flags.port === undefined ? {} : { port: Number(flags.port) }),
  ...(flags.practice ? { practice: true } : {}),
});

/** Builds the desktop's side where Electron is there, and runs it; returns false where it is not. */
async function startDesktop(): Promise<boolean> {
  const electron = wanted && hasDisplay() ? findElectron() : null;
  if (electron === null) return false;
  const out = join(dist, 'desktop');
  const main = ['--config', 'electron/vite.main.config.ts', '--outDir', out];
  const runs = [main, [...main, '--mode', 'preload']];
  const sources = ['electron', 'core', 'db'];
  await buildIfStale(root, { name: 'the desktop window', file: join(out, 'main.js'), sources, runs });
  const env = { ...process.env, CROWNWHEEL_SHOP: folder, ...(flags.practice ? { CROWNWHEEL_PRACTICE: '1' } : {}) };
  const desktop = spawn(electron, [join(out, 'main.js')], { stdio: 'inherit', env });
  desktop.once('close', (code) => process.exit(code ?? 1));
  return true;
}

async function start(): Promise<void> {
  if (flags.help) return void say(HELP);
  await buildIfStale(root, {
    name: 'the window',
    file: join(dist, 'renderer/index.html'),
    sources: ['renderer', 'core', 'vite.config.ts', 'package.json'],
    runs: [['--outDir', join(dist, 'renderer'), '--emptyOutDir']],
  });
  if (await startDesktop()) return;
  let open: OpenDoor;
  let window: Promise<unknown> | undefined;
  try {
    open = await openWithDoor(settings());
  } catch (fault) {
    if (fault instanceof ShopHeld) return handOver(fault.holder);
    if (!(fault instanceof ShopFileError)) throw fault;
    ({ open, window } = await mend(fault));
  }
  let closing: Promise<void> | undefined;
  const close = () => {
    closing ??= open.close().then(() => process.exit(0));
    return closing;
  };
  process.on('SIGINT', close).on('SIGTERM', close).on('SIGHUP', close);
  say(`The shop is in ${folder}. It is open at ${open.host.address} until this ends (Ctrl+C, or closing its window).`);
  for (const warning of open.shop.warnings) say(sayWarning(warning));
  window ??= show(open.host.newLink('window'), 'Open the shop in a browser on this machine, once');
  await window;
  await noWindows(open);
  await close();
}

const flags = readFlags();
const folder = shopFolder(flags.shop);
// Where the built window is kept; elsewhere for whoever keeps several versions.
const dist = resolve(process.env.CROWNWHEEL_DIST ?? join(root, 'dist'));
const profile = join(dataFolder(), 'window');
const wanted = !flags['no-window'];
start().catch((fault: unknown) => {
  process.stderr.write(`${sayFault(fault, folder)}\n`);
  process.exit(1);
});
