import { useState } from 'react';
import { stageText } from '../../core/bench/stage.ts';
import { requiredEntries } from '../../core/bench/torque.ts';
import { groupOf } from '../../core/bench/torque-group.ts';
import type { OutputOf } from '../../core/contract/index.ts';
import { Button } from '../parts/Button.tsx';
import { Caution } from '../parts/Caution.tsx';
import { Field } from '../parts/Field.tsx';
import { Tick } from '../parts/Tick.tsx';
import type { Job } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useShop } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';

type Step = OutputOf<'jobBook.version'>['content']['steps'][number];

/** The procedure that the job began with, ticked step by step. */
export function Steps({ job }: { readonly job: Job }) {
  const version = useAsk('jobBook.version', job.bookVersionId === null ? null : { versionId: job.bookVersionId }).data;
  if (version === undefined) return null;
  const { steps, cautions } = version.content;
  const open = job.steps.find((step) => step.state === 'open')?.n;
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
          {job.covered ? null : <p className="small in-stop">{t('bench.heldNoYes', { letter: job.letter })}</p>}
          <ol>
            {steps.map((step) => (
              <StepRow key={step.n} job={job} step={step} next={step.n === open} />
            ))}
          </ol>
        </section>
      )}
    </>
  );
}

/** Torque entries a step needs in all: bolts by sides by stages. */
function entriesOf(step: Step): number {
  const { torque } = step;
  return torque === null ? 0 : requiredEntries(groupOf(torque));
}

function figuresOf(step: Step): string {
  const torque = step.torque?.stages.map((stage) => stageText(stage).replaceAll(' ', '\u00a0')) ?? [];
  const measure =
    step.measure === null ? [] : [`${step.measure.least}\u2013${step.measure.most}\u00a0${step.measure.unit}`];
  return [...torque, ...measure].join(', ');
}

function StepRow({ job, step, next }: { readonly job: Job; readonly step: Step; readonly next: boolean }) {
  const tick = useDo('step.tick');
  const make = useDo('torque.make');
  const people = useShop()?.people.filter((person) => person.active) ?? [];
  const [second, setSecond] = useState('');
  const [code, setCode] = useState('');
  const [why, setWhy] = useState('');
  const [more, setMore] = useState(false);
  const state = job.steps.find((one) => one.n === step.n);
  const needed = entriesOf(step);
  const entered = state?.entered ?? 0;
  const signs = step.second === 'signs' || step.second === 'does it';
  const done = state?.state === 'done';
  const run = (to: 'done' | 'open' | 'not-needed' | 'failed') =>
    tick.run({
      jobId: job.id,
      n: step.n,
      state: to,
      why,
      second: signs && to === 'done' && second !== '' ? { personId: second, code } : null,
    });
  return (
    <li className={next ? 'step next' : 'step'}>
      <div className="step-line">
        <Tick ticked={done} disabled={!job.covered} onTick={(ticked) => void run(ticked ? 'done' : 'open')}>
          {step.n}
          {'\u2002'}
          {step.do}
        </Tick>
        <span className="figure semi">{figuresOf(step)}</span>
      </div>
      {step.hold === '' ? null : <p className="small in-heed">{t('bench.hold', { words: step.hold })}</p>}
      {step.care === '' ? null : <p className="small">{step.care}</p>}
      {state !== undefined && (state.state === 'not-needed' || state.state === 'failed') ? (
        <p className="small ink-2">{t(`bench.state-${state.state}`, { why: state.why })}</p>
      ) : null}
      {done ? (
        <p className="small ink-2">
          {state.secondBy === null ? state.by : t('bench.doneBy', { by: state.by ?? '', second: state.secondBy })}
        </p>
      ) : null}
      {next && needed > 0 ? (
        <p className="step-torque">
          {t('bench.entered', { done: entered, n: needed })}{' '}
          <Button
            small
            disabled={!job.covered || make.busy || entered >= needed}
            onClick={() => void make.run({ jobId: job.id, step: step.n, touch: entered })}
          >
            {t('bench.tightened')}
          </Button>
        </p>
      ) : null}
      {next && signs ? (
        <div className="row-form">
          <label className="field">
            {t('bench.second')}
            <select className="in" value={second} onChange={(event) => setSecond(event.target.value)}>
              <option value="" />
              {people.map((person) => (
                <option key={person.id} value={person.id}>
                  {person.name}
                </option>
              ))}
            </select>
          </label>
          <Field label={t('bench.secondCode')} type="password" value={code} onChange={setCode} />
        </div>
      ) : null}
      {next && job.covered ? (
        more ? (
          <div className="row-form">
            <Field label={t('bench.why')} value={why} onChange={setWhy} autoFocus />
            <Button small onClick={() => void run('not-needed')}>
              {t('bench.notNeeded')}
            </Button>
            <Button small onClick={() => void run('failed')}>
              {t('bench.failed')}
            </Button>
          </div>
        ) : (
          <button type="button" className="link small" onClick={() => setMore(true)}>
            {t('bench.otherwise')}
          </button>
        )
      ) : null}
      <Wrong error={tick.error ?? make.error} />
    </li>
  );
}
