import { lacksOther, doersOf as whoDid } from '../../core/bench/second-person.ts';
import { missingEntries } from '../../core/bench/torque.ts';
import { groupOf } from '../../core/bench/torque-group.ts';
import type { StepDoneRow, TorqueEntryRow } from '../tables.ts';
import { bookContent } from './book-content.ts';
import type { Loaded } from './load.ts';

const NO_GROUP = { fasteners: 0, stages: 0 };

/** The later of two rows, as they were recorded. */
const after = (one: Pick<TorqueEntryRow, 'recorded_at' | 'id'>, other: Pick<StepDoneRow, 'recorded_at' | 'id'>) =>
  one.recorded_at > other.recorded_at || (one.recorded_at === other.recorded_at && one.id > other.id);

/** Touches of a step that stand: made since it was last opened, less those taken back. */
function standing(loaded: Loaded, jobId: string, n: number): TorqueEntryRow[] {
  const opened = loaded.steps.findLast(
    (row) => row.job_id === jobId && row.step === n && (row.state === 'open' || row.state === 'failed'),
  );
  const made: TorqueEntryRow[] = [];
  for (const row of loaded.touched) {
    if (row.job_id !== jobId || row.step !== n || (opened !== undefined && !after(row, opened))) continue;
    if (row.what === 'made') made.push(row);
    else made.pop();
  }
  return made;
}

/** The steps of a job as they stand: the last word on each step of the version that the order began with. */
export function stepsOf(loaded: Loaded, jobId: string) {
  const job = loaded.jobs.find((one) => one.id === jobId);
  const version = loaded.versions.find((one) => one.id === job?.book_job_version_id);
  if (!version) return [];
  return bookContent(version).steps.map((step) => {
    const last = loaded.steps.findLast((row) => row.job_id === jobId && row.step === step.n) ?? null;
    const touched = standing(loaded, jobId, step.n);
    return {
      step,
      last,
      group: step.torque === null ? NO_GROUP : groupOf(step.torque),
      touched,
      // A step that was done before single touches were recorded has its number alone.
      made: last?.state === 'done' ? last.entered : touched.length,
    };
  });
}

export type StandingStep = ReturnType<typeof stepsOf>[number];

const signed = ({ step, last }: StandingStep) => ({
  second: step.second,
  state: last?.state ?? ('open' as const),
  byId: last?.person_id ?? null,
  secondId: last?.second_id ?? null,
});

/** A step at which a mistake is a wheel lost on the road. */
const isSafety = (step: StandingStep['step']) => step.torque !== null || step.second !== '';

/** Ids of those who did the work of these steps, or tightened anything in them. */
export const doersOf = (steps: readonly StandingStep[]): ReadonlySet<string> =>
  new Set([
    ...whoDid(steps.map(signed)),
    ...steps
      .filter(({ step }) => step.second !== 'does it')
      .flatMap(({ touched }) => touched.map((row) => row.person_id)),
  ]);

/**
 * What of a job's procedure holds its order from leaving: by step, and how many torque entries are missing. That a step
 * with bolts to a figure or a second person is not needed is one of the owners' word.
 */
export function missingOf(steps: readonly StandingStep[], owners: ReadonlySet<string>) {
  const doers = doersOf(steps);
  const open = steps.filter(({ last }) => last?.state !== 'not-needed');
  const torque = open
    .map(({ step, group, last, made }) => ({
      step: step.n,
      // What failed is still to be done, however much of it was entered.
      missing: missingEntries(group, last?.state === 'failed' ? 0 : made),
    }))
    .filter(({ missing }) => missing > 0);
  const second = open.filter((one) => lacksOther(signed(one), doers)).map(({ step }) => step.n);
  const named = new Set([...torque.map(({ step }) => step), ...second]);
  const failed = open
    .filter(({ step, last }) => step.hold !== '' && last?.state === 'failed' && !named.has(step.n))
    .map(({ step }) => step.n);
  const leftOut = steps
    .filter(({ step, last }) => last?.state === 'not-needed' && !owners.has(last.person_id) && isSafety(step))
    .map(({ step }) => step.n);
  return { torque, second, failed, leftOut };
}
