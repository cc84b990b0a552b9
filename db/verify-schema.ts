import Database from 'better-sqlite3';
import { sql } from 'kysely';
import type { Tx } from './context.ts';
import { migrations } from './schema/migrations.ts';
import type { Fault } from './verify.ts';

/** A table, index or trigger as SQLite keeps it. */
interface Made {
  readonly type: string;
  readonly name: string;
  readonly table: string;
  readonly text: string;
}

const ALL = "SELECT type, name, tbl_name AS 'table', sql AS text FROM sqlite_schema WHERE sql IS NOT NULL";

/** The text without remarks, quotes and runs of space: what is left says what it does. */
const bare = (text: string): string =>
  text
    .replace(/--[^\n]*/g, '')
    .replaceAll('"', '')
    .replace(/\s+/g, ' ')
    .trim();

/** Kept by SQLite itself, or by the step that notes the version: no migration makes them. */
const others = (name: string): boolean => name.startsWith('sqlite_') || name === 'schema_version';

const byName = (all: readonly Made[]): Map<string, Made> =>
  new Map(all.filter(({ name }) => !others(name)).map((one) => [`${one.type} ${one.name}`, one]));

/** What the migrations make, all of them run on an empty database. */
function expected(): Map<string, Made> {
  const empty = new Database(':memory:');
  try {
    for (const migration of migrations) empty.exec(migration.sql);
    return byName(empty.prepare<[], Made>(ALL).all());
  } finally {
    empty.close();
  }
}

/**
 * Compares tables, indexes and triggers with what the migrations make. Names the first that is gone, changed or put in,
 * and how many more there are: one of them missing lets rows be changed that never should.
 */
export async function verifySchema(tx: Tx): Promise<Fault[]> {
  const wanted = expected();
  const here = byName((await sql.raw<Made>(ALL).execute(tx)).rows);
  const off = [
    ...[...wanted].flatMap(([key, one]) => {
      const found = here.get(key);
      if (found === undefined) return [{ what: 'schema-missing', one }];
      return bare(found.text) === bare(one.text) ? [] : [{ what: 'schema-changed', one }];
    }),
    ...[...here].flatMap(([key, one]) => (wanted.has(key) ? [] : [{ what: 'schema-unknown', one }])),
  ];
  const [first] = off;
  if (first === undefined) return [];
  const { what, one } = first;
  const more = off.length > 1 ? `${one.type}, and ${off.length - 1} more` : one.type;
  return [{ what, table: one.table, row: one.name, detail: more }];
}
