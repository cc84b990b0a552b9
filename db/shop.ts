import { appendFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Answer, ShopError } from '../core/contract/errors.ts';
import { StatementRuns } from './books/runs.ts';
import { codeFits } from './code.ts';
import { type Caller, type CallOptions, dispatch, type House } from './dispatcher.ts';
import { copyShop, type ShopCopy } from './file/backup.ts';
import { dropBallast, renewBallast } from './file/ballast.ts';
import { markClosed, takeClosedMark } from './file/clean-mark.ts';
import { checkContent, checkpoint, openConnection } from './file/connection.ts';
import { ShopDatabase } from './file/dialect.ts';
import { mapSqliteError, ShopDiskFull, ShopFileError } from './file/errors.ts';
import { checkWritable, createShopFolder, isNewShop, type ShopPaths, shopPaths } from './file/folder.ts';
import { keepCopy } from './file/keep-copies.ts';
import { type Migration, migrate } from './file/migrate.ts';
import { NoteFile } from './file/note.ts';
import { type Numbers, recordRestored } from './restored.ts';
import { migrations } from './schema/migrations.ts';
import type { Tables } from './tables.ts';
import { findWarnings, type ShopWarning } from './warnings.ts';
import { zoneOf } from './zone.ts';

export interface OpenShop {
  readonly folder: string;
  /** Makes a new shop a practice shop; an existing one stays what it was made as. */
  readonly practice?: boolean;
  /** Epoch milliseconds. */
  readonly clock?: () => number;
  /** The schema's steps; those of this program unless a rehearsal brings its own. */
  readonly steps?: readonly Migration[];
}

/** How long after the last change the log is folded in and the note made durable, in milliseconds. */
const QUIET = 10_000;

/** A shop that is open: what every door calls. */
export class Shop {
  readonly folder: string;
  readonly practice: boolean;
  /** What the start found to warn of. */
  readonly warnings: readonly ShopWarning[];
  readonly #paths: ShopPaths;
  #quiet: NodeJS.Timeout | undefined;
  readonly #database: ShopDatabase<Tables>;
  readonly #house: House;
  readonly #note: NoteFile;
  readonly #listeners = new Set<(rooms: string[]) => void>();

  constructor(
    database: ShopDatabase<Tables>,
    note: NoteFile,
    options: { folder: string; practice: boolean; warnings: readonly ShopWarning[]; clock: () => number },
  ) {
    this.folder = options.folder;
    this.practice = options.practice;
    this.warnings = options.warnings;
    this.#paths = shopPaths(options.folder);
    this.#database = database;
    this.#note = note;
    this.#house = {
      db: database.query,
      folder: options.folder,
      practice: options.practice,
      warnings: options.warnings,
      clock: options.clock,
      runs: new StatementRuns(
        options.clock,
        () => this.#house.announce(['statement']),
        (fault) => logFault(options.folder, 'statements', fault),
      ),
      known: knownError,
      announce: (rooms) => {
        for (const listener of this.#listeners) listener(rooms);
      },
      trailNote: (last) => this.#noted(last),
      log: (id, fault) => logFault(options.folder, id, fault),
    };
  }

  /** One operation, as somebody, through a device. Never throws for what the closed set of errors covers. */
  async call(operation: string, input: unknown, caller: Caller, options: CallOptions = {}): Promise<Answer> {
    const answer = await dispatch(this.#house, operation, input, caller, options);
    // What was refused stays refused: whoever asked is told now, and the next find a little room.
    if (!answer.ok && answer.error.code === 'disk-full') dropBallast(this.#paths);
    return answer;
  }

  /** Whether the person (by id or name) has this code; the answer names them. */
  async enter(person: string, code: string): Promise<Answer> {
    const rows = await this.#database.query
      .selectFrom('person')
      .select(['id', 'name', 'role', 'code_hash'])
      .where('active', '=', 1)
      .where((on) => on.or([on('id', '=', person), on('name', '=', person)]))
      .execute();
    const found = rows.find((row) => codeFits(code, row.code_hash));
    if (!found) return { ok: false, error: { code: 'not-allowed', why: 'code' } };
    return { ok: true, output: { personId: found.id, name: found.name, role: found.role } };
  }

  /** Tells of every change, by room; returns the way to stop. */
  onChange(listener: (rooms: string[]) => void): () => void {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  }

  /** After a commit: the note outside is written, and made durable once nothing is being done. */
  #noted(last: { n: number; hash: string }): void {
    try {
      this.#note.write(last);
    } catch (fault) {
      // The commit stands. A note that is behind is normal.
      logFault(this.folder, 'trail-note', fault);
    }
    clearTimeout(this.#quiet);
    this.#quiet = setTimeout(() => this.settle(), QUIET).unref();
  }

  /** Folds the log in as far as it goes, makes the note durable, lays lost ballast again. Between changes, by itself. */
  settle(): void {
    if (this.#database.raw.inTransaction) {
      this.#quiet = setTimeout(() => this.settle(), QUIET).unref();
      return;
    }
    try {
      checkpoint(this.#database.raw, 'what goes');
      this.#note.flush();
    } catch (fault) {
      logFault(this.folder, 'checkpoint', fault);
    }
    renewBallast(this.#paths);
  }

  /**
   * Makes a checked copy in `backups/` when something was done since the last one and that is older than `notWithin`
   * milliseconds. Returns it, or null where there was nothing to copy. Throws the errors of db/file.
   */
  keepCopy(notWithin = 0): Promise<ShopCopy | null> {
    const zone = zoneOf(this.#database.raw);
    return keepCopy({ folder: this.folder, at: this.#house.clock(), zone, notWithin });
  }

  /**
   * After a copy was brought back: notes it in the trail and lifts the invoice numbers over the last one that stands on
   * paper. Returns how they stand, or null where the shop is not set up.
   */
  async restored(lastInvoice: number | null): Promise<Numbers | null> {
    const done = await recordRestored(this.#database.query, lastInvoice, this.#house.clock());
    if (done) this.#noted(done.trail);
    return done?.numbers ?? null;
  }

  /** Folds the log in, makes the note durable, and closes the file. Twice is no harm. */
  async close(): Promise<void> {
    this.#listeners.clear();
    clearTimeout(this.#quiet);
    await this.#house.runs.close();
    const wasOpen = this.#database.raw.open;
    await this.#database.close();
    this.#note.close();
    if (wasOpen) markClosed(this.#paths);
  }
}

function knownError(fault: unknown): ShopError | null {
  const error = mapSqliteError(fault);
  if (!(error instanceof ShopFileError)) return null;
  if (error.code === 'disk-full') return { code: 'disk-full' };
  if (error.code === 'read-only') return { code: 'read-only' };
  if (error.code === 'damaged') return { code: 'damaged', detail: error.message };
  return null;
}

function logFault(folder: string, id: string, fault: unknown): void {
  const text = fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
  try {
    appendFileSync(join(folder, 'faults.log'), `${new Date().toISOString()} ${id} ${text}\n`);
  } catch {
    // A fault that cannot be written down must not hide the one that is being answered.
  }
}

/**
 * Opens the shop in a folder, making it if the folder holds none; a shop of an earlier program is copied, the copy checked
 * whole, and then brought up to date. Throws the errors of db/file: damaged, read-only, disk full, newer than this program.
 * The file is never deleted.
 */
export async function openShop(options: OpenShop): Promise<Shop> {
  const { folder, practice = false, clock = Date.now, steps = migrations } = options;
  const paths = createShopFolder(folder);
  makeWritable(paths);
  const isNew = isNewShop(paths);
  if (!isNew && !takeClosedMark(paths)) lookAtIt(paths);
  const raw = openConnection(paths.database, { create: isNew });
  try {
    const copyFirst = () =>
      copyShop({ from: paths.folder, to: paths.backups, at: clock(), zone: zoneOf(raw), depth: 'whole' });
    await migrate(raw, steps, { at: clock(), copyFirst });
    const warnings = findWarnings(paths, raw);
    for (const { what, with: figures } of warnings) logFault(paths.folder, what, JSON.stringify(figures));
    if (!renewBallast(paths)) warnings.push({ what: 'no-ballast', with: {} });
    const database = new ShopDatabase<Tables>(raw);
    const shop = await database.query.selectFrom('shop').select('practice').executeTakeFirst();
    return new Shop(database, new NoteFile(paths), {
      folder: paths.folder,
      practice: shop ? shop.practice === 1 : practice,
      warnings,
      clock,
    });
  } catch (error) {
    raw.close();
    throw error;
  }
}

/** Checks the file by reading alone: closing a writer would fold the log into a file that may be past saving. */
function lookAtIt(paths: ShopPaths): void {
  const reader = openConnection(paths.database, { readonly: true });
  try {
    checkContent(reader);
  } finally {
    reader.close();
  }
}

/** Tries to write. On a full disk the ballast goes, so that the shop can be opened at least. */
function makeWritable(paths: ShopPaths): void {
  try {
    checkWritable(paths);
  } catch (error) {
    if (!(error instanceof ShopDiskFull) || !dropBallast(paths)) throw error;
    checkWritable(paths);
  }
}
