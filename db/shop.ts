import { appendFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Answer, ShopError } from '../core/contract/errors.ts';
import { codeFits } from './code.ts';
import { type Caller, type CallOptions, dispatch, type House } from './dispatcher.ts';
import { checkContent, openConnection } from './file/connection.ts';
import { ShopDatabase } from './file/dialect.ts';
import { mapSqliteError, ShopFileError } from './file/errors.ts';
import { checkWritable, createShopFolder, isNewShop, placeWarning } from './file/folder.ts';
import { migrate } from './file/migrate.ts';
import { compareNote, NoteFile, readNote } from './file/note.ts';
import { migrations } from './schema/migrations.ts';
import type { Tables } from './tables.ts';

export interface OpenShop {
  readonly folder: string;
  /** Makes a new shop a practice shop; an existing one stays what it was made as. */
  readonly practice?: boolean;
  /** Epoch milliseconds. */
  readonly clock?: () => number;
}

/** A shop that is open: what every door calls. */
export class Shop {
  readonly folder: string;
  readonly practice: boolean;
  readonly #database: ShopDatabase<Tables>;
  readonly #house: House;
  readonly #note: NoteFile;
  readonly #listeners = new Set<(rooms: string[]) => void>();

  constructor(
    database: ShopDatabase<Tables>,
    note: NoteFile,
    options: { folder: string; practice: boolean; warnings: readonly string[]; clock: () => number },
  ) {
    this.folder = options.folder;
    this.practice = options.practice;
    this.#database = database;
    this.#note = note;
    this.#house = {
      db: database.query,
      folder: options.folder,
      practice: options.practice,
      warnings: options.warnings,
      clock: options.clock,
      known: knownError,
      announce: (rooms) => {
        for (const listener of this.#listeners) listener(rooms);
      },
      trailNote: (last) => note.write(last),
      log: (id, fault) => logFault(options.folder, id, fault),
    };
  }

  /** One operation, as somebody, through a device. Never throws for what the closed set of errors covers. */
  call(operation: string, input: unknown, caller: Caller, options: CallOptions = {}): Promise<Answer> {
    return dispatch(this.#house, operation, input, caller, options);
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

  /** Folds the log in and closes the file. */
  async close(): Promise<void> {
    this.#listeners.clear();
    this.#note.close();
    await this.#database.close();
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
 * Opens the shop in a folder, making it if the folder holds none. Throws the errors of db/file: damaged, read-only,
 * disk full, newer than this program. The file is never deleted.
 */
export async function openShop({ folder, practice = false, clock = Date.now }: OpenShop): Promise<Shop> {
  const paths = createShopFolder(folder);
  checkWritable(paths);
  const raw = openConnection(paths.database, { create: isNewShop(paths) });
  try {
    checkContent(raw);
    await migrate(raw, migrations, {
      at: clock(),
      copyFirst: async () => {
        throw new Error('no earlier schema to come from');
      },
    });
    const database = new ShopDatabase<Tables>(raw);
    const shop = await database.query.selectFrom('shop').select('practice').executeTakeFirst();
    const last = await database.query
      .selectFrom('trail')
      .select(['n', 'hash'])
      .orderBy('n', 'desc')
      .limit(1)
      .executeTakeFirst();
    const hashes = raw.prepare<[number], { hash: string }>('SELECT hash FROM trail WHERE n = ?');
    const finding = compareNote(readNote(paths), last ?? null, (n) => hashes.get(n)?.hash ?? null);
    const warnings: string[] = [];
    const place = placeWarning(paths.folder);
    if (place) warnings.push(`${place.kind} ${place.sign}`);
    if (finding.found !== 'agrees' && finding.found !== 'no-note' && finding.found !== 'note-behind')
      warnings.push(finding.found);
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
