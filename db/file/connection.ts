import { closeSync, existsSync, openSync, readSync, statSync } from 'node:fs';
import Database from 'better-sqlite3';
import { codeOf, mapSqliteError, ShopDamaged, ShopMissing, ShopReadOnly } from './errors.ts';

/** One open connection to a shop's file. */
export type Connection = Database.Database;

export interface OpenOptions {
  /** Only reading; nothing is written, not even by a pragma. */
  readonly readonly?: boolean;
  /** Make the file if it is not there. Without it a missing or empty file is an error. */
  readonly create?: boolean;
}

const MAGIC = 'SQLite format 3\0';
const BUSY_MS = 5_000;
const CACHE_KIB = 65_536;

/**
 * Opens a shop's file with everything set that must hold on every connection (better-sqlite3 would leave WAL files at
 * synchronous=NORMAL). Throws ShopMissing, ShopDamaged, ShopReadOnly, ShopDiskFull; never deletes or repairs.
 */
export function openConnection(path: string, options: OpenOptions = {}): Connection {
  const there = existsSync(path);
  if (!there && !options.create) throw new ShopMissing(path);
  if (there && !options.create && statSync(path).size === 0) throw new ShopDamaged('empty', `${path}: 0 bytes`);
  let raw: Connection | undefined;
  try {
    if (!options.readonly && hasContent(`${path}-wal`)) lookFirst(path);
    raw = new Database(path, { readonly: options.readonly ?? false, timeout: BUSY_MS });
    setPragmas(raw, options.readonly ?? false);
    if (!options.readonly) tryWrite(raw);
    return raw;
  } catch (error) {
    raw?.close();
    // A file that is there and cannot be opened: its log cannot be made beside it, the folder is read-only.
    if (codeOf(error) === 'SQLITE_CANTOPEN' && there) throw new ShopReadOnly(path, error);
    const mapped = mapSqliteError(error, path);
    if (mapped instanceof ShopDamaged) diagnose(path);
    throw mapped;
  }
}

function setPragmas(raw: Connection, readonly: boolean): void {
  if (!readonly) raw.pragma('journal_mode = WAL');
  raw.pragma('synchronous = FULL');
  // On macOS an fsync alone leaves the data in the drive's cache; elsewhere this changes nothing.
  raw.pragma('fullfsync = ON');
  raw.pragma('foreign_keys = ON');
  raw.pragma('trusted_schema = OFF');
  // Without this INSERT OR REPLACE takes a row away past the triggers that refuse it.
  raw.pragma('recursive_triggers = ON');
  raw.pragma(`cache_size = -${CACHE_KIB}`);
  readSchema(raw);
}

/**
 * Closing a writer folds the log in and removes it, even where the file turned out to be no database: the log, perhaps all
 * that is left, would be gone. A reader never does that, so it looks first.
 */
function lookFirst(path: string): void {
  const reader = new Database(path, { readonly: true, timeout: BUSY_MS });
  try {
    readSchema(reader);
  } finally {
    reader.close();
  }
}

const hasContent = (path: string): boolean => existsSync(path) && statSync(path).size > 0;

// Reads the schema now, so that a file that is no database says so here and not in the first question.
const readSchema = (raw: Connection): unknown => raw.prepare('SELECT count(*) FROM sqlite_schema').get();

/**
 * A read-only file opens without a word, even for BEGIN IMMEDIATE, and fails at the first write: so one is tried, and
 * rolled back before anything reaches the disk.
 */
function tryWrite(raw: Connection): void {
  try {
    raw.exec('BEGIN IMMEDIATE; PRAGMA user_version = 0; ROLLBACK');
  } catch (error) {
    if (codeOf(error) !== 'SQLITE_BUSY') throw error;
  }
}

/**
 * Names what is wrong with a file that SQLite refused, from its first 100 bytes. Fields as in "Database File Format",
 * sqlite.org/fileformat2.html 1.3: page size at 16, change counter at 24, page count at 28, version-valid-for at 92.
 * Only ever for a file that could not be opened: closing a file lets go of all locks that this process has on it.
 */
function diagnose(path: string): void {
  const { size } = statSync(path);
  const head = Buffer.alloc(100);
  const file = openSync(path, 'r');
  try {
    readSync(file, head, 0, 100, 0);
  } finally {
    closeSync(file);
  }
  if (head.toString('latin1', 0, 16) !== MAGIC) {
    throw new ShopDamaged('not-a-database', `${path}: ${size} bytes that do not begin as an SQLite file does`);
  }
  const stored = head.readUInt16BE(16);
  const pageSize = stored === 1 ? 65_536 : stored;
  const pages = head.readUInt32BE(28);
  const countHolds = head.readUInt32BE(24) === head.readUInt32BE(92);
  if (countHolds && size < pages * pageSize) {
    throw new ShopDamaged('truncated', `${path}: ${size} bytes of ${pages * pageSize} (${pages} pages of ${pageSize})`);
  }
}

/**
 * Walks the whole file. 'quick' leaves out the comparison of indexes with their tables and the references between rows;
 * 'whole' does everything and takes several times as long. Throws ShopDamaged naming the first pages or rows found.
 */
export function checkContent(raw: Connection, depth: 'quick' | 'whole' = 'quick'): void {
  let found: readonly { readonly found: string }[];
  try {
    const rows = raw.pragma(depth === 'quick' ? 'quick_check(20)' : 'integrity_check(20)') as Record<string, string>[];
    found = rows.map((row) => ({ found: Object.values(row)[0] ?? '' }));
  } catch (error) {
    throw mapSqliteError(error, raw.name);
  }
  if (found.length !== 1 || found[0]?.found !== 'ok') {
    throw new ShopDamaged('damaged-page', found.map((row) => row.found).join('; '));
  }
  if (depth === 'quick') return;
  const orphans = raw.pragma('foreign_key_check') as readonly { table: string; rowid: number | null; parent: string }[];
  const first = orphans[0];
  if (first) {
    const where = `${first.table} row ${first.rowid ?? '?'} points at a ${first.parent} that is not there`;
    throw new ShopDamaged('broken-references', `${where} (${orphans.length} in all)`);
  }
}

/**
 * Folds the write-ahead log into the file. 'whole' empties it and waits for readers (a copy being made), 'what goes' folds
 * in what can be at once. Returns whether all of it could be folded in.
 */
export function checkpoint(raw: Connection, how: 'whole' | 'what goes' = 'whole'): boolean {
  const rows = raw.pragma(`wal_checkpoint(${how === 'whole' ? 'TRUNCATE' : 'PASSIVE'})`) as readonly { busy: number }[];
  return rows[0]?.busy === 0;
}

/** Folds the log in and closes, so that the shop at rest is one file. */
export function closeConnection(raw: Connection): void {
  if (!raw.open) return;
  try {
    if (!raw.readonly) checkpoint(raw);
  } finally {
    raw.close();
  }
}
