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

/** Under the sum and not in it: offered without a yes, or answered no or later. */
export function standsAside(job: Job): boolean {
  return job.answer === 'no' || job.answer === 'later' || (job.offered && !job.covered);
}

type Steps = NonNullable<Order['sums']>['reckoning'];

/** How a job's sum came about: its lines, then the sum or its fixed price. */
export function jobReckoning(order: Order, job: Job): Steps {
  const lines = new Set(job.lines.map((line) => line.id));
  return (
    order.sums?.reckoning.filter(
      (step) => step.on.job === job.id || (lines.has(String(step.on.line)) && /^line-/.test(step.rule)),
    ) ?? []
  );
}

/** How a sum under the jobs came about. */
export function sumReckoning(order: Order, is: (step: Steps[number]) => boolean): Steps {
  return order.sums?.reckoning.filter(is) ?? [];
}
