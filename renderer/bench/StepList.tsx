import { useEffect, useRef, useState } from 'react';
import type { Job, Order } from '../sheet/order.ts';
import { tap, useTaps } from '../state/taps.ts';
import { t } from '../words/t.ts';
import { StepRow } from './StepRow.tsx';
import { type Procedure, type StepView, stepInHand, stepViews } from './step-view.ts';
import { StepWork } from './work/StepWork.tsx';

interface Props {
  readonly order: Order;
  readonly job: Job;
  readonly procedure: Procedure;
  /** Why nothing may be done on the job now; null where it may. */
  readonly held: string | null;
  /** How many steps stand before and after the one in hand until all are wanted. */
  readonly around: { readonly before: number; readonly after: number };
  /** The page follows the hand: the step that comes next is brought into view. */
  readonly follow?: boolean;
  readonly onPhoto?: (step: number) => void;
}

/** The steps of a job in their order, the one in hand open among them. */
export function StepList({ order, job, procedure, held, around, follow = false, onPhoto }: Props) {
  const taps = useTaps((state) => state.taps);
  const views = stepViews(procedure, job, taps);
  const [all, setAll] = useState(false);
  // What was taken in hand stays there until it has ended; then the next one that is open comes.
  const [taken, setTaken] = useState<{ n: number; state: StepView['state'] } | null>(null);
  const chosen = views.find(({ step, state }) => step.n === taken?.n && state === taken.state);
  const hand = chosen ?? stepInHand(views);
  const at = hand === undefined ? views.length - 1 : views.indexOf(hand);
  const shown = all
    ? views
    : views.slice(
        Math.max(0, Math.min(at - around.before, views.length - 1 - around.before - around.after)),
        Math.max(at + around.after + 1, around.before + around.after + 1),
      );
  const open = useRef<HTMLLIElement>(null);
  const inHand = hand?.step.n;
  useEffect(() => {
    if (follow && inHand !== undefined) open.current?.scrollIntoView({ block: 'nearest' });
  }, [follow, inHand]);
  const take = ({ step, state }: StepView) => setTaken({ n: step.n, state });
  return (
    <>
      <ol className="steps">
        {shown.map((view) =>
          view === hand ? (
            <li key={view.step.n} ref={open} className="step-open" aria-current="step">
              <StepWork
                key={view.step.n}
                {...{ order, job, procedure, view, held }}
                {...(onPhoto === undefined ? {} : { onPhoto: () => onPhoto(view.step.n) })}
              />
            </li>
          ) : (
            <StepRow
              key={view.step.n}
              view={view}
              held={held !== null}
              onTake={() => take(view)}
              onDone={() => void tap('step.tick', { jobId: job.id, n: view.step.n, state: 'done' })}
            />
          ),
        )}
      </ol>
      {views.length <= shown.length ? null : (
        <button type="button" className="link all-steps" onClick={() => setAll(true)}>
          {t('bench.allSteps', { n: views.length })}
        </button>
      )}
    </>
  );
}
