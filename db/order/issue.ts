import type { MoneyRules, Sheet, SheetTotals } from '../../core/money/line.ts';
import type { PaperDocument } from '../../core/paper/document.ts';
import type { Context } from '../context.ts';
import { newId } from '../id.ts';
import { signedIn } from '../people.ts';
import type { PaperRow } from '../tables.ts';
import type { Loaded } from './load.ts';

/** What a paper was reckoned from, kept with it so that it can be re-added for ever. */
export interface KeptSheet {
  readonly sheet: Sheet;
  readonly rules: MoneyRules;
}

/** Keeps a paper for ever: its document, its sums and what they were reckoned from. Returns its id. */
export async function issue(
  context: Context,
  loaded: Loaded,
  document: PaperDocument,
  totals: Pick<SheetTotals, 'net' | 'tax' | 'gross'>,
  kept: KeptSheet | null,
  more: Partial<PaperRow>,
): Promise<string> {
  const id = newId();
  await context.write.insert('paper', {
    id,
    work_order_id: loaded.order.id,
    kind: document.kind,
    number: document.number,
    version: null,
    issued_at: context.now,
    issued_on: context.today,
    person_id: signedIn(context).id,
    customer_id: (loaded.payer ?? loaded.customer).id,
    net: totals.net,
    tax: totals.tax,
    gross: totals.gross,
    due_on: null,
    valid_until: null,
    corrects: null,
    sheet: JSON.stringify(kept),
    document: JSON.stringify(document),
    ...more,
  });
  return id;
}
