import type { SheetTotals } from '../core/money/line.ts';
import type { Context } from './context.ts';
import { newId } from './id.ts';

/** Writes one balanced set of postings. Throws when it does not add to zero: the books balance in every transaction. */
export async function post(
  context: Context,
  source: string,
  rows: readonly (readonly [account: string, amount: number])[],
): Promise<void> {
  const off = rows.reduce((sum, [, amount]) => sum + amount, 0);
  if (off !== 0) throw new Error(`postings of ${source} are off by ${off}`);
  for (const [account, amount] of rows) {
    if (amount !== 0)
      await context.write.insert('posting', {
        id: newId(),
        source,
        account,
        amount,
        on_day: context.today,
        at: context.now,
      });
  }
}

/** Accounts of the books under an invoice or, with sign -1, a credit note: what is owed, against what was sold and the tax. */
export const salePostings = (totals: SheetTotals, sign: 1 | -1, inclusive: boolean): [string, number][] => [
  ['receivable', sign * totals.gross],
  ['sales', -sign * (inclusive ? totals.gross - totals.tax : totals.net)],
  ['tax', -sign * totals.tax],
];
