import type { OutputOf } from '../core/contract/index.ts';
import type { Connection } from './file/connection.ts';
import type { ShopPaths } from './file/folder.ts';
import { compareNote, readNote } from './file/note.ts';
import { placeWarning } from './file/place-warning.ts';
import { trailEnd, trailHashAt } from './file/trail-end.ts';

/** Something to know about where the shop is kept, as shop.get tells it. */
export type ShopWarning = OutputOf<'shop.get'>['warnings'][number];

/**
 * What is to be told at a start: a folder in which a database is not safe, and a trail that does not go as far as the note
 * outside says (commits that were answered as saved are gone) or is another one.
 */
export function findWarnings(paths: ShopPaths, raw: Connection): ShopWarning[] {
  const warnings: ShopWarning[] = [];
  const place = placeWarning(paths.folder);
  if (place) warnings.push({ what: `${place.kind}-folder`, with: { sign: place.sign } });
  const last = trailEnd(raw);
  const note = compareNote(readNote(paths), last, (n) => trailHashAt(raw, n));
  if (note.found === 'note-ahead')
    warnings.push({ what: 'commits-lost', with: { lost: note.lost, last: last?.n ?? 0, noted: note.note.n } });
  if (note.found === 'differs') warnings.push({ what: 'other-file', with: { noted: note.note.n } });
  return warnings;
}
