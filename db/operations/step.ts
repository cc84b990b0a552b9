import { lacksOther } from '../../core/bench/second-person.ts';
import { missingEntries } from '../../core/bench/torque.ts';
import { codeFits } from '../code.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { loadOrder } from '../order/load.ts';
import { letterOf } from '../order/reckon.ts';
import { doersOf, type StandingStep, stepsOf } from '../order/steps.ts';
import { signedIn } from '../people.ts';
import { badInput, held, notAllowed, notFound } from '../refusal.ts';
import type { JobRow, StepDoneRow } from '../tables.ts';
import { heldUnlessCovered } from './on-the-sheet.ts';

/** What is keyed in this long after it was done was not tapped with the work. */
const LATE_MS = 60_000;
/** A tablet's own clock may go ahead by so much. */
const AHEAD_MS = 300_000;

/**
 * When something was done that was handed in with its own hour or without, and whether it comes late. An hour a little
 * ahead is now; throws bad-input for one to come.
 */
export function whenDone({ now }: Pick<Context, 'now'>, at: number | null): { at: number; late: boolean } {
  if (at !== null && at - now > AHEAD_MS) throw badInput('at', 'in-the-future');
  return { at: Math.min(at ?? now, now), late: at !== null && now - at > LATE_MS };
}

/** A job's steps as they stand, for work on one of them. Held without a yes; throws not-found for a step that it has not. */
export async function stepToWorkOn(context: Context, jobId: string, n: number) {
  const job = await heldUnlessCovered(context, jobId);
  const loaded = await loadOrder(context, job.work_order_id);
  const steps = stepsOf(loaded, jobId);
  const found = steps.find(({ step }) => step.n === n);
  if (!found) throw notFound('step', String(n));
  return { job, loaded, steps, found };
}

/** A hold point stops whatever comes after it until it is settled. */
export function heldByHoldPoint(steps: readonly StandingStep[], n: number): void {
  const stop = steps.find(
    ({ step, last }) =>
      step.n < n && step.hold !== '' && (last === null || last.state === 'open' || last.state === 'failed'),
  );
  if (stop) throw held([{ what: 'hold-point', with: { step: stop.step.n, hold: stop.step.hold } }]);
}

/** The second person, by their own code; null where none was handed in. */
async function otherPerson(
  context: Context,
  second: { personId: string; code: string } | null,
): Promise<string | null> {
  if (second === null) return null;
  if (second.personId === signedIn(context).id) throw held([{ what: 'second-is-first', with: {} }]);
  const other = await context.tx
    .selectFrom('person')
    .select(['id', 'code_hash'])
    .where('id', '=', second.personId)
    .where('active', '=', 1)
    .executeTakeFirst();
  if (!other || !codeFits(second.code, other.code_hash)) throw notAllowed('code');
  return other.id;
}

type HeldReasons = Parameters<typeof held>[0];

/** What keeps a step from being done as it now stands. */
function keepsFromDone(
  job: JobRow,
  steps: readonly StandingStep[],
  { step, group, made }: StandingStep,
  by: { byId: string; secondId: string | null },
  reading: readonly number[],
): HeldReasons {
  const here = { letter: letterOf(job.place), step: step.n };
  const missing = missingEntries(group, made);
  if (missing > 0) return [{ what: 'torque-missing', with: { ...here, missing } }];
  const { measure } = step;
  if (measure !== null && reading.some((figure) => figure < measure.least || figure > measure.most))
    return [{ what: 'measure-outside', with: { what: measure.what, least: measure.least, most: measure.most } }];
  const doers = doersOf(steps.filter((one) => one.step.n !== step.n));
  if (!lacksOther({ second: step.second, state: 'done', ...by }, doers)) return [];
  return [step.second === 'signs' ? { what: 'second-missing', with: here } : { what: 'other-does-it', with: here }];
}

/** Throws bad-input unless there is a figure for each place that the step measures, and none where it measures nothing. */
function fitsPlaces(
  { step: { measure } }: StandingStep,
  state: StepDoneRow['state'],
  { length }: readonly number[],
): void {
  if (measure === null && length > 0) throw badInput('reading', 'not-measured-here');
  if (measure === null) return;
  if (length > measure.places) throw badInput('reading', 'too-many', { most: measure.places });
  if (state === 'done' && length < measure.places) throw badInput('reading', 'too-few', { least: measure.places });
}

/** Which steps open again with this one: those that it names, else every one after it; only those that were touched. */
function opensAgain(steps: readonly StandingStep[], { step }: StandingStep): StandingStep[] {
  return steps
    .filter((one) => (step.reopens === null ? one.step.n > step.n : step.reopens.includes(one.step.n)))
    .filter(({ last, made }) => made > 0 || (last !== null && last.state !== 'open'));
}

export const stepHandlers: Handlers = {
  'step.tick': async ({ jobId, n, state, why, reading, second, at }, context) => {
    const who = signedIn(context);
    const when = whenDone(context, at);
    const { job, steps, found } = await stepToWorkOn(context, jobId, n);
    if ((state === 'not-needed' || state === 'failed') && why === '') throw badInput('why', 'needed');
    fitsPlaces(found, state, reading);
    const secondId = await otherPerson(context, second);
    // Who tightened the bolts does not sign for them.
    if (found.touched.some((row) => row.person_id === secondId)) throw held([{ what: 'second-is-first', with: {} }]);
    const missing = missingEntries(found.group, found.made);
    if (state === 'not-needed' && found.made > 0 && missing > 0)
      throw held([{ what: 'torque-missing', with: { letter: letterOf(job.place), step: n, missing } }]);
    if (state === 'done') {
      heldByHoldPoint(steps, n);
      const reasons = keepsFromDone(job, steps, found, { byId: who.id, secondId }, reading);
      if (reasons.length > 0) throw held(reasons);
    }
    const write = (row: Partial<StepDoneRow> & Pick<StepDoneRow, 'step' | 'state' | 'why'>) =>
      context.write.insert('step_done', {
        id: newId(),
        job_id: jobId,
        entered: 0,
        person_id: who.id,
        second_id: null,
        at: context.now,
        recorded_at: context.now,
        wrench_id: null,
        reading: null,
        late: null,
        ...row,
      });
    await write({
      step: n,
      state,
      why,
      entered: state === 'done' ? found.made : 0,
      second_id: secondId,
      at: when.at,
      wrench_id: found.touched.findLast((row) => row.wrench_id !== null)?.wrench_id ?? null,
      reading: reading.length === 0 ? null : JSON.stringify(reading),
      late: when.late ? 1 : null,
    });
    const reopened = state === 'open' || state === 'failed' ? opensAgain(steps, found) : [];
    for (const { step } of reopened) await write({ step: step.n, state: 'open', why: `step ${n} again` });
    return { reopened: reopened.map(({ step }) => step.n) };
  },
};
