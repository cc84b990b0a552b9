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

/**
 * Digest of a row: what the trail keeps, and what verify compares with the row as it stands. What is null is left out,
 * so that a column that a later schema adds to a table leaves the digests of its older rows as they are.
 */
export const digestOf = (row: object): string =>
  sha256(canonical(Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null))));
