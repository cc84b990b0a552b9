import { type Money, money, sum, ZERO } from '../money/money.ts';
import { daysBetween } from '../time/civil.ts';

/** What is open of an invoice, minor units, and the civil date on which it fell due. */
export interface OpenItem {
  readonly dueOn: string;
  readonly open: Money;
}

export interface Ageing {
  /** One sum for each upper edge, and a last one for all that is older. */
  readonly buckets: readonly Money[];
  /** Money that stands on no invoice, below zero: it never hides in a bucket. */
  readonly unapplied: Money;
  readonly total: Money;
}

/** The usual edges: not yet due, then by thirty days. Common practice, no source. */
export const USUAL_EDGES: readonly number[] = [0, 30, 60, 90];

/** Open sums by days past due on a civil date; each upper edge in days belongs to its bucket. Edges in rising order. */
export function ageing(
  items: readonly OpenItem[],
  unapplied: Money,
  asOf: string,
  edges: readonly number[] = USUAL_EDGES,
): Ageing {
  const buckets: Money[] = [...edges.map(() => ZERO), ZERO];
  for (const { dueOn, open } of items) {
    const late = daysBetween(dueOn, asOf);
    const found = edges.findIndex((edge) => late <= edge);
    const at = found < 0 ? edges.length : found;
    buckets[at] = money((buckets[at] ?? 0) + open);
  }
  return { buckets, unapplied, total: sum([...buckets, unapplied]) };
}
