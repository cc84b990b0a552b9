import { Caution } from '../parts/Caution.tsx';
import type { Job, Order } from '../sheet/order.ts';
import { useTaps } from '../state/taps.ts';
import { useAsk } from '../state/use-ask.ts';
import { t } from '../words/t.ts';
import { heldWords } from './held-words.ts';
import { StepList } from './StepList.tsx';
import { stepInHand, stepViews } from './step-view.ts';
import { TapsWaiting } from './TapsWaiting.tsx';

/** The procedure that the job began with, beside the sheet. */
export function Steps({ order, job }: { readonly order: Order; readonly job: Job }) {
  const taps = useTaps((state) => state.taps);
  const version = useAsk('jobBook.version', job.bookVersionId === null ? null : { versionId: job.bookVersionId }).data;
  if (version === undefined) return null;
  const { content } = version;
  const { steps, cautions } = content;
  const open = stepInHand(stepViews(content, job, taps))?.step.n;
  return (
    <>
      {cautions.length === 0 ? null : <Caution>{cautions.join(' ')}</Caution>}
      {steps.length === 0 ? null : (
        <section aria-label={t('bench.procedure')}>
          <h3>
            {t('bench.procedure')}{' '}
            <span>
              {open === undefined
                ? t('bench.allDone', { n: steps.length })
                : t('bench.openAt', { n: steps.length, open })}
            </span>
          </h3>
          <TapsWaiting />
          <StepList
            order={order}
            job={job}
            procedure={content}
            held={heldWords(order, job)}
            around={{ before: 2, after: 4 }}
          />
        </section>
      )}
    </>
  );
}
