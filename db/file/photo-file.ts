import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import type { Picture } from '../../core/photo/picture.ts';
import { mapSqliteError, ShopDamaged } from './errors.ts';
import { hashFile } from './file-hash.ts';
import { shopPaths, syncFolder } from './folder.ts';

const ENDINGS = { jpeg: 'jpg', png: 'png', webp: 'webp' } as const;

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Where a photo lies: in `photos/`, named by the hash of its content. */
export const photoPath = (folder: string, hash: string, kind: Picture['kind']): string =>
  join(shopPaths(folder).photos, `${hash}.${ENDINGS[kind]}`);

/**
 * Writes a photo so that it outlasts a power cut, before any row names it; one that is there whole is left alone.
 * Returns its SHA-256, hex. Throws ShopDiskFull, ShopReadOnly.
 */
export function keepPhoto(folder: string, kind: Picture['kind'], bytes: Uint8Array): string {
  const hash = sha256(bytes);
  const path = photoPath(folder, hash, kind);
  if (existsSync(path) && hashFile(path) === hash) return hash;
  const part = `${path}.part`;
  try {
    mkdirSync(shopPaths(folder).photos, { recursive: true, mode: 0o700 });
    const file = openSync(part, 'w', 0o600);
    try {
      for (let written = 0; written < bytes.length; ) written += writeSync(file, bytes, written);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(part, path);
    syncFolder(shopPaths(folder).photos);
  } catch (error) {
    rmSync(part, { force: true });
    throw mapSqliteError(error, path);
  }
  return hash;
}

/** The bytes of a photo, as they were kept. Throws ShopDamaged where the file is gone or is not what its name says. */
export function readPhoto(folder: string, hash: string, kind: Picture['kind']): Buffer {
  const path = photoPath(folder, hash, kind);
  if (!existsSync(path)) throw new ShopDamaged('changed', `photo ${hash} is gone`);
  const bytes = readFileSync(path);
  if (sha256(bytes) !== hash) throw new ShopDamaged('changed', `photo ${hash}`);
  return bytes;
}
