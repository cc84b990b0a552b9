import { useEffect, useId, useLayoutEffect, useRef } from 'react';
import { useKey } from '../../frame/keys.ts';
import { useRowKeys } from '../../parts/row-keys.ts';
import { t } from '../../words/t.ts';
import { moved, newStep, numbered } from './draft.ts';
import { StepOpen } from './StepOpen.tsx';
import { StepRow } from './StepRow.tsx';
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
  const list = useRef<HTMLOListElement>(null);
  const rowOf = (n: number) => list.current?.querySelectorAll<HTMLElement>('li')[n - 1]?.querySelector('button');
  // The row that was moved keeps the focus where it stands then.
  const follow = useRef<number | null>(null);
  useLayoutEffect(() => {
    if (follow.current !== null) rowOf(follow.current)?.focus();
    follow.current = null;
  });
  const move = (n: number, by: -1 | 1) => {
    const to = n - 1 + by;
    if (change === null || to < 0 || to >= steps.length) return;
    change((now) => ({ ...now, steps: moved(now.steps, n - 1, to) }));
    if (open !== null) onOpen(n + by);
    else follow.current = n + by;
  };
  const dragged = useRef<number | null>(null);
  const drop = (on: number) => {
    const from = dragged.current;
    dragged.current = null;
    if (from !== null && from !== on) change?.((now) => ({ ...now, steps: moved(now.steps, from - 1, on - 1) }));
  };
  /** The step that is open, else the one whose row has the focus. */
  const inHand = () => open ?? steps.find((step) => rowOf(step.n)?.matches(':focus'))?.n ?? null;
  const moveInHand = (by: -1 | 1) => {
    const n = inHand();
    // What is still being typed stays with its step.
    if (open !== null && document.activeElement instanceof HTMLElement) document.activeElement.blur();
    if (n !== null) move(n, by);
  };
  useKey('Alt+ArrowUp', () => moveInHand(-1), change !== null);
  useKey('Alt+ArrowDown', () => moveInHand(1), change !== null);
  useKey('Esc', () => onOpen(null), open !== null);
  useRowKeys(list, '.book-step');
  // When a step is closed the keys go on from its row.
  const before = useRef(open);
  useEffect(() => {
    const closed = open === null ? before.current : null;
    before.current = open;
    if (closed !== null)
      list.current?.querySelectorAll<HTMLElement>('li')[closed - 1]?.querySelector('button')?.focus();
  }, [open]);
  const marked = new Set(warnings.map((warning) => warning.step));
  return (
    <section aria-label={t('jobBook.procedure')}>
      <h2 className="book-head">
        {t('jobBook.procedure')} <small>{t('jobBook.procedureWords', { n: steps.length })}</small>
      </h2>
      <Source />
      <ol className="book-steps" ref={list}>
        {steps.map((step) => (
          <li
            key={step.n}
            className={marked.has(step.n) ? 'heed' : ''}
            draggable={change !== null && open === null}
            onDragStart={() => {
              dragged.current = step.n;
            }}
            onDragOver={(event) => event.preventDefault()}
            onDrop={(event) => {
              event.preventDefault();
              drop(step.n);
            }}
          >
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
          again
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
          again
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
