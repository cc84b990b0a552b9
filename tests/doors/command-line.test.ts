import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { openWithDoor } from '../../electron/open.ts';
import { SETTINGS } from '../db/practice-shop.ts';
import { runShop } from './run-shop.ts';

// Many processes, one after the other: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 120_000 });

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'crownwheel-command-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const shop = (args: readonly string[], options: Parameters<typeof runShop>[2] = {}) =>
  runShop(join(folder, 'shop'), args, options);

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

const answersOf = (out: string) =>
  out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as { line: number; ok: boolean });

test('a batch is answered line for line with its number, bad lines too, and goes on unless told to stop', async () => {
  const file = join(folder, 'batch.jsonl');
  writeFileSync(
    file,
    '{"operation":"shop.get","input":{}}\n\nnot json\n{"operation":"shop.get","inpt":{}}\n{"operation":"shop.get"}\n',
  );
  const { code, out, err } = await shop(['call', '--batch', file, '--practice']);
  expect(code).toBe(1);
  expect(answersOf(out)).toMatchObject([
    { line: 1, ok: true },
    { line: 3, ok: false, error: { code: 'bad-input', fields: [{ path: 'line 3' }] } },
    { line: 4, ok: false },
    { line: 5, ok: true },
  ]);
  expect(err).toMatch(/^Line 3: .*line 3 is not JSON \(.*not json/m);
  expect(err).toMatch(/^Line 4: .*line 4 inpt is a field that nobody asked for/m);
  expect(err).toContain('4 calls, 2 refused: line 3, 4.');
  const stopped = await shop(['call', '--batch', file, '--stop']);
  expect([stopped.code, answersOf(stopped.out)]).toMatchObject([1, [{ line: 1 }, { line: 3 }]]);
  expect(stopped.err).toContain('Stopped there; 2 lines after it were not called.');
});

test('a batch can come from standard input, and one without refusals ends with 0', async () => {
  const { code, out, err } = await shop(['call', '--batch', '-'], {
    input: '{"operation":"shop.get"}\r\n{"operation":"shop.get"}\n',
  });
  expect([code, answersOf(out), err]).toMatchObject([0, [{ line: 1 }, { line: 2 }], '']);
  expect(await shop(['call', '--batch', join(folder, 'nothing.jsonl')])).toMatchObject({
    code: 2,
    err: expect.stringContaining('There is no file'),
  });
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

const SET_UP = {
  settings: SETTINGS,
  people: [
    { name: 'Odile', role: 'owner', code: 'owner-code', payRate: 0 },
    { name: 'Runa', role: 'mechanic', code: 'runa-code', payRate: 0 },
  ],
  bays: [],
  rates: [{ name: 'Labour', price: 9600, usual: true }],
};

test('practice time is taken in a practice shop only, from a script of several people', async () => {
  const call = (request: object) => JSON.stringify(request);
  const lines = (at: object) =>
    [
      call({ operation: 'shop.setUp', input: SET_UP, ...at }),
      call({ operation: 'customer.add', input: { name: 'Agnes Pell' }, as: 'Odile', ...at }),
      call({ operation: 'today.get', input: {}, as: 'Runa' }),
      call({ operation: 'customer.add', input: { name: 'Bram Oakes' }, as: 'Runa' }),
      '',
    ].join('\n');
  const codes = 'Odile=owner-code\nRuna=runa-code';
  const at = Date.parse('2026-03-10T08:00:00Z');
  const practice = await shop(['call', '--batch', '-', '--practice'], { code: codes, input: lines({ at }) });
  expect(answersOf(practice.out).map(({ ok }) => ok)).toEqual([true, true, true, false]);
  const trail = await shop(['call', 'trail.list', '{}', '--as', 'Odile'], { code: 'owner-code' });
  const { rows } = (JSON.parse(trail.out) as { output: { rows: { at: number; person: string }[] } }).output;
  expect(rows.map((row) => [row.at, row.person])).toEqual([
    [at, 'Odile'],
    [at, ''],
  ]);
  // The shop itself says that it is for practice, whatever a later opening wishes.
  expect((await shop(['call', 'shop.get', '{}'])).out).toContain('"practice":true');

  const real = join(folder, 'real');
  const refused = await runShop(real, ['call', '--batch', '-'], { code: codes, input: lines({ at }) });
  expect(answersOf(refused.out)[0]).toMatchObject({
    line: 1,
    error: { code: 'bad-input', fields: [{ path: 'at', problem: 'practice-only' }] },
  });
  const made = await runShop(real, ['call', '--batch', '-'], { code: codes, input: lines({}) });
  expect(answersOf(made.out).map(({ ok }) => ok)).toEqual([true, true, true, false]);
  // Asking for practice later does not make a real shop one.
  const late = await runShop(real, ['call', 'shop.get', '{}', '--practice', '--at', String(at)]);
  expect(late).toMatchObject({ code: 1, out: expect.stringContaining('practice-only') });
  expect(late.err).toContain('stays a real one');
});

test('the same request twice is applied once', async () => {
  const options = { code: 'owner-code' };
  await shop(['call', 'shop.setUp', JSON.stringify(SET_UP)]);
  const request = '01993b5e-7a00-7000-8000-00000000c0de';
  const add = ['call', 'customer.add', '{"name":"Agnes Pell"}', '--as', 'Odile', '--request', request];
  const [first, again] = [await shop(add, options), await shop(add, options)];
  expect(again.out).toBe(first.out);
  const verified = await shop(['verify', '--as', 'Odile'], options);
  expect([verified.code, JSON.parse(verified.out)]).toMatchObject([
    0,
    { ok: true, output: { sound: true, checked: { customer: 1 } } },
  ]);
});
