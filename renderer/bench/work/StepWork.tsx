import { useState } from 'react';
import type { Job, Order } from '../../sheet/order.ts';
import { useWriting } from '../../state/shop.ts';
import { useTaps } from '../../state/taps.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import type { Procedure, StepView } from '../step-view.ts';
import { TorqueWork } from '../torque/TorqueWork.tsx';
import { waitingMade } from '../torque/torque-view.ts';
import { FluidWork } from './FluidWork.tsx';
import { Readings, readingsOf } from './Readings.tsx';
import { SampleWork } from './SampleWork.tsx';
import { StepEnd } from './StepEnd.tsx';
import { StepEnded } from './StepEnded.tsx';
import { StepFacts } from './StepFacts.tsx';

interface Props {
  readonly order: Order;
  readonly job: Job;
  readonly procedure: Procedure;
  readonly view: StepView;
  /** Why nothing may be done on the job now; null where it may. */
  readonly held: string | null;
  /** Takes a photo of the step; absent where the page has no place for it. */
  readonly onPhoto?: () => void;
}

/** The step in hand: what it says, what is tightened, measured, filled or drawn in it, and how it ended. */
export function StepWork({ order, job, procedure, view, held, onPhoto }: Props) {
  const { step, standing } = view;
  const writing = useWriting();
  const [typed, setTyped] = useState<readonly string[]>([]);
  const taps = useTaps((state) => state.taps);
  const torque = useAsk(
    'torque.get',
    step.torque === null ? null : { jobId: job.id, step: step.n, wrenchId: null },
  ).data;
  const made = waitingMade(taps, job.id, step.n) ?? torque?.made ?? standing?.entered ?? 0;
  const left = step.torque === null ? 0 : (torque?.touches.length ?? 1) - made;
  return (
    <section className="step-work" aria-label={t('bench.stepInHand', { n: step.n })}>
      <h2>
        {step.n}
        {'\u2002'}
        {step.do}
      </h2>
      <StepFacts step={step} />
      <StepEnded view={view} />
      {step.torque === null ? null : <TorqueWork jobId={job.id} step={step.n} held={held} />}
      {step.measure === null ? null : (
        <Readings
          measure={step.measure}
          typed={typed}
          onChange={setTyped}
          source={step.source || procedure.sourceOfFigures}
        />
      )}
      {step.fluidOut === null ? null : (
        <FluidWork order={order} job={job} step={step} direction="out" fluid={step.fluidOut} held={held} />
      )}
      {step.sample === null ? null : <SampleWork order={order} job={job} step={step} held={held} />}
      {step.fluidIn === null ? null : (
        <FluidWork order={order} job={job} step={step} direction="in" fluid={step.fluidIn} held={held} />
      )}
      <StepEnd
        key={view.state}
        job={job}
        view={view}
        left={left}
        held={held}
        reading={step.measure === null ? [] : readingsOf(step.measure, typed, writing)}
        {...(step.photoWanted && onPhoto !== undefined ? { onPhoto } : {})}
      />
    </section>
  );
}
