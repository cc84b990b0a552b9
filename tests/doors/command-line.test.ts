import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openWithDoor } from '../../electron/open.ts';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'crownwheel-command-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs `npm run shop --` as a process of its own, on the shop in this test's folder. */
function shop(args: readonly string[], { code, input = '' }: { code?: string; input?: string } = {}): Promise<Ran> {
  const { SHOP_CODE: _, ...env } = process.env;
  const file = resolve(import.meta.dirname, '../../electron/shop.ts');
  const child = spawn(process.execPath, [file, ...args], {
    env: { ...env, CROWNWHEEL_SHOP: join(folder, 'shop'), ...(code === undefined ? {} : { SHOP_CODE: code }) },
  });
  let [out, err] = ['', ''];
  child.stdout.on('data', (part) => (out += String(part)));
  child.stderr.on('data', (part) => (err += String(part)));
  child.stdin.end(input);
  return new Promise((done) => child.on('close', (exit) => done({ code: exit, out, err })));
}

test('help goes out, and a wrong command is told apart from a refusal', async () => {
  expect(await shop(['--help'])).toMatchObject({ code: 0, out: expect.stringContaining('call OPERATION JSON') });
  expect(await shop([])).toMatchObject({ code: 2 });
  for (const args of [
    ['fly'],
    ['call'],
    ['call', 'shop.get', '{'],
    ['call', 'shop.get', '{}', 'more'],
    ['call', '--odd'],
  ]) {
    expect(await shop(args), args.join(' ')).toMatchObject({ code: 2, out: '' });
  }
  const refused = await shop(['call', 'no.such', '{}']);
  expect(refused).toMatchObject({ code: 1, err: expect.stringContaining('There is no operation no.such') });
  expect(JSON.parse(refused.out)).toEqual({ ok: false, error: { code: 'unknown-operation', operation: 'no.such' } });
});

test('the contract is JSON Schema', async () => {
  const contract = JSON.parse((await shop(['contract'])).out) as Record<string, { kind: string; input: object }>;
  expect(contract['shop.get']).toMatchObject({ kind: 'ask', input: { type: 'object', additionalProperties: false } });
});

test('a batch is answered line for line, bad lines too', async () => {
  const file = join(folder, 'batch.jsonl');
  writeFileSync(
    file,
    '{"operation":"shop.get","input":{}}\n\nnot json\n{"operation":"shop.get","inpt":{}}\n{"operation":"shop.get"}\n',
  );
  const { code, out } = await shop(['call', '--batch', file, '--practice']);
  const answers = out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as { ok: boolean });
  expect([code, ...answers.map(({ ok }) => ok)]).toEqual([1, true, false, false, true]);
  expect((await shop(['call', '--batch', file, '--stop'])).out.trim().split('\n')).toHaveLength(2);
});

test('a call for a person without a code is refused, and the code is no flag', async () => {
  const refused = await shop(['call', 'today.get', '{}', '--as', 'Nadja']);
  expect(refused).toMatchObject({ code: 1, out: expect.stringContaining('no-code') });
  expect(await shop(['call', 'today.get', '{}', '--as', 'Nadja', '--code', '4711'])).toMatchObject({ code: 2 });
  expect((await shop(['call', 'today.get', '{}', '--as', 'Nadja'], { input: '4711\n' })).out).toContain('"why":"code"');
  expect((await shop(['call', 'today.get', '{}', '--as', 'Nadja'], { code: '4711' })).out).toContain('"why":"code"');
});

test('where a window holds the shop the call is passed on to it', async () => {
  const open = await openWithDoor({ folder: join(folder, 'shop'), practice: true, port: 0 });
  try {
    const holder = readdirSync(join(folder, 'shop')).find((name) => name.startsWith('held')) ?? '';
    expect(statSync(join(folder, 'shop', holder)).mode & 0o077).toBe(0);
    expect(readFileSync(join(folder, 'shop', holder), 'utf8')).toContain(open.host.address);
    const { code, out } = await shop(['call', 'shop.get', '{}']);
    expect([code, JSON.parse(out)]).toMatchObject([0, { ok: true, output: { practice: true } }]);
    expect(await shop(['restore', join(folder, 'nothing.sqlite')])).toMatchObject({
      code: 2,
      err: expect.stringContaining(`held by process ${process.pid}`),
    });
  } finally {
    await open.close();
  }
});

test('two commands at once wait for each other', async () => {
  const all = await Promise.all([1, 2, 3].map(() => shop(['call', 'shop.get', '{}'])));
  expect(all.map(({ code }) => code)).toEqual([0, 0, 0]);
});

test('a copy is made and put back', async () => {
  await shop(['call', 'shop.get', '{}']);
  const { copy } = (JSON.parse((await shop(['backup'])).out) as { output: { copy: string } }).output;
  expect(statSync(copy).size).toBeGreaterThan(0);
  expect(await shop(['restore', copy])).toMatchObject({ code: 0, err: expect.stringContaining('is kept in') });
  expect(await shop(['call', 'shop.get', '{}'])).toMatchObject({ code: 0 });
  expect(await shop(['restore', join(folder, 'nothing.sqlite')])).toMatchObject({ code: 2 });
});
