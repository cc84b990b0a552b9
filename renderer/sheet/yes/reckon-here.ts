import { isExchange } from '../../../core/money/core-tax.ts';
import type { Sheet, SheetJob, SheetTotals } from '../../../core/money/line.ts';
import { money } from '../../../core/money/money.ts';
import { type MoneySettings, rulesOf } from '../../../core/money/shop-rules.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import type { Job, Line, Order } from '../order.ts';

/** What would be said of a job: its answer so far, or the one on the form. */
export type AnswerOf = (job: Job) => Job['answer'];

export interface ReckonedHere {
  /** The sheet as it would stand. */
  readonly whole: SheetTotals;
  /** The jobs said yes to, as a sheet of their own. */
  readonly covered: SheetTotals;
  /** Ids of the jobs in the sum. */
  readonly inSum: ReadonlySet<string>;
  /** By line id, what it would charge: thousandths and minor units. */
  readonly lines: ReadonlyMap<string, LineFigures>;
}

export interface LineFigures {
  readonly quantity: number;
  readonly amount: number;
}

/**
 * The order's sums under other answers, by the same reckoning as the shop's own; null for whoever may not see prices.
 * What is answered no or later, and what is offered without a yes, stands outside the sum.
 */
export function reckonHere(order: Order, settings: MoneySettings, answerOf: AnswerOf): ReckonedHere | null {
  if (order.sums === null) return null;
  const inSum = order.jobs.filter((job) => {
    const answer = answerOf(job);
    return answer !== 'no' && answer !== 'later' && (!job.offered || answer === 'yes');
  });
  const onSheet = new Set(inSum.map((job) => job.id));
  const rules = rulesOf(settings, order.counterSale);
  const sheetOf = (jobs: readonly Job[]): Sheet => ({
    jobs: jobs.map((job) => sheetJob(job, onSheet)),
    discounts: order.discounts.map(({ on, reduction, words }) => ({ on, words, reduction: asMoney(reduction) })),
    exempt: order.taxExempt,
  });
  const sheet = sheetOf(inSum);
  const whole = reckonSheet(sheet, rules);
  const quantities = new Map(sheet.jobs.flatMap((job) => job.lines.map((line) => [line.id, line.quantity])));
  return {
    whole,
    covered: reckonSheet(sheetOf(inSum.filter((job) => answerOf(job) === 'yes')), rules),
    inSum: onSheet,
    lines: new Map(
      whole.lines.map((line) => [line.lineId, { quantity: quantities.get(line.lineId) ?? 0, amount: line.amount }]),
    ),
  };
}

function sheetJob(job: Job, onSheet: ReadonlySet<string>): SheetJob {
  return {
    id: job.id,
    given: job.given || job.kind !== 'charged',
    fixedPrice: job.fixedPrice === null ? undefined : money(job.fixedPrice),
    lines: job.lines.map((line) => ({
      id: line.id,
      kind: line.kind,
      quantity: chargedHere(line, onSheet),
      unitPrice: money(line.unitPrice ?? 0),
      given: line.given,
      exchange: isExchange(line),
      discount: line.discount === null ? undefined : asMoney(line.discount),
    })),
  };
}

/** Book hours lose their overlap only while the job that they share with is done too. */
function chargedHere(line: Line, onSheet: ReadonlySet<string>): number {
  if (line.kind !== 'labour' || line.billing !== 'book') return line.charged;
  const other = line.overlapJobId;
  const shared = other !== null && other !== line.jobId && onSheet.has(other);
  return shared ? Math.max(0, line.book - line.overlap) : line.book;
}

function asMoney(reduction: NonNullable<Line['discount']>) {
  return 'bp' in reduction ? reduction : { sum: money(reduction.sum) };
}
