import type { z } from 'zod';
import { bookJobContent } from '../../core/contract/procedure.ts';
import type { BookJobVersionRow } from '../tables.ts';

export type BookContent = z.output<typeof bookJobContent>;

/** Versions never change, and the same few are read with every order. */
const read = new Map<string, BookContent>();
const MOST = 500;

/** What a version of a job book entry holds, with the defaults of fields that are younger than it. */
export function bookContent({ id, content }: Pick<BookJobVersionRow, 'id' | 'content'>): BookContent {
  const known = read.get(id);
  if (known !== undefined) return known;
  const fresh = bookJobContent.parse(JSON.parse(content));
  if (read.size >= MOST) read.clear();
  read.set(id, fresh);
  return fresh;
}
