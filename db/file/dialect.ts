import type { Statement } from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Driver,
  Kysely,
  SqliteDialect,
  SqliteDriver,
  type Transaction,
  type TransactionSettings,
} from 'kysely';
import { type Connection, closeConnection } from './connection.ts';
import { mapSqliteError } from './errors.ts';

const KEPT_STATEMENTS = 500;

/** Kysely over one connection. One transaction at a time; the others wait for their turn. */
export class ShopDatabase<Tables> {
  /** The connection itself, for pragmas and hand-written SQL in named files. */
  readonly raw: Connection;
  /** Questions outside a transaction. */
  readonly query: Kysely<Tables>;

  constructor(raw: Connection) {
    this.raw = raw;
    this.query = new Kysely<Tables>({ dialect: new ShopDialect(raw) });
  }

  /**
   * Runs `work` in one BEGIN IMMEDIATE transaction (BEGIN on a read-only connection): all of it is kept or none. Only
   * questions to `tx` may be awaited inside. Throws what `work` throws, or ShopDiskFull, ShopReadOnly, ShopDamaged.
   */
  async transaction<R>(work: (tx: Transaction<Tables>) => Promise<R>): Promise<R> {
    try {
      return await this.query.transaction().execute(work);
    } catch (error) {
      throw mapSqliteError(error, this.raw.name);
    }
  }

  /** Folds the log in and closes. */
  async close(): Promise<void> {
    closeConnection(this.raw);
    await this.query.destroy();
  }
}

class ShopDialect extends SqliteDialect {
  readonly #raw: Connection;

  constructor(raw: Connection) {
    super({ database: raw });
    this.#raw = raw;
  }

  override createDriver(): Driver {
    return new ShopDriver(this.#raw);
  }
}

class ShopDriver extends SqliteDriver {
  readonly #raw: Connection;

  constructor(raw: Connection) {
    const statements = new StatementMemory(raw);
    super({ database: { prepare: (sql) => statements.prepare(sql), close: () => raw.close() } });
    this.#raw = raw;
  }

  // IMMEDIATE: a transaction that begins as a reader and then writes can be refused half-way. One that only reads says so,
  // and waits for no writer.
  override async beginTransaction(connection: DatabaseConnection, settings?: TransactionSettings): Promise<void> {
    const reads = this.#raw.readonly || settings?.accessMode === 'read only';
    await connection.executeQuery(CompiledQuery.raw(reads ? 'BEGIN' : 'BEGIN IMMEDIATE'));
  }

  // A full disk makes SQLite roll back by itself; a second ROLLBACK would fail and hide the real error.
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#raw.inTransaction) await connection.executeQuery(CompiledQuery.raw('ROLLBACK'));
  }
}

/** Prepared statements, the last used kept. Preparing anew costs about as much again as a short question. */
export class StatementMemory {
  readonly #raw: Connection;
  readonly #kept = new Map<string, Statement>();

  constructor(raw: Connection) {
    this.#raw = raw;
  }

  /** The statement for this text; a fresh one while the kept one is still handing out rows. */
  prepare(sql: string): Statement {
    const kept = this.#kept.get(sql);
    if (kept?.busy) return this.#raw.prepare(sql);
    const statement = kept ?? this.#raw.prepare(sql);
    // A Map keeps the order of insertion: taken out and put back is the newest.
    this.#kept.delete(sql);
    this.#kept.set(sql, statement);
    const oldest = this.#kept.size > KEPT_STATEMENTS ? this.#kept.keys().next().value : undefined;
    if (oldest !== undefined) this.#kept.delete(oldest);
    return statement;
  }
}
