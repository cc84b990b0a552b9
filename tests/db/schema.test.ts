import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Connection, openConnection } from '../../db/file/connection.ts';
import { APPEND_ONLY, migrations } from '../../db/schema/migrations.ts';
import { fillEveryTable } from './every-table.ts';
import { practiceShop } from './practice-shop.ts';

interface Column {
  readonly name: string;
  readonly type: string;
  readonly notnull: 0 | 1;
  readonly pk: number;
}

let raw: Connection;
let put: () => Promise<void> = async () => {};

beforeAll(async () => {
  const garage = await practiceShop();
  put = () => garage.end();
  await fillEveryTable(garage);
  raw = openConnection(join(garage.folder, 'shop.sqlite'));
});
afterAll(async () => {
  raw?.close();
  await put();
});

const made = new Database(':memory:');
for (const { sql } of migrations) made.exec(sql);
const tables = (made.pragma('table_list') as { name: string; type: string; strict: 0 | 1 }[]).filter(
  ({ name, type }) => type === 'table' && !name.startsWith('sqlite_'),
);
const columnsOf = (table: string) => made.pragma(`table_info(${table})`) as Column[];

describe('the schema', () => {
  test('holds tables', () => expect(tables.length).toBeGreaterThan(30));

  test.each(tables)('$name is STRICT', ({ strict }) => expect(strict).toBe(1));

  test('names as append-only what its own comments name', () => {
    // A comment above a table that begins with the word speaks of that table.
    const said = migrations.flatMap(({ sql }) =>
      [...sql.matchAll(/^-- append-only[^\n]*\nCREATE TABLE (\w+)/gm)].map(([, table]) => table),
    );
    expect(said.toSorted()).toEqual([...APPEND_ONLY].toSorted());
  });
});

describe('append-only, tried with rows of a visit', () => {
  test.each(tables)('$name holds a row', ({ name }) => {
    expect(raw.prepare(`SELECT count(*) AS n FROM ${name}`).get()).not.toEqual({ n: 0 });
  });

  test.each(APPEND_ONLY)('%s refuses a change of any column', (table) => {
    for (const { name } of columnsOf(table))
      expect(() => raw.exec(`UPDATE ${table} SET ${name} = ${name}`)).toThrow(`${table} is append-only`);
  });

  test.each(APPEND_ONLY)('%s refuses that a row goes', (table) => {
    const rowid = (raw.prepare(`SELECT min(rowid) AS rowid FROM ${table}`).get() as { rowid: number }).rowid;
    const remove = raw.prepare(`DELETE FROM ${table} WHERE rowid = ?`);
    expect(() => remove.run(rowid)).toThrow(`${table} is append-only`);
    const again = columnsOf(table).map(({ name }) => name);
    const upsert = `INSERT INTO ${table} SELECT * FROM ${table} WHERE true ON CONFLICT DO UPDATE SET ${again[1]} = ${again[1]}`;
    expect(() => raw.exec(upsert)).toThrow(`${table} is append-only`);
    expect(() => raw.exec(`INSERT OR REPLACE INTO ${table} SELECT * FROM ${table}`)).toThrow(`${table} is append-only`);
  });

  test('the other tables take a change', () => {
    for (const { name } of tables.filter((one) => !(APPEND_ONLY as readonly string[]).includes(one.name))) {
      const column = columnsOf(name).at(-1)?.name ?? '';
      expect(() => raw.exec(`UPDATE ${name} SET ${column} = ${column}`)).not.toThrow();
    }
  });
});

const text = (file: string) => readFileSync(new URL(`../../db/${file}`, import.meta.url), 'utf8');
const rows = ['bench', 'desk', 'order', 'record', 'standing'].map((name) => text(`rows/${name}.ts`)).join('\n');

/** The interfaces of db/rows as text: name, then its fields with their types as written. */
const written = new Map(
  [...rows.matchAll(/^export interface (\w+) \{\n([^}]*)\}/gm)].map(([, name = '', body = '']) => [
    name,
    [...body.matchAll(/^ {2}(\w+): ([^;]+);$/gm)].map(([, field = '', type = '']) => ({ field, type })),
  ]),
);
const aliases = new Map(
  [...rows.matchAll(/^export type (\w+) = ([^;]+);/gm)].map(([, name = '', type = '']) => [name, type]),
);
const rowOf = new Map(
  [...(/interface Tables \{([^}]*)\}/.exec(text('tables.ts'))?.[1] ?? '').matchAll(/(\w+): (\w+);/g)].map(
    ([, table = '', row = '']) => [table, row],
  ),
);

interface Kind {
  readonly type: string;
  readonly notnull: 0 | 1;
  /** What alone may stand there, sorted; null: anything of the type. */
  readonly only: readonly string[] | null;
}

/** A TypeScript type as a column: Bit is an integer of 0 and 1, a union of texts a text of those. */
function columnKind(typed: string): Kind {
  const parts = typed.split(' | ').flatMap((part) => (aliases.get(part) ?? part).split(' | '));
  const values = parts.filter((part) => part !== 'null');
  const notnull = values.length === parts.length ? 1 : 0;
  if (values.every((value) => value.startsWith("'")))
    return { type: 'TEXT', notnull, only: values.map((value) => value.slice(1, -1)).toSorted() };
  const [value] = values;
  if (values.length !== 1 || value === undefined) throw new Error(`No kind of column: ${typed}`);
  if (value === 'Bit') return { type: 'INTEGER', notnull, only: ['0', '1'] };
  const type = new Map([
    ['string', 'TEXT'],
    ['number', 'INTEGER'],
  ]).get(value);
  if (type === undefined) throw new Error(`No kind of column: ${typed}`);
  return { type, notnull, only: null };
}

/** The values that a CHECK of the schema allows a column, sorted; null where it names none. */
function allowed(table: string, column: string): string[] | null {
  const { sql } = made.prepare('SELECT sql FROM sqlite_schema WHERE name = ?').get(table) as { sql: string };
  const list = new RegExp(`CHECK \\(${column} (?:IN \\(([^)]*)\\)|= ('[^']*'))\\)`).exec(sql);
  const values = list?.[1] ?? list?.[2];
  return values === undefined
    ? null
    : values
        .split(', ')
        .map((value) => value.replaceAll("'", ''))
        .toSorted();
}

describe('the rows as the program reads them', () => {
  test('are read from every table and no other', () => {
    expect([...rowOf.keys()].toSorted()).toEqual(tables.map(({ name }) => name).toSorted());
    expect([...rowOf.values()].toSorted()).toEqual([...written.keys()].toSorted());
  });

  test.each(tables)('$name agrees column for column', ({ name: table }) => {
    const fields = written.get(rowOf.get(table) ?? '') ?? [];
    expect(fields.map(({ field, type }) => ({ field, ...columnKind(type) }))).toEqual(
      columnsOf(table).map(({ name, type, notnull, pk }) => ({
        field: name,
        type,
        // A key of a STRICT table is never null, also where it does not say so.
        notnull: pk > 0 ? 1 : notnull,
        only: allowed(table, name),
      })),
    );
  });
});
