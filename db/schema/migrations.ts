import { APPEND_ONLY as FIRST_APPEND_ONLY, first } from './1-first.ts';
import { BENCH_APPEND_ONLY, bench } from './2-bench.ts';
import { DESK_APPEND_ONLY, desk } from './3-desk.ts';
import { find } from './4-find.ts';
import { balance } from './5-balance.ts';
import { orders } from './6-orders.ts';
import { CREDIT_APPEND_ONLY, credit } from './7-credit.ts';
import { STATEMENT_APPEND_ONLY, statement } from './8-statement.ts';
import { storage } from './9-storage.ts';
import { privacy } from './10-privacy.ts';
import { today } from './11-today.ts';
import { packs } from './12-packs.ts';
import { BOOKS_APPEND_ONLY, books } from './13-books.ts';

/** In order; each runs in one transaction with its own record. */
export const migrations = [
  first,
  bench,
  desk,
  find,
  balance,
  orders,
  credit,
  statement,
  storage,
  privacy,
  today,
  packs,
  books,
] as const;

/** Tables whose rows never change and never go. */
export const APPEND_ONLY = [
  ...FIRST_APPEND_ONLY,
  ...BENCH_APPEND_ONLY,
  ...DESK_APPEND_ONLY,
  ...CREDIT_APPEND_ONLY,
  ...STATEMENT_APPEND_ONLY,
  ...BOOKS_APPEND_ONLY,
] as const;
