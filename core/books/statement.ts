import type { ReckoningStep } from '../money/line.ts';
import { type Money, money, sum } from '../money/money.ts';
import { startSteps } from '../money/reckoning.ts';
import { daysBetween } from '../time/civil.ts';
import { type Ageing, ageing, USUAL_EDGES } from './ageing.ts';

export const ENTRY_KINDS = ['invoice', 'credit-note', 'deposit', 'payment', 'refund', 'rounding'] as const;
export type EntryKind = (typeof ENTRY_KINDS)[number];

/** What moves an account, minor units: above zero it is owed to the garage, below zero it was paid or credited. */
export interface AccountEntry {
  readonly kind: EntryKind;
  /** Civil date. */
  readonly on: string;
  readonly amount: Money;
  /** What it was told to belong to, an order. null: money that nobody told; it pays what is oldest. */
  readonly item: string | null;
  /** When an invoice falls due; null counts as the day that it was written. */
  readonly dueOn: string | null;
}

/** The days of a statement, both in it. */
export interface StatementPeriod {
  readonly from: string;
  readonly until: string;
}

export interface OpenInvoice<E extends AccountEntry> {
  readonly entry: E;
  readonly dueOn: string;
  /** What was paid and credited of it, minor units. */
  readonly less: Money;
  readonly open: Money;
  /** On the statement's last day; below zero: days still to go. */
  readonly daysPastDue: number;
}

export interface StatementSums {
  readonly invoiced: Money;
  readonly credited: Money;
  readonly paid: Money;
  /** Paid back. */
  readonly back: Money;
  /** What the coins there are added, or took off below zero. */
  readonly rounding: Money;
}

export interface Statement<E extends AccountEntry> extends StatementPeriod {
  readonly opening: Money;
  readonly rows: readonly { readonly entry: E; readonly balance: Money }[];
  readonly sums: StatementSums;
  readonly closing: Money;
  /** Oldest due first. */
  readonly open: readonly OpenInvoice<E>[];
  /** Money that stands on no invoice, by what it was told for; as positive sums. */
  readonly unapplied: readonly {
    readonly item: string | null;
    /** The last entry of it. */
    readonly from: E | null;
    readonly sum: Money;
  }[];
  /** Its total is the closing sum. */
  readonly ageing: Ageing;
  readonly reckoning: {
    readonly opening: readonly ReckoningStep[];
    readonly closing: readonly ReckoningStep[];
  };
}

const of = (entries: readonly AccountEntry[], ...kinds: EntryKind[]): Money =>
  sum(entries.filter(({ kind }) => kinds.includes(kind)).map(({ amount }) => amount));

/**
 * An account from day to day: what was owed before, what came in between, what is owed after, and what of it is how far past
 * due. Entries of one day keep their order; what is later than the last day is left out.
 */
export function statementOf<E extends AccountEntry>(
  entries: readonly E[],
  period: StatementPeriod,
  edges: readonly number[] = USUAL_EDGES,
): Statement<E> {
  const { from, until } = period;
  const known = entries.filter(({ on }) => on <= until).sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  const before = known.filter(({ on }) => on < from);
  const within = known.filter(({ on }) => on >= from);
  const opening = sum(before.map(({ amount }) => amount));
  let balance = opening;
  const rows = within.map((entry) => {
    balance = money(balance + entry.amount);
    return { entry, balance };
  });
  const sums = {
    invoiced: of(within, 'invoice'),
    credited: money(-of(within, 'credit-note')),
    paid: money(-of(within, 'deposit', 'payment')),
    back: of(within, 'refund'),
    rounding: of(within, 'rounding'),
  };
  const { open, unapplied } = applied(known, until);
  const steps = startSteps();
  steps.add('statement-opening', { n: before.length, from }, opening);
  const ends = startSteps();
  ends.add('statement-opening', { n: before.length, from }, opening);
  if (sums.invoiced !== 0) ends.add('statement-invoiced', {}, sums.invoiced);
  if (sums.credited !== 0) ends.add('statement-credited', {}, money(-sums.credited));
  if (sums.paid !== 0) ends.add('statement-paid', {}, money(-sums.paid));
  if (sums.back !== 0) ends.add('statement-back', {}, sums.back);
  if (sums.rounding !== 0) ends.add('statement-rounding', {}, sums.rounding);
  ends.add('statement-closing', { until }, balance);
  return {
    ...{ from, until, opening, rows, sums, closing: balance, open, unapplied },
    ageing: ageing(open, money(-sum(unapplied.map((one) => one.sum))), until, edges),
    reckoning: { opening: steps.all, closing: ends.all },
  };
}

const oldestFirst = (a: { dueOn: string }, b: { dueOn: string }) =>
  a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : 0;

/**
 * Which invoices are open. Money and credit pay what they were told for, its oldest invoice first; what was told for nothing
 * pays the oldest of all. What is over stands alone: it never makes another invoice smaller.
 */
function applied<E extends AccountEntry>(entries: readonly E[], until: string) {
  const bills = entries
    .filter(({ amount }) => amount > 0)
    .filter(({ kind }) => kind === 'invoice')
    .map((entry) => ({ entry, dueOn: entry.dueOn ?? entry.on, less: 0 }))
    .sort(oldestFirst);
  const pools = new Map<string | null, number>();
  for (const { kind, item, amount } of entries)
    if (kind !== 'invoice' || amount < 0) pools.set(item, (pools.get(item) ?? 0) - amount);
  const told = [...pools].sort(([a], [b]) => Number(a === null) - Number(b === null));
  const unapplied: { item: string | null; from: E | null; sum: Money }[] = [];
  for (const [item, all] of told) {
    let left = all;
    for (const bill of bills) {
      if (item !== null && bill.entry.item !== item) continue;
      // Below zero more went back than came in: it stands on the item's first invoice again.
      const takes = Math.min(left, bill.entry.amount - bill.less);
      bill.less += takes;
      left -= takes;
    }
    if (left !== 0)
      unapplied.push({ item, from: entries.findLast((one) => one.item === item) ?? null, sum: money(left) });
  }
  const open = bills
    .map(({ entry, dueOn, less }): OpenInvoice<E> => {
      const rest = money(entry.amount - less);
      return { entry, dueOn, less: money(less), open: rest, daysPastDue: daysBetween(dueOn, until) };
    })
    .filter((bill) => bill.open !== 0);
  return { open, unapplied };
}
