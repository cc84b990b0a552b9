import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';

/** SHA-256 of a file, hex, read in pieces of 1 MB. Not for the live database: closing it drops this process's locks. */
export function hashFile(path: string): string {
  const hash = createHash('sha256');
  const piece = Buffer.allocUnsafe(1_048_576);
  const file = openSync(path, 'r');
  try {
    for (let read = readSync(file, piece); read > 0; read = readSync(file, piece)) hash.update(piece.subarray(0, read));
  } finally {
    closeSync(file);
  }
  return hash.digest('hex');
}
