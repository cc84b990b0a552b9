/** Labour of a job: book hours in thousandths, less the overlap with the job whose dismantling it shares. */
export interface BookedLabour {
  readonly jobId: string;
  readonly bookHours: number;
  /** Hours in thousandths that fall away while the primary job is done too. */
  readonly overlapHours: number;
  readonly primaryJobId: string | null;
}

/**
 * Hours to bill, thousandths: max(0, book - overlap) while the primary job is done too; the whole book time when it is not
 * (the customer must then be told). No job shares its dismantling with itself. Common practice, no source.
 */
export function billedHours(job: BookedLabour, done: ReadonlySet<string>): number {
  const shared = job.primaryJobId !== null && job.primaryJobId !== job.jobId && done.has(job.primaryJobId);
  return shared ? Math.max(0, job.bookHours - job.overlapHours) : job.bookHours;
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
