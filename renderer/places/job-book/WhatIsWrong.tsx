import { type checkProcedure, type Mend, thingsToMend } from '../../../core/bench/procedure-check.ts';
import { t } from '../../words/t.ts';
import { type Content, moved, newLine } from './draft.ts';
import { useJob } from './writing-job.tsx';

export type Warnings = ReturnType<typeof checkProcedure>;

/** The job with one thing put right; a source is named by a person, so it stays as it is. */
function mended(content: Content, mend: Mend): Content {
  switch (mend.what) {
    case 'move-step':
      return { ...content, steps: moved(content.steps, mend.step - 1, mend.to - 1) };
    case 'add-new-parts':
      return {
        ...content,
        lines: [...content.lines, { ...newLine('part', mend.part, mend.count * 1000, ''), condition: 'new' }],
      };
    case 'add-recheck-card':
      return {
        ...content,
        steps: content.steps.map((step) => (step.n === mend.step ? { ...step, recheckCard: true } : step)),
      };
    case 'name-source':
      return content;
  }
}

interface Props {
  readonly warnings: Warnings;
  /** The version that they may keep from the bench. */
  readonly next: number;
  readonly onStep: (n: number) => void;
  readonly onSource: () => void;
}

/** What is wrong with the procedure, on top, each with its step and, where there is one, the mend. */
export function WhatIsWrong({ warnings, next, onStep, onSource }: Props) {
  const { change } = useJob();
  if (warnings.length === 0) return null;
  const sourceless = warnings.filter((warning) => warning.rule === 'torque-without-source');
  const rest = warnings.filter((warning) => warning.rule !== 'torque-without-source');
  const keeps = thingsToMend(warnings.filter((warning) => warning.keepsFromBench));
  const head =
    keeps > 0
      ? t('jobBook.keepsFromBench', { n: keeps, version: next })
      : t('jobBook.wrongHead', { n: thingsToMend(warnings) });
  return (
    <section className="book-wrong" aria-label={head}>
      <p>
        <b>{head}</b>
      </p>
      <ul>
        {rest.map(({ rule, step, mend }) => (
          <li key={`${rule} ${step} ${mend?.what === 'add-new-parts' ? mend.part : ''}`}>
            <StepLink n={step} onStep={onStep} /> {t(`jobBook.${rule}`)}{' '}
            {mend === null || change === null ? null : (
              <button type="button" className="link" onClick={() => change((now) => mended(now, mend))}>
                {mend.what === 'add-new-parts'
                  ? t('jobBook.mend-add-new-parts', { count: mend.count, part: mend.part })
                  : t(`jobBook.mend-${mend.what}`)}
              </button>
            )}
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
                {t('jobBook.mend-name-source')}
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
