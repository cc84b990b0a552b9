import { type Money, sum } from '../money/money.ts';

/** Money of an order as it was recorded: below zero what was paid back. */
export interface Paid {
  /** Minor units. */
  readonly amount: number;
  /** Epoch milliseconds. */
  readonly at: number;
}

/**
 * What stands paid ahead of an invoice: taken, less what was paid back, with the steps of cash. Once there is an invoice it
 * says what stood then, since what moves afterwards belongs to that paper. `invoicedAt` null: there is none. Minor units.
 */
export const paidAhead = (payments: readonly Paid[], invoicedAt: number | null): Money =>
  sum(payments.filter(({ at }) => invoicedAt === null || at <= invoicedAt).map(({ amount }) => amount));
