import { first } from './1-first.ts';

/** In order; each runs in one transaction with its own record. */
export const migrations = [first] as const;
