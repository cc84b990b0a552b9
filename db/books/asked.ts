import type { Context } from '../context.ts';
import { settingsOf } from '../people.ts';
import { badInput } from '../refusal.ts';
import type { Books } from './account.ts';

/** The books as an operation reads them. */
export const booksOf = (context: Context): Books => ({
  ...{ tx: context.tx, settings: settingsOf(context), practice: context.practice },
});

/** The days of a statement as asked: up to today, from the first of the month, where nothing else was said. */
export function periodOf(
  context: Context,
  asked: { readonly from: string | null; readonly until: string | null },
): { from: string; until: string } {
  const until = asked.until ?? context.today;
  const from = asked.from ?? `${until.slice(0, 8)}01`;
  if (until > context.today) throw badInput('until', 'in-the-future');
  if (from > until) throw badInput('until', 'before-from');
  return { from, until };
}
