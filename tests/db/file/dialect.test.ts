import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ShopDatabase, StatementMemory } from '../../../db/file/dialect.ts';
import { count, makeShopFile, newFolder, opened, type SmallTables } from './fixture.ts';

function shop(lines = 3) {
  const path = join(newFolder(), 'shop.sqlite');
  makeShopFile(path, lines);
  const raw = opened(path);
  return { path, raw, database: new ShopDatabase<SmallTables>(raw) };
}

describe('the shop database', () => {
  it('keeps all of a transaction or none of it', async () => {
    const { raw, database } = shop();
    await database.transaction((tx) => tx.insertInto('trail').values({ n: 1, hash: 'a' }).execute());
    const failing = database.transaction(async (tx) => {
      await tx.insertInto('trail').values({ n: 2, hash: 'b' }).execute();
      throw new Error('held');
    });
    await expect(failing).rejects.toThrow('held');
    expect(count(raw, 'trail')).toBe(1);
  });

  it('runs transactions one after the other, each beginning as a writer', async () => {
    const { raw, database } = shop();
    const order: string[] = [];
    const one = (name: string, n: number) =>
      database.transaction(async (tx) => {
        order.push(`${name} in`);
        expect(raw.inTransaction).toBe(true);
        await tx.insertInto('trail').values({ n, hash: name }).execute();
        await Promise.resolve();
        order.push(`${name} out`);
      });
    await Promise.all([one('a', 1), one('b', 2)]);
    expect(order).toEqual(['a in', 'a out', 'b in', 'b out']);
  });

  it('takes the write lock at the beginning, before anything is written', async () => {
    const { path, database } = shop();
    const other = opened(path);
    other.pragma('busy_timeout = 0');
    await database.transaction(async () => {
      expect(() => other.exec('BEGIN IMMEDIATE')).toThrow(/locked/);
    });
  });

  it('reads in a transaction on a read-only connection, and refuses to write there', async () => {
    const { path } = shop();
    const reading = new ShopDatabase<SmallTables>(opened(path, { readonly: true }));
    const rows = await reading.transaction((tx) => tx.selectFrom('line').select('id').execute());
    expect(rows).toHaveLength(3);
    const writing = reading.transaction((tx) => tx.insertInto('trail').values({ n: 1, hash: 'a' }).execute());
    await expect(writing).rejects.toMatchObject({ name: 'ShopReadOnly' });
  });

  it('refuses a reference to nothing', async () => {
    const { database } = shop();
    const insert = database.query.insertInto('line').values({ id: 9, work_order_id: 77, words: 'x' }).execute();
    await expect(insert).rejects.toMatchObject({ code: 'SQLITE_CONSTRAINT_FOREIGNKEY' });
  });
});

describe('prepared statements', () => {
  it('hands out the same one again, and a fresh one while it is busy', () => {
    const { raw } = shop();
    const memory = new StatementMemory(raw);
    const sql = 'SELECT id FROM line';
    const first = memory.prepare(sql);
    expect(memory.prepare(sql)).toBe(first);
    const rows = first.iterate();
    rows.next();
    const second = memory.prepare(sql);
    expect(second).not.toBe(first);
    expect(second.all()).toHaveLength(3);
    rows.return?.();
    expect(memory.prepare(sql)).toBe(first);
  });

  it('keeps the 500 last used', () => {
    const { raw } = shop();
    const memory = new StatementMemory(raw);
    const hot = memory.prepare('SELECT 0');
    const cold = memory.prepare('SELECT 1');
    for (let n = 2; n <= 500; n += 1) {
      memory.prepare(`SELECT ${n}`);
      memory.prepare('SELECT 0');
    }
    expect(memory.prepare('SELECT 0')).toBe(hot);
    expect(memory.prepare('SELECT 1')).not.toBe(cold);
  });

  it('still answers rightly after the table has changed under a kept statement', async () => {
    const { raw, database } = shop();
    await database.query.selectFrom('work_order').selectAll().execute();
    raw.exec('ALTER TABLE work_order ADD COLUMN mileage INTEGER');
    const rows = await database.query.selectFrom('work_order').selectAll().execute();
    expect(rows).toEqual([{ id: 1, words: 'rear axle whines at 80', mileage: null }]);
  });
});
