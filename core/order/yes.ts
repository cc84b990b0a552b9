import type { MoneyRules, Sheet, SheetJob, SheetTotals } from '../money/line.ts';
import { type Money, money, scale } from '../money/money.ts';
import { reckonSheet } from '../money/totals.ts';
import { type AllowanceRule, allowance } from './allowance.ts';

export type Answer = 'yes' | 'no' | 'later';

/** A recorded answer, in the order of recording. */
export interface DecisionFacts {
  /** For all jobs said yes to so far, tax in, minor units; null when it names no yes. */
  readonly ceiling: Money | null;
  readonly jobs: readonly { readonly jobId: string; readonly answer: Answer }[];
}

export interface YesAgainstSheet {
  readonly answers: ReadonlyMap<string, Answer>;
  readonly covered: ReadonlySet<string>;
  /** The last ceiling that was said. */
  readonly ceiling: Money;
  readonly allowed: Money;
  readonly onSheet: Money;
  readonly coveredTotal: Money;
  /** By how much the covered jobs are over ceiling + allowance; 0 when inside. */
  readonly coveredExcess: Money;
  readonly heldJobs: readonly string[];
  /** What the held jobs add to the sheet. */
  readonly heldSum: Money;
  /** Nothing held and the covered jobs inside. */
  readonly inside: boolean;
}

/**
 * The yes against the sheet. A job is covered when a yes names it and no later no or later does; scope never rides on
 * money. The covered jobs are reckoned as a sheet of their own (fees and discounts anew) and held against the ceiling and
 * the allowance, which is for drift of the same scope. Minor units, tax in; the sums of a rule before tax are brought to
 * that by the tax of the covered jobs.
 */
export function yesAgainstSheet(
  sheet: Sheet,
  rules: MoneyRules,
  decisions: readonly DecisionFacts[],
  rule: AllowanceRule,
): YesAgainstSheet {
  const answers = new Map<string, Answer>();
  let ceiling = money(0);
  for (const decision of decisions) {
    for (const { jobId, answer } of decision.jobs) answers.set(jobId, answer);
    if (decision.ceiling !== null) ceiling = decision.ceiling;
  }
  const covered = new Set([...answers].filter(([, answer]) => answer === 'yes').map(([jobId]) => jobId));
  const only = (jobs: readonly SheetJob[]): Sheet => ({ ...sheet, jobs });
  const whole = reckonSheet(sheet, rules);
  const mine = reckonSheet(only(sheet.jobs.filter((job) => covered.has(job.id))), rules);
  const drift = allowance(withTax(rule, mine), ceiling, mine.gross);
  const heldJobs = sheet.jobs.filter((job) => !covered.has(job.id)).map((job) => job.id);
  const coveredExcess = drift.mustAsk ? drift.excess : money(0);
  return {
    answers,
    covered,
    ceiling,
    allowed: drift.allowed,
    onSheet: whole.gross,
    coveredTotal: mine.gross,
    coveredExcess,
    heldJobs,
    heldSum: money(whole.gross - mine.gross),
    inside: heldJobs.length === 0 && coveredExcess === 0,
  };
}

/** A rule whose sums are before tax, with the tax that the covered jobs bear; a percentage is the same on both sides. */
function withTax(rule: AllowanceRule, { net, gross }: SheetTotals): AllowanceRule {
  if (rule.base === 'gross' || net <= 0) return { ...rule, base: 'gross' };
  return {
    ...rule,
    base: 'gross',
    fixed: scale(rule.fixed, gross, net),
    cap: rule.cap === null ? null : scale(rule.cap, gross, net),
  };
}
