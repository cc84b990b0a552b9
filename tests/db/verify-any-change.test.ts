import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openConnection } from '../../db/file/connection.ts';
import { ShopDatabase } from '../../db/file/dialect.ts';
import { APPEND_ONLY, migrations } from '../../db/schema/migrations.ts';
import { keyOf, type Tables } from '../../db/tables.ts';
import { type Fault, verify } from '../../db/verify.ts';
import { fillEveryTable } from './every-table.ts';
import { practiceShop } from './practice-shop.ts';

interface Place {
  readonly table: keyof Tables;
  readonly column: string;
  readonly type: string;
  readonly mayBeNull: boolean;
}
type Value = string | number | null;

const names = migrations
  .flatMap(({ sql }) => [...sql.matchAll(/CREATE TABLE (\w+)/g)].map(([, table]) => table as keyof Tables))
  // booking_2 becomes booking.
  .filter((table) => String(table) !== 'booking_2');
let database: ShopDatabase<Tables>;
let places: readonly Place[] = [];
let put: () => Promise<void> = async () => {};

beforeAll(async () => {
  const garage = await practiceShop();
  put = () => garage.end();
  await fillEveryTable(garage);
  const raw = openConnection(join(garage.folder, 'shop.sqlite'));
  raw.pragma('foreign_keys = OFF');
  raw.pragma('ignore_check_constraints = ON');
  for (const table of APPEND_ONLY) raw.exec(`DROP TRIGGER ${table}_no_update; DROP TRIGGER ${table}_no_delete`);
  places = names.flatMap((table) =>
    (raw.pragma(`table_info(${table})`) as { name: string; type: string; notnull: number; pk: number }[]).map(
      ({ name, type, notnull, pk }) => ({ table, column: name, type, mayBeNull: notnull === 0 && pk === 0 }),
    ),
  );
  database = new ShopDatabase<Tables>(raw);
});
afterAll(async () => {
  await database?.close();
  await put();
});

const keyColumn = (table: keyof Tables) =>
  table === 'trail'
    ? 'n'
    : table === 'order_balance'
      ? 'work_order_id'
      : table === 'to_send'
        ? 'paper_id'
        : keyOf(table);
const standing = (table: keyof Tables, column: string, rowid: number) =>
  database.raw.prepare(`SELECT ${column} FROM ${table} WHERE rowid = ?`).pluck().get(rowid) as Value;
const rowids = (table: keyof Tables) =>
  database.raw.prepare(`SELECT rowid FROM ${table} ORDER BY rowid`).pluck().all() as number[];

class PutBack extends Error {}

/** What verify says of the shop after some SQL; the change is rolled back. */
async function faultsAfter(work: () => void): Promise<readonly Fault[]> {
  let faults: readonly Fault[] = [];
  try {
    await database.transaction(async (tx) => {
      work();
      faults = (await verify(tx)).faults;
      throw new PutBack();
    });
  } catch (error) {
    if (!(error instanceof PutBack)) throw error;
  }
  return faults;
}

/** Writes a value past every guard and expects that verify names the table and the row. */
async function isFound({ table, column }: Place, rowid: number, value: Value): Promise<void> {
  const key = String(standing(table, keyColumn(table), rowid));
  const sql = `UPDATE ${table} SET ${column} = ? WHERE rowid = ?`;
  const faults = await faultsAfter(() => database.raw.prepare(sql).run(value, rowid));
  const named = faults.filter((fault) => fault.table === table).map(({ row }) => row);
  // A trail row that was moved to another number is told at that number.
  const expected = table === 'trail' && column === 'n' ? String(value) : key;
  expect(named, `${table}.${column} of ${key} set to ${JSON.stringify(value)}`).toContain(expected);
}

/** Some value of the column's type that is not the one that stands there. */
function otherThan(value: Value, { type }: Place): Value {
  if (type === 'TEXT') return `${value ?? ''}.`;
  return typeof value === 'number' ? value + 1_000_003 : 0;
}

test('nothing is found where nothing was changed', async () => {
  expect(await faultsAfter(() => {})).toEqual([]);
});

describe('a change behind the back of the program is found, and its row is named', () => {
  test('in every column of every table', async () => {
    expect(places.length).toBeGreaterThan(250);
    for (const place of places) {
      const [rowid] = rowids(place.table);
      if (rowid === undefined) throw new Error(`${place.table} holds no row`);
      await isFound(place, rowid, otherThan(standing(place.table, place.column, rowid), place));
    }
  });

  test('whatever the row of an append-only table, the column and the value', async () => {
    const appended = places.filter(({ table }) => (APPEND_ONLY as readonly string[]).includes(table));
    const texts = fc.oneof(fc.string(), fc.constantFrom('', '{}', '[]', 'null', '0', '"x"', '[1]', '{"sums":{}}'));
    const whole = fc.oneof(fc.integer(), fc.constantFrom(0, 1, -1, Number.MAX_SAFE_INTEGER));
    let tried = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...appended),
        fc.nat(),
        texts,
        whole,
        fc.boolean(),
        async (place, pick, text, figure, empty) => {
          const all = rowids(place.table);
          const rowid = all[pick % all.length] ?? 0;
          const value = place.mayBeNull && empty ? null : place.type === 'TEXT' ? text : figure;
          fc.pre(value !== standing(place.table, place.column, rowid));
          // Two rows never have one key or one number: SQLite itself refuses that.
          const taken = database.raw.prepare(`SELECT 1 FROM ${place.table} WHERE ${place.column} = ?`).get(value);
          fc.pre(value === null || taken === undefined || !['id', 'n', 'number'].includes(place.column));
          tried += 1;
          await isFound(place, rowid, value);
        },
      ),
      // As many as a busy machine does in its time, but never too few.
      { numRuns: 2000, interruptAfterTimeLimit: 8_000 },
    );
    expect(tried).toBeGreaterThan(100);
  });

  test('where a row is taken out of a table, the last of the trail apart', async () => {
    for (const table of names) {
      const all = rowids(table);
      for (const rowid of [all[0], all.at(-1)]) {
        if (rowid === undefined || (table === 'trail' && rowid === all.at(-1))) continue;
        const key = String(standing(table, keyColumn(table), rowid));
        const sql = `DELETE FROM ${table} WHERE rowid = ?`;
        const named = await faultsAfter(() => database.raw.prepare(sql).run(rowid));
        const expected = table === 'trail' ? String(Number(key) + 1) : key;
        expect(named, `${table} ${key}`).toContainEqual(expect.objectContaining({ table, row: expected }));
      }
    }
  });
});
