import { createHash } from 'node:crypto';

/** JSON with keys sorted at every level: the same value always gives the same text. */
export function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}

/** SHA-256 of a text, hex. */
export const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Digest of a row: what the trail keeps, and what verify compares with the row as it stands. */
export const digestOf = (row: object): string => sha256(canonical(row));
