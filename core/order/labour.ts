import { type Money, roundDivide } from '../money/money.ts';

/** Labour of a job: book hours in thousandths, less the overlap with the job whose dismantling it shares. */
export interface BookedLabour {
  readonly jobId: string;
  readonly bookHours: number;
  /** Hours in thousandths that fall away while the primary job is done too. */
  readonly overlapHours: number;
  readonly primaryJobId: string | null;
}

export interface BilledLabour {
  readonly jobId: string;
  /** Hours to bill, in thousandths. */
  readonly hours: number;
  /** Hours taken off, in thousandths; 0 when the primary job is not done. */
  readonly overlapTaken: number;
}

/**
 * Hours to bill: max(0, book - overlap) while the primary job is on the sheet and not declined; the whole book time when
 * it is not (the customer must then be told). Common practice, no source.
 */
export function billedLabour(jobs: readonly BookedLabour[], declined: ReadonlySet<string>): BilledLabour[] {
  const done = new Set(jobs.map((job) => job.jobId).filter((id) => !declined.has(id)));
  return jobs.map((job) => {
    const shared = job.primaryJobId !== null && job.primaryJobId !== job.jobId && done.has(job.primaryJobId);
    const hours = shared ? Math.max(0, job.bookHours - job.overlapHours) : job.bookHours;
    return { jobId: job.jobId, hours, overlapTaken: job.bookHours - hours };
  });
}

/** Hours in thousandths x rate of an hour in minor units. */
export function labourPrice(hours: number, rate: Money): Money {
  return roundDivide(BigInt(hours) * BigInt(rate), 1000n);
}
