import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, onTestFinished, test, vi } from 'vitest';
import { listCopies } from '../../db/file/backup.ts';
import { type ShopPaths, shopPaths } from '../../db/file/folder.ts';
import { readHolder } from '../../db/file/lock.ts';
import { practiceShop } from '../db/practice-shop.ts';
import { runShop } from './run-shop.ts';

// Many processes, one after the other: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 120_000 });

// `npm start` as a process of its own, without a display and with a window that was built elsewhere.

let dist: string;
let paths: ShopPaths;

beforeEach(async () => {
  dist = mkdtempSync(join(tmpdir(), 'crownwheel-dist-'));
  mkdirSync(join(dist, 'renderer'));
  writeFileSync(join(dist, 'renderer', 'index.html'), '<title>the window</title>');
  const garage = await practiceShop();
  await garage.shop.close();
  paths = shopPaths(garage.folder);
});
afterEach(() => {
  for (const folder of [dist, paths.folder]) rmSync(folder, { recursive: true, force: true });
});

interface Started {
  readonly child: ChildProcess;
  /** Waits until what it said so far fits; the match. */
  said(pattern: RegExp): Promise<RegExpExecArray>;
  /** Its exit code. */
  readonly ended: Promise<number | null>;
  text(): string;
}

function start(): Started {
  const { DISPLAY: _, WAYLAND_DISPLAY: __, ...env } = process.env;
  const child = spawn(process.execPath, [resolve(import.meta.dirname, '../../electron/start.ts'), '--port', '0'], {
    env: { ...env, CROWNWHEEL_SHOP: paths.folder, CROWNWHEEL_DIST: dist },
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  let text = '';
  child.stdout.on('data', (part) => (text += String(part)));
  child.stderr.on('data', (part) => (text += String(part)));
  const ended = new Promise<number | null>((done) => child.once('close', done));
  const said = async (pattern: RegExp) => {
    for (const until = Date.now() + 60_000; Date.now() < until; ) {
      const found = pattern.exec(text);
      if (found) return found;
      await new Promise((later) => setTimeout(later, 20));
    }
    throw new Error(`It did not say ${pattern}, but: ${text}`);
  };
  return { child, said, ended, text: () => text };
}

/** Goes through a link as a browser does; the cookie that it gives. */
async function enter(link: string): Promise<{ cookie: string; page: string }> {
  const entry = await fetch(link);
  return { cookie: entry.headers.getSetCookie()[0]?.split(';')[0] ?? '', page: await entry.text() };
}

const LINK = /once: (http:\/\/127\.0\.0\.1:\d+\/\?key=\S+)/;

test('without a display it says where the shop is and how to open it; a second start goes to the first', async () => {
  const first = start();
  const link = (await first.said(LINK))[1] ?? '';
  expect(first.text()).toContain(`The shop is in ${paths.folder}. It is open at ${new URL(link).origin}`);
  const one = await enter(link);
  const changes = await fetch(`${new URL(link).origin}/changes`, { headers: { cookie: one.cookie } });

  const second = start();
  const again = (await second.said(LINK))[1] ?? '';
  expect([await second.ended, new URL(again).origin]).toEqual([0, new URL(link).origin]);
  expect(second.text()).toContain(`is held by process ${first.child.pid}`);
  const two = await enter(again);
  expect(two.cookie).not.toBe(one.cookie);

  // The second window changes something; the first hears of it.
  const post = (path: string, body: object) =>
    fetch(`${new URL(again).origin}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: two.cookie },
      body: JSON.stringify(body),
    });
  await post('/enter', { person: 'Desk', code: 'desk-code' });
  expect((await post('/call', { operation: 'customer.add', input: { name: 'Agnes Pell' } })).status).toBe(200);
  let heard = '';
  for await (const part of changes.body ?? []) {
    heard += Buffer.from(part).toString();
    if (heard.includes('event: change')) break;
  }
  expect(heard).toContain('data: ["customer"]');

  first.child.kill('SIGTERM');
  expect(await first.ended).toBe(0);
  expect(readHolder(paths.folder)).toBeNull();
  // Closing made a copy of what was done.
  expect(listCopies(paths.backups).map((copy) => copy.trail)).toEqual([2]);
});

test('a host that is killed leaves a shop that the next start takes over, with all that was answered', async () => {
  const first = start();
  const link = (await first.said(LINK))[1] ?? '';
  const { code } = await runShop(paths.folder, ['call', 'customer.add', '{"name":"Agnes Pell"}', '--as', 'Desk'], {
    code: 'desk-code',
  });
  expect(code).toBe(0);
  first.child.kill('SIGKILL');
  await first.ended;
  expect(readHolder(paths.folder)?.pid).toBe(first.child.pid);
  const next = start();
  const fresh = (await next.said(LINK))[1] ?? '';
  expect(fresh).not.toBe(link);
  expect(next.text()).not.toContain('is held by');
  expect(next.text()).not.toContain('lost');
  const found = await runShop(paths.folder, ['call', 'customer.list', '{}', '--as', 'Desk'], { code: 'desk-code' });
  expect(found.out).toContain('Agnes Pell');
});

test('a damaged shop is shown with its copies, and one of them is brought back there', async () => {
  await runShop(paths.folder, ['backup']);
  const bytes = readFileSync(paths.database);
  bytes.fill(0xff, 4_096 * 8, 4_096 * 9);
  writeFileSync(paths.database, bytes);
  const started = start();
  const link = (await started.said(LINK))[1] ?? '';
  expect(started.text()).toContain('is damaged: part of it cannot be read');
  const { origin } = new URL(link);
  expect((await fetch(origin)).status).toBe(401);
  expect((await fetch(`${origin}/bring-back`, { method: 'POST' })).status).toBe(401);
  const { cookie, page } = await enter(link);
  expect((await fetch(link)).status).toBe(401);
  expect(page).toContain('The shop cannot be opened');
  expect(page).toMatch(/\d{4}-\d\d-\d\d \d\d:\d\d, up to number 1 in the trail/);
  const name = /name="copy" value="([^"]+)"/.exec(page)?.[1] ?? '';
  const send = (form: Record<string, string>, headers: Record<string, string> = {}) =>
    fetch(`${origin}/bring-back`, {
      method: 'POST',
      headers: { cookie, origin, ...headers },
      body: new URLSearchParams(form),
    });
  expect((await send({ copy: name }, { origin: 'http://evil.example' })).status).toBe(403);
  expect((await send({ copy: '../../shop' })).status).toBe(400);
  expect((await send({ copy: name, lastInvoice: 'x' })).status).toBe(400);
  expect(readFileSync(paths.database).equals(bytes)).toBe(true);
  const back = await (await send({ copy: name, lastInvoice: '1047' })).text();
  expect(back).toContain('the next is 1048');
  const into = (/href="([^"]+key=[^"]+)"/.exec(back)?.[1] ?? '').replace('&#38;', '&');
  expect((await enter(into)).page).toContain('Crownwheel');
  await started.said(/It is open at/);
  const aside = readdirSync(paths.folder).find((entry) => /^shop put aside .*sqlite$/.test(entry)) ?? '';
  expect(readFileSync(join(paths.folder, aside)).equals(bytes)).toBe(true);
});

test('a window that is not built is built, with a word of how it goes', async () => {
  rmSync(join(dist, 'renderer'), { recursive: true });
  const started = start();
  await started.said(LINK);
  expect(started.text()).toMatch(/Building the window \(it is the first time\) \.* built in \d+\.\d s\./);
  expect(statSync(join(dist, 'renderer', 'index.html')).size).toBeGreaterThan(0);
});

test('another account of the machine that knows the port gets nothing', async (context) => {
  const OTHER = 65_534;
  const script = `
    const [origin, folder] = process.argv.slice(1);
    const { readFileSync, readdirSync } = await import('node:fs');
    const got = [];
    const ask = async (path, options) => {
      const answer = await fetch(origin + path, options).catch((fault) => ({ status: 0, text: async () => String(fault) }));
      got.push([path, answer.status, await answer.text()]);
    };
    for (const path of ['/', '/index.html', '/who', '/changes', '/papers/a.pdf', '/nothing', '/?key=', '/?key=guessed', '/door'])
      await ask(path, {});
    const json = { 'content-type': 'application/json' };
    for (const path of ['/call', '/enter', '/leave', '/door']) {
      await ask(path, { method: 'POST', headers: json, body: '{"operation":"shop.get","input":{}}' });
      await ask(path, { method: 'POST', headers: { ...json, authorization: 'Bearer guessed', cookie: 'crownwheel-' + new URL(origin).port + '=guessed' }, body: '{"device":"x"}' });
    }
    const read = (work) => { try { work(); return 'read'; } catch (fault) { return fault.code; } };
    console.log(JSON.stringify({
      uid: process.getuid(), got,
      files: [read(() => readdirSync(folder)), ...['held-by.json', 'shop.sqlite', 'trail-note.json'].map((name) => read(() => readFileSync(folder + '/' + name)))],
    }));`;
  const asOther = (args: readonly string[]) =>
    spawnSync(process.execPath, ['--input-type=module', '-e', script, ...args], {
      uid: OTHER,
      gid: OTHER,
      cwd: '/',
      encoding: 'utf8',
    });
  if (process.getuid?.() !== 0) context.skip('only root can become another account');
  const started = start();
  const origin = new URL((await started.said(LINK))[1] ?? '').origin;
  const run = asOther([origin, paths.folder]);
  if (run.status !== 0)
    context.skip(`another account cannot run Node here: ${run.error?.message ?? run.stderr.slice(0, 200)}`);
  const { uid, got, files } = JSON.parse(run.stdout) as {
    uid: number;
    got: [string, number, string][];
    files: string[];
  };
  expect([uid, got.length]).toEqual([OTHER, 17]);
  for (const [path, status, text] of got) {
    expect([401, 403], path).toContain(status);
    expect(JSON.parse(text), path).toEqual({ ok: false, error: { code: 'turned-away', why: expect.any(String) } });
  }
  expect(files).toEqual(['EACCES', 'EACCES', 'EACCES', 'EACCES']);
});
