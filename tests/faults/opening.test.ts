import { copyFileSync, existsSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { listCopies } from '../../db/file/backup.ts';
import { type ShopPaths, shopPaths } from '../../db/file/folder.ts';
import { readNote } from '../../db/file/note.ts';
import { migrations } from '../../db/schema/migrations.ts';
import { openShop } from '../../db/shop.ts';
import { type PracticeShop, practiceShop } from '../db/practice-shop.ts';

let garage: PracticeShop;
let paths: ShopPaths;

beforeEach(async () => {
  garage = await practiceShop();
  paths = shopPaths(garage.folder);
});
afterEach(async () => {
  await garage.shop.close().catch(() => undefined);
  rmSync(garage.folder, { recursive: true, force: true });
});

const addCustomer = (name: string) => garage.did('Desk', 'customer.add', { name });
const later = [
  ...migrations,
  { version: migrations.length + 1, name: 'rehearsal', sql: 'CREATE TABLE rehearsal (id INTEGER PRIMARY KEY) STRICT' },
];

/** Leaves the folder as a power cut does: file and log as they are at this moment, and the note. */
async function cutThePower(): Promise<void> {
  const found = [paths.database, `${paths.database}-wal`, paths.note].map(
    (path) => [path, readFileSync(path)] as const,
  );
  await garage.shop.close();
  for (const [path, bytes] of found) writeFileSync(path, bytes);
}

test('a shop of an earlier schema is copied, the copy checked, and then brought up to date', async () => {
  await addCustomer('Agnes Pell');
  const before = (await garage.did('Odile', 'trail.list', {})).rows.length;
  await garage.shop.close();
  expect(listCopies(paths.backups)).toEqual([]);
  const shop = await openShop({ folder: garage.folder, steps: later });
  await shop.close();
  const [copy, ...more] = listCopies(paths.backups);
  expect([copy?.trail, more.length]).toEqual([before, 0]);
  const [copied, shopNow] = [new Database(copy?.path), new Database(paths.database)];
  const version = (raw: Database.Database) => raw.prepare('SELECT max(version) AS v FROM schema_version').get();
  expect([version(copied), version(shopNow)]).toEqual([{ v: migrations.length }, { v: later.length }]);
  copied.close();
  shopNow.close();
});

test('a shop that cannot be copied is not migrated', async () => {
  await garage.shop.close();
  rmSync(paths.backups, { recursive: true });
  // A file where the folder should be: nothing can be copied there.
  writeFileSync(paths.backups, '');
  await expect(openShop({ folder: garage.folder, steps: later })).rejects.toThrow();
  rmSync(paths.backups);
  await (await openShop({ folder: garage.folder })).close();
});

test('a shop of a later program is refused and left as it is', async () => {
  await garage.shop.close();
  await (await openShop({ folder: garage.folder, steps: later })).close();
  const before = readFileSync(paths.database);
  await expect(openShop({ folder: garage.folder })).rejects.toMatchObject({
    code: 'newer',
    version: later.length,
    known: migrations.length,
  });
  expect(readFileSync(paths.database).equals(before)).toBe(true);
});

test('a log that is gone is found by the note, with how much is lost, and written down', async () => {
  await garage.reopen();
  for (const name of ['Agnes Pell', 'Bram Oakes', 'Cato Lind']) await addCustomer(name);
  const noted = readNote(paths)?.n ?? 0;
  await cutThePower();
  rmSync(`${paths.database}-wal`);
  garage.shop = await openShop({ folder: garage.folder });
  const { warnings } = await garage.did('nobody', 'shop.get', {});
  expect(warnings).toEqual([{ what: 'commits-lost', with: { lost: 3, last: noted - 3, noted } }]);
  expect(readFileSync(join(garage.folder, 'faults.log'), 'utf8')).toContain('commits-lost {"lost":3');
});

test('a log that was cut short is found by the note', async () => {
  await garage.reopen();
  for (const name of ['Agnes Pell', 'Bram Oakes', 'Cato Lind']) await addCustomer(name);
  await cutThePower();
  truncateSync(`${paths.database}-wal`, readFileSync(`${paths.database}-wal`).length - 24 - 4096);
  garage.shop = await openShop({ folder: garage.folder });
  expect(garage.shop.warnings).toMatchObject([{ what: 'commits-lost', with: { lost: 1 } }]);
});

test('after a plain power cut nothing is lost and nothing is warned of, also with a note that is behind', async () => {
  await garage.reopen();
  for (const name of ['Agnes Pell', 'Bram Oakes']) await addCustomer(name);
  const note = readFileSync(paths.note);
  await addCustomer('Cato Lind');
  await cutThePower();
  writeFileSync(paths.note, note);
  garage.shop = await openShop({ folder: garage.folder });
  expect(garage.shop.warnings).toEqual([]);
  expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
});

test('another file under the note is warned of', async () => {
  const other = await practiceShop();
  await other.shop.close();
  await garage.shop.close();
  copyFileSync(shopPaths(other.folder).database, paths.database);
  garage.shop = await openShop({ folder: garage.folder });
  expect(garage.shop.warnings).toMatchObject([{ what: 'other-file' }]);
  rmSync(other.folder, { recursive: true });
});

test('a damaged page is named at the start, and file and log stay byte for byte', async () => {
  await garage.reopen();
  await addCustomer('Agnes Pell');
  await cutThePower();
  const bytes = readFileSync(paths.database);
  bytes.fill(0xff, 4096 * 8, 4096 * 9);
  writeFileSync(paths.database, bytes);
  const log = readFileSync(`${paths.database}-wal`);
  await expect(openShop({ folder: garage.folder })).rejects.toMatchObject({ code: 'damaged' });
  expect(readFileSync(paths.database).equals(bytes)).toBe(true);
  expect(readFileSync(`${paths.database}-wal`).equals(log)).toBe(true);
});

test('a database that is gone is not made anew', async () => {
  await garage.shop.close();
  rmSync(paths.database);
  await expect(openShop({ folder: garage.folder })).rejects.toMatchObject({ code: 'missing' });
  expect(existsSync(paths.database)).toBe(false);
});

test('while nothing is done the log is folded in and the note made durable', async () => {
  await garage.reopen();
  await addCustomer('Agnes Pell');
  rmSync(paths.ballast);
  garage.shop.settle();
  // All of the log is in the file: without the log nothing is lost.
  await cutThePower();
  rmSync(`${paths.database}-wal`);
  garage.shop = await openShop({ folder: garage.folder });
  expect(garage.shop.warnings).toEqual([]);
  expect(readdirSync(garage.folder)).toContain('ballast');
});
