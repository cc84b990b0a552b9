import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { hashPath, listCopies, type ShopCopy } from './backup.ts';
import { readCopyName } from './copy-name.ts';

/** For how many of the newest of each stretch of time its last copy stays. A stretch in which nothing was copied is none. */
const KEPT = [
  { of: (copy: ShopCopy) => copy.name, newest: 10 },
  { of: (copy: ShopCopy) => `${dayOf(copy)} ${readCopyName(copy.name)?.minute.slice(0, 2)}`, newest: 24 },
  { of: dayOf, newest: 30 },
  { of: weekOf, newest: 26 },
  { of: (copy: ShopCopy) => dayOf(copy).slice(0, 7), newest: Number.POSITIVE_INFINITY },
] as const;

/**
 * Which copies stay and which may go: the ten newest; the last one of each of the newest 24 hours, 30 days and 26 weeks
 * that have one; and the last one of every month for good. `copies` as listCopies gives them, newest first.
 */
export function sortCopies(copies: readonly ShopCopy[]): { readonly stay: ShopCopy[]; readonly go: ShopCopy[] } {
  const staying = new Set<ShopCopy>();
  for (const { of, newest } of KEPT) {
    const seen = new Set<string>();
    for (const copy of copies) {
      const stretch = of(copy);
      if (seen.has(stretch)) continue;
      if (seen.size >= newest) break;
      seen.add(stretch);
      staying.add(copy);
    }
  }
  return { stay: copies.filter((copy) => staying.has(copy)), go: copies.filter((copy) => !staying.has(copy)) };
}

/** Removes the copies that may go (single files only; folders on a stick are the owner's). Returns what went. */
export function thinCopies(folder: string): readonly ShopCopy[] {
  const files = listCopies(folder).filter((copy) => dirname(copy.path) === folder);
  const { go } = sortCopies(files);
  for (const copy of go) {
    rmSync(copy.path);
    rmSync(hashPath(copy.path), { force: true });
  }
  return go;
}

function dayOf(copy: ShopCopy): string {
  return readCopyName(copy.name)?.day ?? '';
}

const DAY = 86_400_000;

/** The Monday on which the copy's week began, as a civil date. */
function weekOf(copy: ShopCopy): string {
  const day = Date.parse(`${dayOf(copy)}T00:00:00Z`);
  const sinceMonday = (new Date(day).getUTCDay() + 6) % 7;
  return new Date(day - sinceMonday * DAY).toISOString().slice(0, 10);
}
