import { bothUnits } from '../../core/bench/stage.ts';
import type { OutputOf } from '../../core/contract/index.ts';
import type { Job } from '../sheet/order.ts';
import { tapsOf, type WaitingTap } from '../state/taps.ts';
import { figureText } from './figure-text.ts';
import { stageWords } from './torque/stage-words.ts';

export type Procedure = OutputOf<'jobBook.version'>['content'];
export type Step = Procedure['steps'][number];
type Standing = Job['steps'][number];

/** A step of the procedure with how it stands. */
export interface StepView {
  readonly step: Step;
  readonly state: Standing['state'];
  readonly standing: Standing | undefined;
  /** What was tapped of it waits for the shop. */
  readonly waiting: boolean;
}

/** All steps of a job as the person at it sees them: what the shop has, and over it what waits. */
export function stepViews(procedure: Procedure, job: Job, taps: readonly WaitingTap[]): StepView[] {
  const ticks = tapsOf(taps, 'step.tick').filter(({ input }) => input.jobId === job.id);
  return procedure.steps.map((step) => {
    const standing = job.steps.find((one) => one.n === step.n);
    const tick = ticks.findLast(({ input }) => input.n === step.n);
    return { step, standing, state: tick?.input.state ?? standing?.state ?? 'open', waiting: tick !== undefined };
  });
}

/** The first step that is still to be done; undefined when none is. */
export function stepInHand(views: readonly StepView[]): StepView | undefined {
  return views.find(({ state }) => state === 'open' || state === 'failed');
}

/** The figures of a step on its row: the last round in both units, or what is measured. */
export function stepFigures({ torque, measure, fluidIn }: Step): string {
  const last = torque?.stages.at(-1);
  const tightened =
    last === undefined
      ? []
      : stageWords({ entered: last, torque: bothUnits(last), degrees: 'degrees' in last ? last.degrees : null });
  const measured = measure === null ? [] : [limitsText(measure)];
  const filled = fluidIn === null ? [] : [`${figureText(fluidIn.quantity / 1000)}\u00a0L`];
  return [...tightened, ...measured, ...filled].filter((text) => text !== '').join(', ');
}

/** "0.13 to 0.18 mm". */
export function limitsText({ least, most, unit }: NonNullable<Step['measure']>): string {
  return `${figureText(least)}\u2013${figureText(most)}\u00a0${unit}`;
}
