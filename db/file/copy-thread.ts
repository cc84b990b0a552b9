import { closeSync, constants, copyFileSync, fsyncSync, mkdirSync, openSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import Database from 'better-sqlite3';
import { checkContent, openConnection } from './connection.ts';
import { codeOf, type Damage, ShopDamaged } from './errors.ts';
import { hashFile } from './file-hash.ts';
import { schemaVersion } from './migrate.ts';
import type { TrailNote } from './note.ts';
import { trailEnd, trailHashAt } from './trail-end.ts';

/** What the thread is asked to do. */
export interface CopyTask {
  readonly from: string;
  /** A name that nothing has yet. */
  readonly to: string;
  readonly depth: 'quick' | 'whole';
  /** Folders whose files are copied as well, each with the folder they go to; files already there stay. */
  readonly folders: readonly { readonly from: string; readonly to: string }[];
}

export interface CopyResult {
  readonly sha256: string;
  readonly bytes: number;
  readonly schemaVersion: number;
  /** Where the trail ends in the copy; null where nothing has been done yet. */
  readonly trail: TrailNote | null;
  readonly files: number;
}

/** What the thread says, as JSON text: text crosses the border of threads cheaper than objects. */
export type CopyWord =
  | { readonly say: 'phase'; readonly phase: 'check' | 'hash' | 'files'; readonly done: number; readonly total: number }
  | { readonly say: 'done'; readonly result: CopyResult }
  | { readonly say: 'damaged'; readonly found: Damage; readonly detail: string }
  | { readonly say: 'failed'; readonly code: string; readonly message: string };

// Large enough for any file: the whole copy is one step. In small steps beside a writer it would begin anew for ever.
const ALL_PAGES = 0x7fff_ffff;

async function copy(task: CopyTask, tell: (word: CopyWord) => void): Promise<CopyResult> {
  const source = openConnection(task.from, { readonly: true });
  let before: TrailNote | null;
  try {
    before = trailEnd(source);
    await source.backup(task.to, { progress: () => ALL_PAGES });
  } finally {
    source.close();
  }
  tell({ say: 'phase', phase: 'check', done: 0, total: 1 });
  const { version, trail } = settleAndCheck(task, before);
  tell({ say: 'phase', phase: 'hash', done: 0, total: 1 });
  syncFile(task.to);
  const sha256 = hashFile(task.to);
  const files = copyFolders(task, tell);
  return { sha256, bytes: statSync(task.to).size, schemaVersion: version, trail, files };
}

/**
 * Makes the copy one file without a log, so that it can be read from a stick that cannot be written, and checks it: every
 * page, and that its trail goes through the row that was the shop's last when the copy began.
 */
function settleAndCheck(task: CopyTask, before: TrailNote | null): { version: number; trail: TrailNote | null } {
  const copied = new Database(task.to);
  try {
    copied.pragma('synchronous = FULL');
    copied.pragma('journal_mode = DELETE');
    checkContent(copied, task.depth);
    if (before !== null && trailHashAt(copied, before.n) !== before.hash)
      throw new ShopDamaged(
        'changed',
        `${task.to}: its trail does not hold row ${before.n} of the shop that was copied`,
      );
    return { version: schemaVersion(copied), trail: trailEnd(copied) };
  } finally {
    copied.close();
  }
}

function copyFolders(task: CopyTask, tell: (word: CopyWord) => void): number {
  const files = task.folders.flatMap(({ from, to }) => {
    mkdirSync(to, { recursive: true });
    const entries = readdirSync(from, { withFileTypes: true, recursive: true });
    for (const entry of entries) {
      if (entry.isDirectory())
        mkdirSync(join(to, entry.parentPath.slice(from.length), entry.name), { recursive: true });
    }
    return entries
      .filter((entry) => entry.isFile())
      .map((entry) => ({
        from: join(entry.parentPath, entry.name),
        to: join(to, entry.parentPath.slice(from.length), entry.name),
      }));
  });
  let copied = 0;
  files.forEach((file, index) => {
    tell({ say: 'phase', phase: 'files', done: index, total: files.length });
    try {
      copyFileSync(file.from, file.to, constants.COPYFILE_EXCL);
      syncFile(file.to);
      copied += 1;
    } catch (error) {
      if (codeOf(error) !== 'EEXIST') throw error;
    }
  });
  return copied;
}

function syncFile(path: string): void {
  const file = openSync(path, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

async function run(port: NonNullable<typeof parentPort>): Promise<void> {
  const tell = (word: CopyWord) => port.postMessage(JSON.stringify(word));
  try {
    tell({ say: 'done', result: await copy(workerData as CopyTask, tell) });
  } catch (error) {
    if (error instanceof ShopDamaged) tell({ say: 'damaged', found: error.found, detail: error.detail });
    else tell({ say: 'failed', code: codeOf(error), message: error instanceof Error ? error.message : String(error) });
  }
}

// The body of a worker thread: run-copy.ts starts it, nothing imports it.
if (parentPort) await run(parentPort);
