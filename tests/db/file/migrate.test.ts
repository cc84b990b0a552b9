import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Migration, migrate, schemaVersion } from '../../../db/file/migrate.ts';
import { AT, count, makeShopFile, migrations, newFolder, opened } from './fixture.ts';

const never = () => Promise.reject(new Error('no copy expected'));
const third = (sql: string): readonly Migration[] => [...migrations, { version: 3, name: 'third', sql }];

function shop() {
  const path = join(newFolder(), 'shop.sqlite');
  makeShopFile(path, 3);
  return opened(path);
}

describe('migrating', () => {
  it('builds an empty file without a copy, and records each step', async () => {
    const raw = opened(join(newFolder(), 'shop.sqlite'), { create: true });
    expect(await migrate(raw, migrations, { at: AT, copyFirst: never })).toEqual({ from: 0, to: 2 });
    expect(raw.prepare('SELECT * FROM schema_version').all()).toEqual([
      { version: 1, name: 'first', at: AT },
      { version: 2, name: 'mileage', at: AT },
    ]);
    expect(await migrate(raw, migrations, { at: AT, copyFirst: never })).toEqual({ from: 2, to: 2 });
  });

  it('copies a shop with data before the first step', async () => {
    const raw = shop();
    const seen: unknown[] = [];
    const copyFirst = async (from: number, to: number) => seen.push([from, to, schemaVersion(raw)]);
    await migrate(raw, migrations, { at: AT, copyFirst });
    expect(seen).toEqual([[1, 2, 1]]);
    expect(schemaVersion(raw)).toBe(2);
    expect(count(raw, 'line')).toBe(3);
  });

  it('does nothing when the copy fails', async () => {
    const raw = shop();
    await expect(migrate(raw, migrations, { at: AT, copyFirst: never })).rejects.toThrow('no copy expected');
    expect(schemaVersion(raw)).toBe(1);
  });

  it('refuses a newer file and leaves it as it is', async () => {
    const raw = shop();
    raw.prepare("INSERT INTO schema_version VALUES (3, 'later', ?)").run(AT);
    const refused = migrate(raw, migrations, { at: AT, copyFirst: never });
    await expect(refused).rejects.toMatchObject({ name: 'ShopNewer', version: 3, known: 2 });
    expect(count(raw, 'line')).toBe(3);
  });

  it('refuses a database that is no shop', async () => {
    const raw = opened(join(newFolder(), 'other.sqlite'), { create: true });
    raw.exec('CREATE TABLE recipe (id INTEGER)');
    const refused = migrate(raw, migrations, { at: AT, copyFirst: never });
    await expect(refused).rejects.toMatchObject({ name: 'ShopDamaged', found: 'not-a-shop' });
  });

  it.each([
    ['fails half-way', 'CREATE TABLE bay (id INTEGER); INSERT INTO nowhere VALUES (1)', /nowhere/],
    ['breaks a reference', 'CREATE TABLE bay (id INTEGER); DELETE FROM work_order', /broken references/],
    ['ends its own transaction', 'COMMIT', /own transaction/],
  ])('a step that %s leaves no trace of itself', async (_what, sql, message) => {
    const raw = shop();
    const failing = migrate(raw, third(sql), { at: AT, copyFirst: async () => undefined });
    await expect(failing).rejects.toThrow(message);
    expect(schemaVersion(raw)).toBe(2);
    expect(raw.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'bay'").get()).toBeUndefined();
    expect(count(raw, 'work_order')).toBe(1);
    expect(raw.pragma('foreign_keys', { simple: true })).toBe(1);
  });

  it('rebuilds a table that others point at', async () => {
    const raw = shop();
    const sql = `CREATE TABLE fresh (id INTEGER PRIMARY KEY, words TEXT NOT NULL, mileage INTEGER CHECK (mileage >= 0)) STRICT;
      INSERT INTO fresh SELECT id, words, mileage FROM work_order;
      DROP TABLE work_order; ALTER TABLE fresh RENAME TO work_order`;
    await migrate(raw, third(sql), { at: AT, copyFirst: async () => undefined });
    expect(count(raw, 'line')).toBe(3);
    expect(raw.pragma('foreign_key_check')).toEqual([]);
  });

  it('will not take a list with a gap', async () => {
    const gap = [{ version: 2, name: 'second', sql: '' }];
    await expect(migrate(shop(), gap, { at: AT, copyFirst: never })).rejects.toThrow(/number 1/);
  });
});
