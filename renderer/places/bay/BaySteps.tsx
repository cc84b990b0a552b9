import { StepList } from '../../bench/StepList.tsx';
import type { Procedure } from '../../bench/step-view.ts';
import type { Job, Order } from '../../sheet/order.ts';
import { t } from '../../words/t.ts';

interface Props {
  readonly order: Order;
  readonly job: Job;
  readonly procedure: Procedure;
  readonly held: string | null;
  readonly onPhoto: (step: number) => void;
}

/** The steps beside the lift: two that are done, the one in hand, three to come, all of them when wanted. */
export function BaySteps({ order, job, procedure, held, onPhoto }: Props) {
  return (
    <section aria-label={t('bench.procedure')}>
      <StepList key={job.id} {...{ order, job, procedure, held, onPhoto }} follow around={{ before: 2, after: 3 }} />
    </section>
  );
}
