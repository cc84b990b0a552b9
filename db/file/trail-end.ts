import type { Connection } from './connection.ts';
import type { TrailNote } from './note.ts';

/** The trail's last number and hash in this file; null while nothing has been done in it, or where it has no trail. */
export function trailEnd(raw: Connection): TrailNote | null {
  if (!hasTrail(raw)) return null;
  return raw.prepare<[], TrailNote>('SELECT n, hash FROM trail ORDER BY n DESC LIMIT 1').get() ?? null;
}

/** The hash of trail row `n`, or null where there is no such row. */
export function trailHashAt(raw: Connection, n: number): string | null {
  if (!hasTrail(raw)) return null;
  return raw.prepare<[number], { hash: string }>('SELECT hash FROM trail WHERE n = ?').get(n)?.hash ?? null;
}

const hasTrail = (raw: Connection): boolean =>
  raw.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = 'trail'").get() !== undefined;
