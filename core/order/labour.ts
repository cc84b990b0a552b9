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

/** How clocked time is brought to hours on paper: a step in thousandths of an hour, and to which side of it. */
export interface BillingStep {
  readonly step: number;
  readonly way: 'nearest' | 'up';
}

/**
 * Hours to bill for clocked minutes, thousandths: whole steps, to the nearest (half a step up) or to the next. People are
 * paid from their true minutes, whatever stands here. Throws RangeError for a step that is not a whole figure above 0.
 */
export function clockedHours(minutes: number, { step, way }: BillingStep): number {
  if (!Number.isSafeInteger(step) || step <= 0) throw new RangeError(`Not a step: ${step}`);
  // In sixtieths of a thousandth, so that nothing is rounded before the one place where it should be.
  const [time, size] = [minutes * 1000, step * 60];
  return (way === 'up' ? Math.ceil(time / size) : Math.floor((2 * time + size) / (2 * size))) * step;
}

/** Hours in thousandths x rate of an hour in minor units. */
export function labourPrice(hours: number, rate: Money): Money {
  return roundDivide(BigInt(hours) * BigInt(rate), 1000n);
}
