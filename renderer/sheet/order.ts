import type { OutputOf } from '../../core/contract/index.ts';

/** An order with everything that stands on its sheet. */
export type Order = OutputOf<'order.get'>;
export type Job = Order['jobs'][number];
export type Line = Job['lines'][number];
export type Decision = Order['decisions'][number];

/** The invoice of an order, where there is one: then its sheet is closed. */
export function invoiceOf(order: Order): Order['papers'][number] | undefined {
  return order.papers.find((paper) => paper.kind === 'invoice');
}

/** Letters of jobs by their ids, in the sheet's order. */
export function lettersOf(order: Order, ids: readonly string[]): string[] {
  return order.jobs.filter((job) => ids.includes(job.id)).map((job) => job.letter);
}
