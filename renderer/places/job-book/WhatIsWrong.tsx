import type { checkProcedure } from '../../../core/bench/procedure-check.ts';
import { t, tMaybe } from '../../words/t.ts';
import { moved } from './draft.ts';
import { useJob } from './writing-job.tsx';

export type Warnings = ReturnType<typeof checkProcedure>;

interface Props {
  readonly warnings: Warnings;
  readonly onStep: (n: number) => void;
  readonly onSource: () => void;
}

/** What is wrong with the procedure, on top, each with its step and, where there is one, the mend. */
export function WhatIsWrong({ warnings, onStep, onSource }: Props) {
  const { content, change } = useJob();
  if (warnings.length === 0) return null;
  /** The fill plug, that is loosened only later, comes before the step that drains. */
  const turnRound = (n: number) =>
    change?.((now) => {
      const fill = now.steps.findIndex((step) => step.plug === 'fill-opened' && step.n > n);
      return { ...now, steps: moved(now.steps, fill, n - 1) };
    });
  const sourceless = warnings.filter((warning) => warning.rule === 'torque-without-source');
  const rest = warnings.filter((warning) => warning.rule !== 'torque-without-source');
  return (
    <section
      className="book-wrong"
      aria-label={t('jobBook.wrongHead', { n: rest.length + (sourceless.length ? 1 : 0) })}
    >
      <p>
        <b>{t('jobBook.wrongHead', { n: rest.length + (sourceless.length > 0 ? 1 : 0) })}</b>
      </p>
      <ul>
        {rest.map(({ rule, step }) => (
          <li key={`${rule} ${step}`}>
            <StepLink n={step} onStep={onStep} /> {tMaybe(`jobBook.${rule}`) ?? rule}{' '}
            {rule === 'drain-before-fill' &&
            change !== null &&
            content.steps.some((one) => one.plug === 'fill-opened' && one.n > step) ? (
              <button type="button" className="link" onClick={() => turnRound(step)}>
                {t('jobBook.turnRound')}
              </button>
            ) : null}
          </li>
        ))}
        {sourceless.length === 0 ? null : (
          <li>
            {sourceless.map(({ step }, at) => (
              <span key={step}>
                {at > 0 ? ', ' : null}
                <StepLink n={step} onStep={onStep} />
              </span>
            ))}{' '}
            {t('jobBook.torque-without-source')}{' '}
            {change === null ? null : (
              <button type="button" className="link" onClick={onSource}>
                {t('jobBook.toSource')}
              </button>
            )}
          </li>
        )}
      </ul>
    </section>
  );
}

function StepLink({ n, onStep }: { readonly n: number; readonly onStep: (n: number) => void }) {
  return (
    <button type="button" className="link" onClick={() => onStep(n)}>
      {t('jobBook.step', { n })}
    </button>
  );
}
