import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { listCopies } from '../../db/file/backup.ts';
import { type ShopPaths, shopPaths } from '../../db/file/folder.ts';
import { migrations } from '../../db/schema/migrations.ts';
import { openShop } from '../../db/shop.ts';
import { openWithDoor } from '../../electron/open.ts';
import { practiceShop } from '../db/practice-shop.ts';
import { runShop } from './run-shop.ts';

// Many processes, one after the other: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 120_000 });

let paths: ShopPaths;
const shop = (...args: string[]) => runShop(paths.folder, args, { code: 'owner-code' });
const later = [
  ...migrations,
  { version: migrations.length + 1, name: 'rehearsal', sql: 'CREATE TABLE rehearsal (id INTEGER PRIMARY KEY) STRICT' },
];
const outputOf = (out: string) => (JSON.parse(out) as { output: Record<string, unknown> }).output;

beforeEach(async () => {
  const garage = await practiceShop();
  await garage.shop.close();
  paths = shopPaths(garage.folder);
});
afterEach(() => rmSync(paths.folder, { recursive: true, force: true }));

test('a copy is made, and put back with the number that stands on paper', async () => {
  const made = outputOf((await shop('backup')).out);
  expect(made).toMatchObject({ trail: 1, bytes: statSync(String(made.copy)).size });
  await shop('call', 'customer.add', '{"name":"Agnes Pell"}', '--as', 'Odile');
  const back = await shop('restore', String(made.copy), '--last-invoice', '1047');
  expect(back).toMatchObject({
    code: 0,
    err: expect.stringMatching(/is kept in .*The copy holds no invoice; the next is 1048/),
  });
  const { kept } = outputOf(back.out);
  expect(existsSync(String(kept))).toBe(true);
  const found = outputOf((await shop('call', 'customer.list', '{}', '--as', 'Odile')).out);
  expect(JSON.stringify(found)).not.toContain('Agnes Pell');
  const again = await shop('restore', String(made.copy));
  expect(again).toMatchObject({ code: 0, err: expect.stringContaining('with --last-invoice and that number') });
  // Nothing that was set aside is written over by the second time.
  expect(readdirSync(paths.folder).filter((name) => /^shop put aside .*sqlite$/.test(name))).toHaveLength(2);
  for (const wrong of ['soon', '0', '-3', '1.5']) {
    expect(await shop('restore', String(made.copy), `--last-invoice=${wrong}`)).toMatchObject({ code: 2, out: '' });
  }
  expect(await shop('restore', join(paths.folder, 'nothing.sqlite'))).toMatchObject({ code: 2 });
  expect(outputOf((await shop('verify', '--as', 'Odile')).out)).toMatchObject({ sound: true });
});

test('closing the window makes a copy of what was done, and none when nothing was', async () => {
  const open = await openWithDoor({ folder: paths.folder, port: 0 });
  await open.close();
  expect(listCopies(paths.backups).map((copy) => copy.trail)).toEqual([1]);
  await (await openWithDoor({ folder: paths.folder, port: 0 })).close();
  expect(listCopies(paths.backups)).toHaveLength(1);
});

test('the command line copies too, but not at every call', async () => {
  for (const name of ['Agnes Pell', 'Bram Oakes', 'Cato Lind'])
    await shop('call', 'customer.add', JSON.stringify({ name }), '--as', 'Odile');
  expect(listCopies(paths.backups).map((copy) => copy.trail)).toEqual([2]);
});

test('a damaged file is named, left as it is, and the copies with their dates are offered', async () => {
  const { copy } = outputOf((await shop('backup')).out);
  const bytes = readFileSync(paths.database);
  bytes.fill(0xff, 4_096 * 8, 4_096 * 9);
  writeFileSync(paths.database, bytes);
  const told = await shop('call', 'today.get', '{}', '--as', 'Odile');
  expect(told).toMatchObject({ code: 2, out: '' });
  expect(told.err).toContain(`The shop's file in ${paths.folder} is damaged: part of it cannot be read`);
  expect(told.err).toMatch(/\d{4}-\d\d-\d\d \d\d:\d\d, up to number 1 in the trail/);
  expect(told.err).toContain(String(copy));
  expect(readFileSync(paths.database).equals(bytes)).toBe(true);
  expect((await shop('restore', String(copy))).code).toBe(0);
  expect((await shop('verify', '--as', 'Odile')).code).toBe(0);
});

test('a log that went away is warned of with its figures', async () => {
  writeFileSync(paths.note, `${JSON.stringify({ n: 5, hash: 'a'.repeat(64) }).padEnd(127)}\n`);
  const told = await shop('call', 'shop.get', '{}');
  expect(told.code).toBe(0);
  expect(told.err).toContain('4 changes were answered as saved and are not in the file');
});

test('a shop of a later program, one that cannot be written and one that is gone each have their sentence', async () => {
  await (await openShop({ folder: paths.folder, steps: later })).close();
  expect(await shop('call', 'shop.get', '{}')).toMatchObject({
    code: 2,
    out: '',
    err: expect.stringContaining('was made by a later version of Crownwheel. It was left as it is'),
  });
  rmSync(paths.database);
  const gone = await shop('call', 'shop.get', '{}');
  expect(gone).toMatchObject({ code: 2, out: '', err: expect.stringContaining('is not where it should be') });
  // The copy that was made before its schema went on is offered.
  expect(gone.err).toMatch(/up to number 1 in the trail/);
  rmSync(paths.backups, { recursive: true });
  expect((await shop('call', 'shop.get', '{}')).err).toContain('There is no copy in its backups folder');
  expect(existsSync(paths.database)).toBe(false);
});

test('a folder that cannot be written is told at the start', async (context) => {
  // Root may write what has no permission to be written: there the immutable flag is what stops it.
  const isRoot = process.getuid?.() === 0;
  const lock = (on: boolean) =>
    isRoot
      ? spawnSync('chattr', [on ? '+i' : '-i', paths.folder])
      : spawnSync('chmod', [on ? 'a-w' : 'u+w', paths.folder]);
  if (process.platform === 'win32' || lock(true).status !== 0) context.skip('a folder cannot be locked here');
  const told = await shop('call', 'shop.get', '{}');
  lock(false);
  expect(told).toMatchObject({ code: 2, out: '', err: expect.stringContaining('cannot be written to') });
});

test('verify ends with 1 where something does not agree, and names it', async () => {
  expect(await shop('verify', '--as', 'Odile')).toMatchObject({
    code: 0,
    err: expect.stringMatching(/^Everything agrees: \d+ rows/),
  });
  const raw = new Database(paths.database);
  raw.exec("UPDATE bay SET name = 'Bay 9'");
  raw.close();
  const found = await shop('verify', '--as', 'Odile');
  expect(found).toMatchObject({ code: 1, out: expect.stringContaining('"sound":false') });
  expect(found.err).toMatch(/One thing does not agree:\n {2}bay \S+: row-changed/);
});
