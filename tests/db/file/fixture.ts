import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { type Connection, openConnection } from '../../../db/file/connection.ts';
import type { Migration } from '../../../db/file/migrate.ts';

/** A small shop of its own for these tests: a command adds a line and its trail row in one transaction. */
export const migrations: readonly Migration[] = [
  {
    version: 1,
    name: 'first',
    sql: `CREATE TABLE work_order (id INTEGER PRIMARY KEY, words TEXT NOT NULL) STRICT;
      CREATE TABLE line (id INTEGER PRIMARY KEY, work_order_id INTEGER NOT NULL REFERENCES work_order, words TEXT NOT NULL) STRICT;
      CREATE INDEX line_order ON line (work_order_id);
      CREATE TABLE trail (n INTEGER PRIMARY KEY, hash TEXT NOT NULL) STRICT;`,
  },
  { version: 2, name: 'mileage', sql: 'ALTER TABLE work_order ADD COLUMN mileage INTEGER' },
];

/** The tables above as Kysely sees them. */
export interface SmallTables {
  work_order: { id: number; words: string };
  line: { id: number; work_order_id: number; words: string };
  trail: { n: number; hash: string };
}

export const AT = Date.UTC(2026, 10, 20, 15, 42);
export const ZONE = 'Europe/Amsterdam';

/** A new folder that goes away with the test. */
export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-file-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Opens and closes with the test. */
export function opened(path: string, options: Parameters<typeof openConnection>[1] = {}): Connection {
  const raw = openConnection(path, options);
  onTestFinished(() => {
    raw.close();
  });
  return raw;
}

/** A file with schema 1, one order and as many lines as asked for; closed. */
export function makeShopFile(path: string, lines: number): void {
  const raw = openConnection(path, { create: true });
  try {
    raw.exec(
      'CREATE TABLE schema_version (version INTEGER PRIMARY KEY, name TEXT NOT NULL, at INTEGER NOT NULL) STRICT',
    );
    raw.prepare("INSERT INTO schema_version VALUES (1, 'first', ?)").run(AT);
    raw.exec(migrations[0]?.sql ?? '');
    raw.exec("INSERT INTO work_order (id, words) VALUES (1, 'rear axle whines at 80')");
    const add = raw.prepare('INSERT INTO line (work_order_id, words) VALUES (1, ?)');
    raw.transaction(() => {
      for (let n = 1; n <= lines; n += 1) add.run(`line ${n} ${'gear oil and shims '.repeat(8)}`);
    })();
    raw.pragma('wal_checkpoint(TRUNCATE)');
  } finally {
    raw.close();
  }
}

/** How many rows of a table. */
export function count(raw: Connection, table: keyof SmallTables): number {
  return raw.prepare<[], { n: number }>(`SELECT count(*) AS n FROM ${table}`).get()?.n ?? -1;
}
