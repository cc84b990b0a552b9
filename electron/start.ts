import './node-version.ts';
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type Holder, ShopHeld } from '../db/file/errors.ts';
import { openAppWindow } from './app-window.ts';
import { findChromium, HOW_TO_GET_A_BROWSER, hasDisplay } from './chromium.ts';
import { findElectron } from './electron-binary.ts';
import { dataFolder, shopFolder } from './folder.ts';
import { isStale } from './fresh-build.ts';
import { type OpenDoor, openWithDoor } from './open.ts';
import { askForLink } from './passing-on.ts';
import { sayFault, sayHolder } from './words.ts';

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

/** Builds what is missing or older than its sources, in the same tree's vite. */
async function build(built: string, sources: readonly string[], ...runs: string[][]): Promise<void> {
  const present = sources.map((source) => join(root, source)).filter((source) => existsSync(source));
  if (present.length === 0 || !isStale(join(root, built), present)) return;
  const vite = join(createRequire(import.meta.url).resolve('vite/package.json'), '../bin/vite.js');
  for (const args of runs) {
    const code = await new Promise<number | null>((ended) =>
      spawn(process.execPath, [vite, 'build', '--logLevel', 'error', ...args], {
        cwd: root,
        stdio: ['ignore', 2, 2],
      }).once('close', ended),
    );
    if (code !== 0) throw new Error('The window could not be built; what is wrong stands above.');
  }
}

/** Shows the link in a window of its own, or says it. Resolves when that window is closed, or never. */
async function show(link: string, profile: string, wanted: boolean): Promise<void> {
  const browser = wanted && hasDisplay() ? findChromium() : null;
  if (browser === null) {
    if (wanted && hasDisplay()) say(HOW_TO_GET_A_BROWSER);
    say(`Open the shop in a browser on this machine, once: ${link}`);
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
async function handOver(holder: Holder | null, folder: string, profile: string, wanted: boolean): Promise<void> {
  say(sayHolder(holder, folder));
  if (holder === null || holder.address === null) return process.exit(1);
  const link = await askForLink(holder, 'window').catch(() => null);
  if (link === null) return process.exit(1);
  const browser = wanted && hasDisplay() ? findChromium() : null;
  if (browser === null) say(`Open it in a browser on this machine, once: ${link}`);
  else openAppWindow(browser, link, profile).unref();
}

async function start(): Promise<void> {
  if (flags.help) return void say(HELP);
  const profile = join(dataFolder(), 'window');
  const wanted = !flags['no-window'];
  await build('dist/renderer/index.html', ['renderer', 'core', 'vite.config.ts', 'package.json'], []);
  const electron = wanted && hasDisplay() ? findElectron() : null;
  if (electron !== null) {
    const main = ['--config', 'electron/vite.main.config.ts'];
    await build('dist/desktop/main.js', ['electron', 'core', 'db'], main, [...main, '--mode', 'preload']);
    const env = { ...process.env, CROWNWHEEL_SHOP: folder, ...(flags.practice ? { CROWNWHEEL_PRACTICE: '1' } : {}) };
    const desktop = spawn(electron, [join(root, 'dist/desktop/main.js')], { stdio: 'inherit', env });
    desktop.once('close', (code) => process.exit(code ?? 1));
    return;
  }
  let open: OpenDoor;
  try {
    const port = flags.port === undefined ? {} : { port: Number(flags.port) };
    open = await openWithDoor({ folder, ...port, ...(flags.practice ? { practice: true } : {}) });
  } catch (fault) {
    if (fault instanceof ShopHeld) return handOver(fault.holder, folder, profile, wanted);
    throw fault;
  }
  let closing: Promise<void> | undefined;
  const close = () => {
    closing ??= open.close().then(() => process.exit(0));
    return closing;
  };
  process.on('SIGINT', close).on('SIGTERM', close).on('SIGHUP', close);
  say(`The shop is in ${folder}. It is open at ${open.host.address} until this ends (Ctrl+C, or closing its window).`);
  await show(open.host.newLink('window'), profile, wanted);
  await noWindows(open);
  await close();
}

const flags = readFlags();
const folder = shopFolder(flags.shop);
start().catch((fault: unknown) => {
  process.stderr.write(`${sayFault(fault, folder)}\n`);
  process.exit(1);
});
