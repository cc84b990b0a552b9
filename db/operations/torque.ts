import { dueTouch, enteredTogether } from '../../core/bench/tightening.ts';
import { type SidedTouch, touchesOf } from '../../core/bench/torque-group.ts';
import { reckonStage } from '../../core/bench/wrench.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { bookContent } from '../order/book-content.ts';
import { type Loaded, loadOrder } from '../order/load.ts';
import { letterOf } from '../order/reckon.ts';
import { type StandingStep, stepsOf } from '../order/steps.ts';
import { signedIn } from '../people.ts';
import { held, notFound } from '../refusal.ts';
import type { JobRow, TorqueEntryRow } from '../tables.ts';
import { jobRow } from './on-the-sheet.ts';
import { heldByHoldPoint, stepToWorkOn, whenDone } from './step.ts';
import { wrenchBrief, wrenchRow } from './wrench.ts';

/** The fasteners of a step. Throws not-found where it tightens nothing. */
function groupOfStep({ step }: StandingStep) {
  if (step.torque === null) throw notFound('torque', String(step.n));
  return step.torque;
}

/** A step that is done or not needed is opened again before anything is tightened in it. */
function heldWhenSettled(job: JobRow, { step, last }: StandingStep): void {
  if (last?.state === 'done' || last?.state === 'not-needed')
    throw held([{ what: 'step-settled', with: { letter: letterOf(job.place), step: step.n } }]);
}

const placeDue = (all: readonly SidedTouch[], made: number): number | null =>
  dueTouch(all, made) === null ? null : made;

/** Where the figures of a step are from: its own source, else that of its job. */
function sourceOf(loaded: Loaded, job: JobRow, { step }: StandingStep): string {
  if (step.source !== '') return step.source;
  const version = loaded.versions.find((one) => one.id === job.book_job_version_id);
  return version === undefined ? '' : bookContent(version).sourceOfFigures;
}

/** Each touch with what is recorded of it. */
function withMade(loaded: Loaded, all: readonly SidedTouch[], made: readonly TorqueEntryRow[]) {
  const together = enteredTogether(made.map((row) => row.at));
  const name = (id: string) => loaded.people.get(id)?.name ?? '';
  return all.map(({ side, hole, stage, check }, touch) => {
    const row = made[touch];
    return {
      ...{ touch, side, hole, stage, check },
      made:
        row === undefined
          ? null
          : {
              by: name(row.person_id),
              at: row.at,
              wrench: row.wrench_id === null ? '' : (loaded.wrenches.get(row.wrench_id) ?? ''),
              overdue: row.overdue === 1,
              together: together[touch] ?? false,
              lateBy: row.recorded_at - row.at > 60_000 ? name(row.person_id) : '',
            },
    };
  });
}

async function keepTouch(
  context: Context,
  of: { jobId: string; step: number; what: TorqueEntryRow['what']; touch: number } & SidedTouch,
  more: Pick<TorqueEntryRow, 'wrench_id' | 'overdue' | 'at'>,
): Promise<void> {
  await context.write.insert('torque_entry', {
    id: newId(),
    job_id: of.jobId,
    step: of.step,
    what: of.what,
    touch: of.touch,
    side: of.side,
    hole: of.hole,
    stage: of.stage,
    check_round: of.check ? 1 : 0,
    person_id: signedIn(context).id,
    recorded_at: context.now,
    ...more,
  });
}

export const torqueHandlers: Handlers = {
  'torque.get': async ({ jobId, step: n, wrenchId }, context) => {
    const job = await jobRow(context, jobId);
    const loaded = await loadOrder(context, job.work_order_id);
    const found = stepsOf(loaded, jobId).find(({ step }) => step.n === n);
    if (!found) throw notFound('step', String(n));
    const group = groupOfStep(found);
    const all = touchesOf(group);
    const wrench = wrenchId === null ? null : wrenchBrief(await wrenchRow(context, wrenchId), context.today);
    return {
      jobId,
      step: n,
      letter: letterOf(job.place),
      do: found.step.do,
      group,
      source: sourceOf(loaded, job, found),
      state: found.last?.state ?? 'open',
      stages: group.stages.map((entered) => ({ entered, ...reckonStage(entered, group, wrench) })),
      touches: withMade(loaded, all, found.touched),
      made: found.made,
      due: placeDue(all, found.made),
      wrench,
    };
  },
  'torque.make': async ({ jobId, step: n, touch, count, wrenchId, at }, context) => {
    const when = whenDone(context, at);
    const { job, steps, found } = await stepToWorkOn(context, jobId, n);
    const all = touchesOf(groupOfStep(found));
    heldWhenSettled(job, found);
    heldByHoldPoint(steps, n);
    const left = all.length - found.made;
    if (touch !== found.made)
      throw held([{ what: 'torque-not-due', with: { touch: touch + 1, due: Math.min(found.made + 1, all.length) } }]);
    if (count > left) throw held([{ what: 'torque-too-many', with: { left } }]);
    const wrench = wrenchId === null ? null : wrenchBrief(await wrenchRow(context, wrenchId), context.today);
    const more = { wrench_id: wrenchId, overdue: wrench?.overdue ? (1 as const) : (0 as const), at: when.at };
    for (const [place, one] of all.slice(touch, touch + count).entries())
      await keepTouch(context, { ...one, jobId, step: n, what: 'made', touch: touch + place }, more);
    const made = found.made + count;
    return { made, due: placeDue(all, made), warning: wrench?.overdue ? ('wrench-overdue' as const) : ('' as const) };
  },
  'torque.back': async ({ jobId, step: n }, context) => {
    const { job, found } = await stepToWorkOn(context, jobId, n);
    const all = touchesOf(groupOfStep(found));
    heldWhenSettled(job, found);
    const touch = found.made - 1;
    const last = all[touch];
    if (last === undefined) throw held([{ what: 'torque-none-made', with: {} }]);
    await keepTouch(
      context,
      { ...last, jobId, step: n, what: 'back', touch },
      { wrench_id: null, overdue: 0, at: context.now },
    );
    return { made: touch, due: touch };
  },
};
