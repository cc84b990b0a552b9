import type { OutputOf } from '../../../core/contract/index.ts';
import type { Job, Line, Order } from '../order.ts';
import type { ReckonedHere } from './reckon-here.ts';

export type Quote = OutputOf<'quote.list'>['quotes'][number];

/** A line that is not as it was: new, gone, or of another quantity or amount. Quantities in thousandths. */
export interface MovedLine {
  readonly id: string;
  readonly words: string;
  readonly unit: string;
  readonly was: { readonly quantity: number; readonly amount: number } | null;
  readonly now: { readonly quantity: number; readonly amount: number } | null;
}

/** A job against what was said yes to: what moved, and how many lines stayed with what they come to. */
export interface MovedJob {
  readonly job: Job;
  /** New: it stood on nothing that was said yes to. */
  readonly isNew: boolean;
  /** Whether what was said yes to is known line by line. */
  readonly byLine: boolean;
  readonly moved: readonly MovedLine[];
  readonly same: { readonly count: number; readonly amount: number };
  /** What the job came to; null where that is not known line by line. */
  readonly was: number | null;
  readonly now: number;
}

/** The version that the last yes answered, or null where the yeses so far answered no quote of ours. */
export function versionSaidYesTo(order: Order, quotes: readonly Quote[]): Quote | null {
  const last = order.decisions.findLast((one) => one.ceiling !== null);
  return quotes.find((quote) => quote.version === last?.quoteVersion) ?? null;
}

/**
 * What moved in a job since a version. Without a version, a job that has a yes is held against the amount of its last
 * yes, and its lines count as they are.
 */
export function movedJob(order: Order, job: Job, since: Quote | null, here: ReckonedHere | null): MovedJob {
  return movedFrom(job, since, amountSaid(order, job), here);
}

/**
 * What moved in a job since a version; `said` is what it came to when it was said yes to apart from that version, `here`
 * what it would come to under other answers: hours shared with a declined job come back.
 */
export function movedFrom(
  job: Job,
  since: Quote | null,
  said: number | null,
  here: ReckonedHere | null = null,
): MovedJob {
  const before = since?.jobs.find((one) => one.jobId === job.id);
  const now = here?.whole.jobs.get(job.id) ?? job.amount ?? 0;
  const lineNow = (line: Line) => here?.lines.get(line.id) ?? { quantity: line.charged, amount: line.amount ?? 0 };
  if (before === undefined) {
    if (said === now)
      return {
        job,
        isNew: false,
        byLine: true,
        moved: [],
        same: { count: job.lines.length, amount: now },
        was: now,
        now,
      };
    const moved = job.lines.map((line) => ({
      id: line.id,
      words: line.words,
      unit: line.unit,
      was: null,
      now: lineNow(line),
    }));
    return { job, isNew: said === null, byLine: said === null, moved, same: { count: 0, amount: 0 }, was: said, now };
  }
  const moved: MovedLine[] = [];
  let count = 0;
  let amount = 0;
  for (const line of job.lines) {
    const was = before.lines.find((one) => one.lineId === line.id);
    const is = lineNow(line);
    if (was !== undefined && was.quantity === is.quantity && was.amount === is.amount) {
      count++;
      amount += is.amount;
    } else moved.push({ id: line.id, words: line.words, unit: line.unit, was: was ?? null, now: is });
  }
  for (const was of before.lines) {
    if (job.lines.some((line) => line.id === was.lineId)) continue;
    moved.push({ id: was.lineId, words: was.words, unit: was.unit, was, now: null });
  }
  return { job, isNew: false, byLine: true, moved, same: { count, amount }, was: before.amount, now };
}

/** What the job came to when it was last said yes to; null where it never was. */
function amountSaid(order: Order, job: Job): number | null {
  const said = order.decisions.findLast((one) =>
    one.jobs.some((answered) => answered.jobId === job.id && answered.answer === 'yes'),
  );
  return said?.jobs.find((one) => one.jobId === job.id)?.amount ?? null;
}
