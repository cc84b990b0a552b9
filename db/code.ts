import { randomBytes, scryptSync, timingSafeEqual } from 'node:crypto';

// A code of a few digits is no password: the cost slows a guesser at the desk down, the file itself guards the rest.
const COST = { N: 4096, r: 8, p: 1 };

/** A person's code as it is kept: scrypt with a salt of its own. */
export function hashCode(code: string): string {
  const salt = randomBytes(16);
  return `scrypt:${salt.toString('hex')}:${scryptSync(code, salt, 32, COST).toString('hex')}`;
}

/** Whether the code is the one that was hashed. */
export function codeFits(code: string, kept: string): boolean {
  const [, salt = '', hash = ''] = kept.split(':');
  const wanted = Buffer.from(hash, 'hex');
  const got = scryptSync(code, Buffer.from(salt, 'hex'), 32, COST);
  return wanted.length === got.length && timingSafeEqual(wanted, got);
}
