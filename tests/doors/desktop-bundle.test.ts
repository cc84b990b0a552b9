import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { listCopies } from '../../db/file/backup.ts';
import { practiceShop } from '../db/practice-shop.ts';

// The bundle as Electron gets it, run by Node with a stub in Electron's place: it shows that main.js stands by itself and
// finds what lies beside it (the thread that copies, the window's files), not what Electron does with it.

const repository = resolve(import.meta.dirname, '../..');
let tree: string;

beforeAll(async () => {
  tree = mkdtempSync(join(tmpdir(), 'crownwheel-bundle-'));
  for (const mode of ['main', 'preload']) {
    await build({
      configFile: join(repository, 'electron/vite.main.config.ts'),
      mode,
      logLevel: 'error',
      build: { outDir: join(tree, 'dist/desktop') },
    });
  }
  mkdirSync(join(tree, 'dist/renderer'), { recursive: true });
  writeFileSync(join(tree, 'dist/renderer/index.html'), 'the window');
  mkdirSync(join(tree, 'node_modules/electron'), { recursive: true });
  symlinkSync(join(repository, 'node_modules/better-sqlite3'), join(tree, 'node_modules/better-sqlite3'), 'junction');
  symlinkSync(
    join(repository, 'node_modules/@expo-google-fonts'),
    join(tree, 'node_modules/@expo-google-fonts'),
    'junction',
  );
  writeFileSync(
    join(tree, 'node_modules/electron/package.json'),
    '{"name":"electron","type":"module","main":"index.js"}',
  );
  writeFileSync(
    join(tree, 'node_modules/electron/index.js'),
    readFileSync(join(import.meta.dirname, 'electron-stub.js')),
  );
}, 60_000);

afterAll(() => rmSync(tree, { recursive: true, force: true }));

test('the bundled main opens a shop, shows the window, and makes its copy at quitting', async () => {
  const garage = await practiceShop();
  await garage.shop.close();
  try {
    const child = spawn(process.execPath, [join(tree, 'dist/desktop/main.js')], {
      env: { ...process.env, CROWNWHEEL_SHOP: garage.folder },
      cwd: tmpdir(),
    });
    let [out, err] = ['', ''];
    child.stdout.on('data', (part) => (out += String(part)));
    child.stderr.on('data', (part) => (err += String(part)));
    const code = await new Promise((done) => child.once('close', done));
    expect([code, err]).toEqual([0, '']);
    const said = JSON.parse(out) as { preload: string };
    expect(said).toMatchObject({ page: 'the window', isSetUp: true, practice: true });
    expect(existsSync(said.preload)).toBe(true);
    expect(readFileSync(said.preload, 'utf8')).toContain('exposeInMainWorld');
    expect(listCopies(join(garage.folder, 'backups')).map((copy) => copy.trail)).toEqual([1]);
    expect(readdirSync(garage.folder)).not.toContain('held-by.json');
  } finally {
    rmSync(garage.folder, { recursive: true, force: true });
  }
}, 60_000);
