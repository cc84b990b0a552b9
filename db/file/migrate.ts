import type { Connection } from './connection.ts';
import { mapSqliteError, ShopDamaged, ShopNewer } from './errors.ts';

/** One step of the schema, run once on every shop. Versions are 1, 2, 3 … without gaps. */
export interface Migration {
  readonly version: number;
  readonly name: string;
  readonly sql: string;
}

export interface MigrateOptions {
  /** The instant that is recorded, epoch ms. */
  readonly at: number;
  /** Makes and checks a copy of a shop that has data, before the first step. If it throws, nothing is migrated. */
  readonly copyFirst: (from: number, to: number) => Promise<unknown>;
}

const RECORD = `CREATE TABLE IF NOT EXISTS schema_version (
  version INTEGER PRIMARY KEY, name TEXT NOT NULL, at INTEGER NOT NULL
) STRICT`;

/** The schema's version of this file; 0 for an empty one. Throws ShopDamaged for a database that is no shop. */
export function schemaVersion(raw: Connection): number {
  const tables = raw.prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table'").all();
  if (tables.length === 0) return 0;
  if (!tables.some((table) => table.name === 'schema_version')) {
    throw new ShopDamaged('not-a-shop', `${raw.name}: a database, but not of a shop (${tables[0]?.name} …)`);
  }
  const row = raw.prepare<[], { version: number | null }>('SELECT max(version) AS version FROM schema_version').get();
  return row?.version ?? 0;
}

/**
 * Brings the schema up to the last of `migrations`, each step in one transaction with its own record. Returns the
 * versions gone through. Throws ShopNewer (and touches nothing) when the file is ahead of the program.
 */
export async function migrate(
  raw: Connection,
  migrations: readonly Migration[],
  options: MigrateOptions,
): Promise<{ readonly from: number; readonly to: number }> {
  migrations.forEach((migration, index) => {
    if (migration.version !== index + 1) throw new Error(`migration ${migration.name} must be number ${index + 1}`);
  });
  const from = schemaVersion(raw);
  const to = migrations.length;
  if (from > to) throw new ShopNewer(from, to);
  if (from === to) return { from, to };
  if (from > 0) await options.copyFirst(from, to);
  try {
    for (const migration of migrations.slice(from)) runOne(raw, migration, options.at);
  } catch (error) {
    throw mapSqliteError(error, raw.name);
  }
  return { from, to };
}

function runOne(raw: Connection, migration: Migration, at: number): void {
  // A table can only be rebuilt with references off, and that cannot be said inside a transaction: checked before the end.
  raw.pragma('foreign_keys = OFF');
  try {
    raw.exec('BEGIN IMMEDIATE');
    raw.exec(RECORD);
    raw.exec(migration.sql);
    if (!raw.inTransaction) throw new Error(`migration ${migration.name} ends its own transaction`);
    const orphans = raw.pragma('foreign_key_check') as readonly unknown[];
    if (orphans.length > 0) throw new Error(`migration ${migration.name} leaves ${orphans.length} broken references`);
    raw
      .prepare('INSERT INTO schema_version (version, name, at) VALUES (?, ?, ?)')
      .run(migration.version, migration.name, at);
    raw.exec('COMMIT');
  } catch (error) {
    if (raw.inTransaction) raw.exec('ROLLBACK');
    throw error;
  } finally {
    raw.pragma('foreign_keys = ON');
  }
}
