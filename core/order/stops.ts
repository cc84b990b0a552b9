import type { HeldWith, StopWhat } from '../contract/held.ts';

/** Close-out facts: what must be so before an invoice. */
export interface CloseOutFacts {
  readonly openClocks: readonly string[];
  readonly forgottenClocks: readonly string[];
  /** Letters of jobs on the sheet that no yes covers. */
  readonly heldJobs: readonly string[];
  /** Minor units over ceiling and allowance; 0 when inside. */
  readonly excess: number;
  /** The most that the customer wants to spend, minor units; null when none was named. */
  readonly ownMaximum: number | null;
  /** By how much the sheet is over it; 0 when inside. */
  readonly overMaximum: number;
  /** Whether the person who asks may see sums. */
  readonly seesPrices: boolean;
  readonly poMissing: boolean;
  readonly issuedWithoutLine: readonly string[];
  readonly torqueMissing: readonly { readonly job: string; readonly step: number; readonly missing: number }[];
  readonly secondMissing: readonly { readonly job: string; readonly step: number }[];
  /** Steps with a hold that failed and were not done since. */
  readonly stepsFailed: readonly { readonly job: string; readonly step: number }[];
  /** Steps with bolts to a figure or a second person that somebody else than the owner left out. */
  readonly stepsLeftOut: readonly { readonly job: string; readonly step: number }[];
  /** Letters of jobs whose final list nobody has gone through. */
  readonly finalChecksMissing: readonly string[];
  /** What must not be used or released, in words. */
  readonly quarantined: readonly string[];
  readonly mileageOutMissing: boolean;
  readonly outsideBillMissing: readonly string[];
  readonly oldPartsUnanswered: boolean;
}

export interface Stop {
  readonly what: StopWhat;
  /** never: no way past it. owner: with a reason that is printed. note: anybody, with a note. */
  readonly override: 'never' | 'owner' | 'note';
  readonly with: Readonly<Record<string, string | number>>;
}

/** Stops that may be let pass. */
export const PASSED = [
  'torque-missing',
  'second-missing',
  'step-failed',
  'step-not-needed',
  'final-check-missing',
  'quarantine',
  'mileage-out-missing',
  'outside-bill-missing',
  'old-parts-unanswered',
] as const satisfies readonly StopWhat[];
export type PassedStop = (typeof PASSED)[number];

/** The stops before an invoice, as settled: which are never overridden, which by the owner, which by anybody with a note. */
export function stopsOf(facts: CloseOutFacts): Stop[] {
  const stops: Stop[] = [];
  const add = <W extends StopWhat>(what: W, override: Stop['override'], figures: HeldWith<W>) =>
    stops.push({ what, override, with: figures });
  for (const person of facts.openClocks) add('clock-open', 'never', { person });
  for (const person of facts.forgottenClocks) add('clock-forgotten', 'never', { person });
  for (const letter of facts.heldJobs) add('job-without-yes', 'never', { letter });
  if (facts.excess > 0)
    if (facts.seesPrices) add('over-the-yes', 'never', { excess: facts.excess });
    else add('beyond-the-yes', 'never', {});
  if (facts.ownMaximum !== null && facts.overMaximum > 0)
    if (facts.seesPrices) add('over-own-maximum', 'never', { maximum: facts.ownMaximum, excess: facts.overMaximum });
    else add('beyond-own-maximum', 'never', {});
  if (facts.poMissing) add('po-missing', 'never', {});
  for (const words of facts.issuedWithoutLine) add('part-on-no-line', 'never', { words });
  for (const { job, step, missing } of facts.torqueMissing)
    add('torque-missing', 'owner', { letter: job, step, missing });
  for (const { job, step } of facts.secondMissing) add('second-missing', 'owner', { letter: job, step });
  for (const { job, step } of facts.stepsFailed) add('step-failed', 'owner', { letter: job, step });
  for (const { job, step } of facts.stepsLeftOut) add('step-not-needed', 'owner', { letter: job, step });
  for (const letter of facts.finalChecksMissing) add('final-check-missing', 'owner', { letter });
  for (const words of facts.quarantined) add('quarantine', 'owner', { words });
  if (facts.mileageOutMissing) add('mileage-out-missing', 'owner', {});
  for (const words of facts.outsideBillMissing) add('outside-bill-missing', 'owner', { words });
  if (facts.oldPartsUnanswered) add('old-parts-unanswered', 'note', {});
  return stops;
}
