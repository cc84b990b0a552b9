import { closeSync, constants, fdatasyncSync, openSync, readFileSync, writeSync } from 'node:fs';
import { mapSqliteError } from './errors.ts';
import type { ShopPaths } from './folder.ts';

/** The trail's last number and hash. */
export interface TrailNote {
  readonly n: number;
  readonly hash: string;
}

// One record of fixed length, written over the old one: it lies within one sector of the disk, so it is there whole or not
// at all, and costs a hundredth of a new file put in its place (1 against 114 microseconds when tried).
const BYTES = 128;

/**
 * The trail's note outside the database: written after each commit, made durable only at checkpoints. So after a power cut
 * it may be behind the database, which is normal; ahead of it means that commits were lost.
 */
export class NoteFile {
  readonly #file: number;
  #open = true;

  /** Opens or makes the note. Throws ShopReadOnly, ShopDiskFull. */
  constructor(paths: ShopPaths) {
    try {
      this.#file = openSync(paths.note, constants.O_RDWR | constants.O_CREAT, 0o600);
    } catch (error) {
      throw mapSqliteError(error, paths.note);
    }
  }

  /** After the commit of trail row `n`; not durable by itself. */
  write(note: TrailNote): void {
    const text = JSON.stringify({ n: note.n, hash: note.hash });
    if (text.length >= BYTES) throw new Error('the note is longer than its place');
    writeSync(this.#file, `${text.padEnd(BYTES - 1)}\n`, 0);
  }

  /** Makes what was written last a power cut; at checkpoints and at close. */
  flush(): void {
    fdatasyncSync(this.#file);
  }

  /** Flushes and closes. Twice is no harm. */
  close(): void {
    if (!this.#open) return;
    this.#open = false;
    this.flush();
    closeSync(this.#file);
  }
}

/** What the note says; null when there is none or it cannot be read (a new shop, a folder put together by hand). */
export function readNote(paths: ShopPaths): TrailNote | null {
  try {
    const read: unknown = JSON.parse(readFileSync(paths.note, 'utf8'));
    if (typeof read !== 'object' || read === null) return null;
    const { n, hash } = read as Record<string, unknown>;
    return typeof n === 'number' && Number.isSafeInteger(n) && n >= 1 && typeof hash === 'string' ? { n, hash } : null;
  } catch {
    return null;
  }
}

/** How the note stands to the trail. */
export type NoteFinding =
  | { readonly found: 'agrees' | 'no-note' }
  /** Normal after a power cut. */
  | { readonly found: 'note-behind'; readonly by: number }
  /** Commits that were answered as saved are gone: reported. */
  | { readonly found: 'note-ahead'; readonly lost: number; readonly note: TrailNote }
  /** Row `n` is there with another hash: this is not the file that the note was written for, or it was altered. */
  | { readonly found: 'differs'; readonly note: TrailNote; readonly hash: string | null };

/** Compares the note with the trail; `last` is the trail's last row, `hashAt` looks up the hash of row n. */
export function compareNote(
  note: TrailNote | null,
  last: TrailNote | null,
  hashAt: (n: number) => string | null,
): NoteFinding {
  if (!note) return { found: 'no-note' };
  const lastN = last?.n ?? 0;
  if (note.n > lastN) return { found: 'note-ahead', lost: note.n - lastN, note };
  const hash = hashAt(note.n);
  if (hash !== note.hash) return { found: 'differs', note, hash };
  return note.n === lastN ? { found: 'agrees' } : { found: 'note-behind', by: lastN - note.n };
}
