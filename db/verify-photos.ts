import { existsSync } from 'node:fs';
import { basename } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Tx } from './context.ts';
import { hashFile } from './file/file-hash.ts';
import { photoPath } from './file/photo-file.ts';
import type { Fault } from './verify.ts';

/** Looks whether the file of every photo is there and is still what its name says. */
export async function verifyPhotos(tx: Tx, folder: string): Promise<Fault[]> {
  const faults: Fault[] = [];
  for (const { id, hash, kind } of await tx.selectFrom('photo').select(['id', 'hash', 'kind']).execute()) {
    const path = photoPath(folder, hash, kind);
    const what = !existsSync(path) ? 'photo-missing' : hashFile(path) === hash ? null : 'photo-changed';
    if (what !== null) faults.push({ what, table: 'photo', row: id, detail: basename(path) });
    // Others may ask something in between.
    await setImmediate();
  }
  return faults;
}
