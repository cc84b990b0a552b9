import { useId } from 'react';
import { useKey } from '../../frame/keys.ts';
import { t } from '../../words/t.ts';
import { moved, newStep, numbered, type Step } from './draft.ts';
import { measureText, oneTimeText } from './read-step.ts';
import { StepOpen } from './StepOpen.tsx';
import { newtonMetres } from './torque-words.ts';
import type { Warnings } from './WhatIsWrong.tsx';
import { JobCell, useJob } from './writing-job.tsx';

interface Props {
  readonly warnings: Warnings;
  readonly open: number | null;
  readonly onOpen: (n: number | null) => void;
}

/** The procedure: numbered steps, one open at a time. */
export function Steps({ warnings, open, onOpen }: Props) {
  const { content, change, takeOut } = useJob();
  const { steps } = content;
  const move = (n: number, by: -1 | 1) => {
    const to = n - 1 + by;
    if (change === null || to < 0 || to >= steps.length) return;
    change((now) => ({ ...now, steps: moved(now.steps, n - 1, to) }));
    onOpen(n + by);
  };
  useKey('Alt+ArrowUp', () => open !== null && move(open, -1), change !== null && open !== null);
  useKey('Alt+ArrowDown', () => open !== null && move(open, 1), change !== null && open !== null);
  useKey('Esc', () => onOpen(null), open !== null);
  const marked = new Set(warnings.map((warning) => warning.step));
  return (
    <section aria-label={t('jobBook.procedure')}>
      <h2 className="book-head">
        {t('jobBook.procedure')} <small>{t('jobBook.procedureWords', { n: steps.length })}</small>
      </h2>
      <Source />
      <ol className="book-steps">
        {steps.map((step) => (
          <li key={step.n} className={marked.has(step.n) ? 'heed' : ''}>
            {step.n === open && change !== null ? (
              <StepOpen
                step={step}
                of={steps.length}
                onMove={(by) => move(step.n, by)}
                onClose={() => onOpen(null)}
                onTakeOut={() => {
                  takeOut?.(step.do, (now) => ({
                    ...now,
                    steps: numbered(now.steps.filter((one) => one.n !== step.n)),
                  }));
                  onOpen(null);
                }}
              />
            ) : (
              <StepRow step={step} onOpen={() => onOpen(step.n)} />
            )}
          </li>
        ))}
      </ol>
      {change === null ? null : (
        <JobCell
          className="book-open"
          label={t('jobBook.addStep')}
          placeholder={t('jobBook.addStep')}
          value=""
          read={(text, now) =>
            text.trim() === '' || now.steps.length >= 200
              ? null
              : { ...now, steps: numbered([...now.steps, newStep(text.trim().slice(0, 400))]) }
          }
          wrong={t('jobBook.stepDoNeeded')}
        />
      )}
      <Cautions />
    </section>
  );
}

function StepRow({ step, onOpen }: { readonly step: Step; readonly onOpen: () => void }) {
  return (
    <button type="button" className="book-step" onClick={onOpen}>
      <b className="book-n">{step.n}</b>
      <span>
        {step.do} <Marks step={step} />
      </span>
      <span className="figure semi">{figuresOf(step)}</span>
    </button>
  );
}

/** Dashed: a one-time part. Plain: the second person. Heavy: hold. */
function Marks({ step }: { readonly step: Step }) {
  return (
    <>
      {step.oneTime.length > 0 ? <span className="book-mark one">{oneTimeText(step.oneTime)}</span> : null}
      {step.second === '' ? null : (
        <span className="book-mark">{t('jobBook.secondMark', { what: t(`jobBook.second-${step.second}`) })}</span>
      )}
      {step.hold === '' ? null : (
        <span className="book-mark hold">
          {t('jobBook.holdMark')}: {step.hold}
        </span>
      )}
      {step.care === '' ? null : <span className="book-mark care">{step.care}</span>}
    </>
  );
}

function figuresOf(step: Step): string {
  const torque =
    step.torque === null
      ? ''
      : t('jobBook.bolts', {
          count: step.torque.count * step.torque.sides,
          figures: newtonMetres(step.torque.stages),
        });
  const fluid = step.fluidIn ?? step.fluidOut;
  return [torque, measureText(step.measure), fluid === null ? '' : `${fluid.quantity / 1000}\u00a0L`]
    .filter((text) => text !== '')
    .join(', ');
}

/** Where the figures of the steps are from. */
function Source() {
  const { content } = useJob();
  return (
    <div className="book-source">
      <span aria-hidden="true">{t('jobBook.source')}</span>
      <JobCell
        className="book-source-cell"
        label={t('jobBook.source')}
        placeholder={t('jobBook.sourceHint')}
        value={content.sourceOfFigures}
        read={(text, now) => (text.length > 300 ? null : { ...now, sourceOfFigures: text })}
        wrong={t('shop.wordsWrong')}
      />
    </div>
  );
}

function Cautions() {
  const { content, change } = useJob();
  const id = useId();
  const placed = content.cautions.map((caution, at) => ({ caution, at, key: `${at} of ${content.cautions.length}` }));
  return (
    <section aria-labelledby={id} className="book-cautions">
      <h3 id={id}>{t('jobBook.cautions')}</h3>
      {placed.map(({ caution, at, key }) => (
        <JobCell
          key={key}
          label={t('jobBook.caution', { n: at + 1 })}
          value={caution}
          read={(text, now) => {
            if (text.length > 300) return null;
            const cautions = now.cautions.map((one, i) => (i === at ? text : one)).filter((one) => one.trim() !== '');
            return { ...now, cautions };
          }}
          wrong={t('shop.wordsWrong')}
        />
      ))}
      {change === null ? null : (
        <JobCell
          className="book-open"
          label={t('jobBook.addCaution')}
          placeholder={t('jobBook.addCaution')}
          value=""
          read={(text, now) =>
            text.trim() === '' || text.length > 300 || now.cautions.length >= 20
              ? null
              : { ...now, cautions: [...now.cautions, text.trim()] }
          }
          wrong={t('shop.wordsWrong')}
        />
      )}
    </section>
  );
}
