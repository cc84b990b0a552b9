/** What is wrong with a shop's file or folder. Every one of them leaves the file as it was found. */
export abstract class ShopFileError extends Error {
  abstract readonly code: 'damaged' | 'read-only' | 'disk-full' | 'newer' | 'held' | 'missing' | 'still-open';
}

/** How a file was found damaged. */
export type Damage =
  | 'empty'
  | 'not-a-database'
  | 'truncated'
  | 'damaged-page'
  | 'not-a-shop'
  | 'broken-references'
  | 'changed';

/** The file is not whole. `detail` names what was found (page, table, sizes). It is never deleted. */
export class ShopDamaged extends ShopFileError {
  readonly code = 'damaged';
  readonly found: Damage;
  readonly detail: string;
  constructor(found: Damage, detail: string, cause?: unknown) {
    super(`damaged (${found}): ${detail}`, { cause });
    this.name = 'ShopDamaged';
    this.found = found;
    this.detail = detail;
  }
}

/** The file or the folder cannot be written. */
export class ShopReadOnly extends ShopFileError {
  readonly code = 'read-only';
  readonly path: string;
  constructor(path: string, cause?: unknown) {
    super(`read-only: ${path}`, { cause });
    this.name = 'ShopReadOnly';
    this.path = path;
  }
}

/** There is no room left; what was being written is rolled back. */
export class ShopDiskFull extends ShopFileError {
  readonly code = 'disk-full';
  constructor(cause?: unknown) {
    super('disk full', { cause });
    this.name = 'ShopDiskFull';
  }
}

/** The file was made by a later version of the program, and is left alone. */
export class ShopNewer extends ShopFileError {
  readonly code = 'newer';
  readonly version: number;
  readonly known: number;
  constructor(version: number, known: number) {
    super(`schema ${version} is newer than ${known}, the last that this program knows`);
    this.name = 'ShopNewer';
    this.version = version;
    this.known = known;
  }
}

/** Who has a shop's folder. Kept in a file that only this user can read, because of the key. */
export interface Holder {
  readonly pid: number;
  readonly host: string;
  /** Epoch ms. */
  readonly since: number;
  /** Where its door can be reached, once it is open. */
  readonly address: string | null;
  /** What a second start shows at that door. */
  readonly key: string | null;
}

/**
 * Another process has the shop. `certain` is false when only another machine's name stands on the folder: its process may
 * be long gone, and somebody has to decide. `holder` is null when it has not written down who it is yet.
 */
export class ShopHeld extends ShopFileError {
  readonly code = 'held';
  readonly holder: Holder | null;
  readonly certain: boolean;
  constructor(holder: Holder | null, certain: boolean) {
    super(holder ? `held by process ${holder.pid} on ${holder.host}` : 'held by a process that is just starting');
    this.name = 'ShopHeld';
    this.holder = holder;
    this.certain = certain;
  }
}

/** There is no such file. */
export class ShopMissing extends ShopFileError {
  readonly code = 'missing';
  readonly path: string;
  constructor(path: string) {
    super(`no file at ${path}`);
    this.name = 'ShopMissing';
    this.path = path;
  }
}

/** Something still has the file open, so it cannot be put aside. */
export class ShopStillOpen extends ShopFileError {
  readonly code = 'still-open';
  readonly path: string;
  constructor(path: string) {
    super(`still open: ${path}`);
    this.name = 'ShopStillOpen';
    this.path = path;
  }
}

const FULL = new Set(['SQLITE_FULL', 'SQLITE_IOERR_WRITE', 'SQLITE_IOERR_SHMSIZE', 'ENOSPC', 'EDQUOT']);
const READ_ONLY = new Set(['SQLITE_PERM', 'SQLITE_AUTH', 'EROFS', 'EACCES', 'EPERM']);

/** The code that SQLite or the operating system gave to an error, or ''. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/**
 * SQLite's and the file system's words as ours; an error that is neither comes back as it is. A full disk shows as FULL
 * or as IOERR_WRITE, depending on which file could not grow.
 */
export function mapSqliteError(error: unknown, path = ''): unknown {
  const code = codeOf(error);
  if (error instanceof ShopFileError || !(error instanceof Error) || code === '') return error;
  if (FULL.has(code)) return new ShopDiskFull(error);
  if (READ_ONLY.has(code) || code.startsWith('SQLITE_READONLY')) return new ShopReadOnly(path, error);
  if (code === 'SQLITE_NOTADB') return new ShopDamaged('not-a-database', error.message, error);
  if (code.startsWith('SQLITE_CORRUPT')) return new ShopDamaged('damaged-page', error.message, error);
  return error;
}
