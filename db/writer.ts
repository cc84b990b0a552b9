import { type Kysely, sql, type Transaction } from 'kysely';
import { digestOf } from './digest.ts';
import { notFound, Refusal } from './refusal.ts';
import { type Followed, keyOf, type Tables } from './tables.ts';

/** One change as the trail keeps it: columns before and after, and the digest of the whole row as it then stood. */
export interface Change {
  readonly t: Followed | 'trail';
  readonly id: string;
  /** Columns whose values were taken out: what they were is kept nowhere. */
  readonly out?: readonly string[];
  readonly was?: Record<string, unknown>;
  readonly now?: Record<string, unknown>;
  /** null: the row is gone (only an open clock ever goes). */
  readonly d: string | null;
}

type Row = Record<string, unknown>;
/** Tables whose rows may come from a file, and be taken back with it. */
export type BroughtIn = 'customer' | 'car' | 'car_plate' | 'car_owner' | 'past_visit';

/** Whether the database refused since another row names this one (in SQLite's words and in PostgreSQL's). */
const isNamed = (fault: unknown): boolean =>
  fault instanceof Error &&
  'code' in fault &&
  (fault.code === 'SQLITE_CONSTRAINT_FOREIGNKEY' || fault.code === '23503');

/**
 * The only way to write: every row that goes in or changes is read back and noted for the trail, so that nothing is
 * written that the trail does not know of.
 */
export class Writer {
  readonly changes: Change[] = [];
  // The table name is a parameter here, which Kysely's per-table types cannot follow; callers are typed, the inside is loose.
  readonly #tx: Kysely<Record<string, Row>>;

  constructor(tx: Transaction<Tables>) {
    this.#tx = tx as unknown as Kysely<Record<string, Row>>;
  }

  /** Adds a row. */
  async insert<T extends Followed>(table: T, row: Tables[T]): Promise<void> {
    const name: string = table;
    const kept = await this.#tx
      .insertInto(name)
      .values(row as unknown as Row)
      .returningAll()
      .executeTakeFirstOrThrow();
    this.changes.push({ t: table, id: String(kept[keyOf(table)]), d: digestOf(kept) });
  }

  /** Adds many rows of one table at once; not more than a few hundred, since a question has room for so many values only. */
  async insertMany<T extends Followed>(table: T, rows: readonly Tables[T][]): Promise<void> {
    if (rows.length === 0) return;
    const name: string = table;
    const kept = await this.#tx
      .insertInto(name)
      .values(rows as unknown as Row[])
      .returningAll()
      .execute();
    const key = keyOf(table);
    for (const row of kept) this.changes.push({ t: table, id: String(row[key]), d: digestOf(row) });
  }

  /** Changes columns of a row that is known to be there. */
  async update<T extends Followed>(table: T, id: string, patch: Partial<Tables[T]>): Promise<void> {
    const key = keyOf(table);
    const name: string = table;
    const before = await this.#tx.selectFrom(name).selectAll().where(key, '=', id).executeTakeFirst();
    if (!before) throw notFound(table, id);
    const after = await this.#tx
      .updateTable(name)
      .set(patch as unknown as Row)
      .where(key, '=', id)
      .returningAll()
      .executeTakeFirstOrThrow();
    const was: Row = {};
    const now: Row = {};
    for (const column of Object.keys(after)) {
      if (before[column] !== after[column]) {
        was[column] = before[column];
        now[column] = after[column];
      }
    }
    // A code's hash is nobody's to read in the trail.
    if ('code_hash' in now) {
      was.code_hash = '(kept)';
      now.code_hash = '(changed)';
    }
    this.changes.push({ t: table, id, was, now, d: digestOf(after) });
  }

  /** Takes values out of a row: the trail notes which columns, and the digest of what is left, never the values. */
  async takeOut<T extends Followed>(table: T, id: string, patch: Partial<Tables[T]>): Promise<void> {
    const name: string = table;
    const after = await this.#tx
      .updateTable(name)
      .set(patch as unknown as Row)
      .where(keyOf(table), '=', id)
      .returningAll()
      .executeTakeFirst();
    if (!after) throw notFound(table, id);
    this.changes.push({ t: table, id, out: Object.keys(patch), d: digestOf(after) });
  }

  /** Puts a row of the trail without some of its values in the place of what it noted; its hash and its place stay. */
  async takeOutOfTrail(n: number, changes: string): Promise<void> {
    const after = await this.#tx
      .updateTable('trail')
      .set({ changes })
      .where('n', '=', n)
      .returningAll()
      .executeTakeFirstOrThrow();
    this.changes.push({ t: 'trail', id: String(n), d: digestOf(after) });
  }

  /** Takes an open clock away. Only these and what a file brought in by mistake ever go; the trail keeps what they were. */
  async remove(table: 'clock_open' | BroughtIn, id: string): Promise<void> {
    const name: string = table;
    const gone = await this.#tx.deleteFrom(name).where(keyOf(table), '=', id).returningAll().executeTakeFirst();
    if (!gone) throw notFound(table, id);
    this.changes.push({ t: table, id, was: gone, d: null });
  }

  /** Takes rows that a file brought in away, in this order; none of them where something else names one. Whether they went. */
  async removeUnnamed(rows: readonly { readonly table: BroughtIn; readonly id: string }[]): Promise<boolean> {
    const before = this.changes.length;
    await sql`savepoint brought_in`.execute(this.#tx);
    try {
      for (const { table, id } of rows) await this.remove(table, id);
      await sql`release savepoint brought_in`.execute(this.#tx);
      return true;
    } catch (fault) {
      if (!isNamed(fault)) throw fault;
      await sql`rollback to savepoint brought_in`.execute(this.#tx);
      await sql`release savepoint brought_in`.execute(this.#tx);
      this.changes.length = before;
      return false;
    }
  }

  /**
   * Changes a row that carries a revision, from the revision that the edit started from. If somebody changed it
   * meanwhile nothing is written: both values come back as `changed-meanwhile`. Returns the new revision.
   * @param shown what the row looks like in the contract's words, for that answer
   */
  async edit<T extends Followed>(
    table: T,
    id: string,
    revision: number,
    patch: Partial<Tables[T]>,
    yours: unknown,
    shown: (row: Tables[T]) => unknown,
  ): Promise<number> {
    const name: string = table;
    const row = await this.#tx.selectFrom(name).selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound(table, id);
    if (row.revision !== revision) {
      throw new Refusal({
        code: 'changed-meanwhile',
        what: table,
        id,
        revision: Number(row.revision),
        now: shown(row as unknown as Tables[T]),
        yours,
      });
    }
    await this.update(table, id, { ...patch, revision: revision + 1 } as Partial<Tables[T]>);
    return revision + 1;
  }
}
