import type { MoneyRules, Sheet, SheetJob } from '../money/line.ts';
import { type Money, money } from '../money/money.ts';
import { reckonSheet } from '../money/totals.ts';
import type { AllowanceRule } from './allowance.ts';
import { type DecisionFacts, type YesAgainstSheet, yesAgainstSheet } from './yes.ts';

/** One way to bring a sheet back inside its yes. Sums in minor units, tax in. */
export interface WayOut {
  readonly kind: 'yes' | 'give' | 'move';
  /** What it mends: all that is beyond the yes, one job that no yes covers, or the excess of the covered jobs. */
  readonly mends: 'all' | 'job' | 'excess';
  /** The job without a yes, or the job that is given or moved; null where a yes is asked for all. */
  readonly jobId: string | null;
  /** The line that is given; null when the whole job is. */
  readonly lineId: string | null;
  /** For a yes: how much more is asked for than was said. Else what it takes off the sheet. */
  readonly amount: Money;
  /** For a yes: the sum to say, for all jobs said yes to. Else what the sheet comes to afterwards. */
  readonly after: Money;
  /** Whether what it mends is then inside. */
  readonly enough: boolean;
  /** A job given away without the customer's yes still wants the owner's: scope never rides on money. */
  readonly wants: '' | 'owner-yes';
}

/** How many lines are offered to be given: the smallest that are enough, or else the largest. */
const MOST_LINES = 5;

/**
 * The ways out of what lies beyond a yes, each reckoned by the sheet's own totals: record a yes, give a whole line or
 * job, move a job to a new order. Empty when the sheet is inside.
 */
export function waysOut(
  sheet: Sheet,
  rules: MoneyRules,
  decisions: readonly DecisionFacts[],
  rule: AllowanceRule,
): WayOut[] {
  const against = (changed: Sheet) => yesAgainstSheet(changed, rules, decisions, rule);
  const now = against(sheet);
  if (now.inside) return [];
  const gross = (jobs: readonly SheetJob[]) => reckonSheet({ ...sheet, jobs }, rules).gross;
  const say = (mends: WayOut['mends'], jobId: string | null, sum: Money): WayOut => {
    const after = money(Math.max(now.ceiling, sum));
    return {
      kind: 'yes',
      mends,
      jobId,
      lineId: null,
      amount: money(after - now.ceiling),
      after,
      enough: true,
      wants: '',
    };
  };
  const held = sheet.jobs.filter((job) => now.heldJobs.includes(job.id));
  const covered = sheet.jobs.filter((job) => now.covered.has(job.id));
  const several = held.length + (now.coveredExcess > 0 ? 1 : 0) > 1;
  const less = (
    kind: 'give' | 'move',
    mends: WayOut['mends'],
    changed: Sheet,
    jobId: string,
    lineId: string | null,
  ) => {
    const later = against(changed);
    const way: WayOut = {
      kind,
      mends,
      jobId,
      lineId,
      amount: money(now.onSheet - later.onSheet),
      after: later.onSheet,
      enough: mends === 'job' || later.coveredExcess === 0,
      wants: kind === 'give' && mends === 'job' ? 'owner-yes' : '',
    };
    return way;
  };
  const forJob = (job: SheetJob): WayOut[] => [
    ...(several ? [say('job', job.id, gross([...covered, job]))] : []),
    ...(job.given ? [] : [less('give', 'job', withJob(sheet, job.id, given), job.id, null)]),
    less('move', 'job', withJob(sheet, job.id, gone), job.id, null),
  ];
  return [
    ...(several ? [say('all', null, now.onSheet)] : []),
    ...(several ? [] : held.map((job) => say('job', job.id, now.onSheet))),
    ...(now.coveredExcess > 0
      ? [say('excess', null, now.coveredTotal), ...outOfExcess(sheet, now, covered, less)]
      : []),
    ...held.flatMap(forJob),
  ];
}

type Less = (kind: 'give' | 'move', mends: 'excess', changed: Sheet, jobId: string, lineId: string | null) => WayOut;

function outOfExcess(sheet: Sheet, now: YesAgainstSheet, covered: readonly SheetJob[], less: Less): WayOut[] {
  const worth = (ways: WayOut[]) => ways.filter((way) => way.amount > 0);
  const jobs = covered.filter((job) => !job.given);
  const lines = worth(
    jobs.flatMap((job) =>
      job.fixedPrice === undefined
        ? job.lines.map(({ id }) => less('give', 'excess', withJob(sheet, job.id, giveLine(id)), job.id, id))
        : [],
    ),
  );
  const enough = lines.filter((way) => way.enough).sort((a, b) => a.amount - b.amount);
  const most = lines.toSorted((a, b) => b.amount - a.amount);
  const movable = now.covered.size > 1 ? jobs : [];
  return [
    ...(enough.length > 0 ? enough : most).slice(0, MOST_LINES),
    ...worth(jobs.map((job) => less('give', 'excess', withJob(sheet, job.id, given), job.id, null))),
    ...worth(movable.map((job) => less('move', 'excess', withJob(sheet, job.id, gone), job.id, null))),
  ];
}

type Change = (job: SheetJob) => SheetJob[];

const given: Change = (job) => [{ ...job, given: true }];
const gone: Change = () => [];
const giveLine =
  (lineId: string): Change =>
  (job) => [{ ...job, lines: job.lines.map((line) => (line.id === lineId ? { ...line, given: true } : line)) }];

/** The sheet with one job changed. */
function withJob(sheet: Sheet, jobId: string, change: Change): Sheet {
  return { ...sheet, jobs: sheet.jobs.flatMap((job) => (job.id === jobId ? change(job) : [job])) };
}
