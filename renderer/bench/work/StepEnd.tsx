import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import type { Job } from '../../sheet/order.ts';
import { Wrong } from '../../sheet/Wrong.tsx';
import { tap } from '../../state/taps.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { EarlierTime, useEarlier } from '../EarlierTime.tsx';
import type { StepView } from '../step-view.ts';
import { type Second, SecondSigns } from './SecondSigns.tsx';

interface Props {
  readonly job: Job;
  readonly view: StepView;
  /** Touches of the wrench that are still to be made. */
  readonly left: number;
  readonly held: string | null;
  /** What was measured; null while a figure is missing. */
  readonly reading: readonly number[] | null;
  readonly onPhoto?: () => void;
}

const NOBODY: Second = { personId: '', code: '' };

/** How a step ended: done, not needed and why, failed and what next; with whoever signs. */
export function StepEnd({ job, view, left, held, reading, onPhoto }: Props) {
  const { step, state } = view;
  const tick = useDo('step.tick');
  const [second, setSecond] = useState(NOBODY);
  const [other, setOther] = useState<'not-needed' | 'failed' | null>(null);
  const [why, setWhy] = useState('');
  const [time, setTime] = useState<string | null>(null);
  const earlier = useEarlier();
  const wantsOther = step.second === 'signs' || step.second === 'does it';
  const settled = state === 'done' || state === 'not-needed';
  const key = { jobId: job.id, n: step.n };

  const done = () => {
    const input = { ...key, state: 'done' as const, reading: [...(reading ?? [])], ...earlier(time) };
    // A code is for the shop alone and is not kept in the browser, so a signature waits for nobody.
    if (second.personId !== '') void tick.run({ ...input, second });
    else if (step.second === 'signs') void tick.run(input);
    else void tap('step.tick', input);
  };
  if (settled)
    return held === null ? (
      <div className="step-end">
        <Button onClick={() => void tap('step.tick', { ...key, state: 'open' })}>{t('bench.openAgain')}</Button>
      </div>
    ) : null;
  if (other !== null)
    return (
      <form
        className="step-end"
        onSubmit={(event) => {
          event.preventDefault();
          if (why.trim() !== '') void tap('step.tick', { ...key, state: other, why }).then(() => setOther(null));
        }}
      >
        <Field
          label={t(other === 'failed' ? 'bench.whatNext' : 'bench.whyNot')}
          value={why}
          onChange={setWhy}
          maxLength={300}
          autoFocus
        />
        <div className="step-acts">
          <Button kind="go" type="submit" held={why.trim() === '' ? t('bench.sayWhy') : null}>
            {t(other === 'failed' ? 'bench.failed' : 'bench.notNeeded')}
          </Button>
          <Button onClick={() => setOther(null)}>{t('bench.goBack')}</Button>
        </div>
      </form>
    );
  const notYet = held ?? (reading === null ? t('bench.measureFirst') : null);
  return (
    <div className="step-end">
      {wantsOther && left <= 0 ? <SecondSigns value={second} onChange={setSecond} /> : null}
      <Wrong error={tick.error} />
      {left > 0 ? <p className="small ink-2">{t('bench.touchesLeft', { n: left })}</p> : null}
      <div className="step-acts">
        {left > 0 ? null : (
          <Button kind="go" held={notYet} disabled={tick.busy} onClick={done}>
            {t(second.personId === '' ? 'bench.stepDone' : 'bench.stepSigned', { n: step.n })}
          </Button>
        )}
        {onPhoto === undefined ? null : <Button onClick={onPhoto}>{t('bench.photoWanted')}</Button>}
        {held === null ? (
          <>
            <Button onClick={() => setOther('not-needed')}>{t('bench.notNeeded')}</Button>
            <Button onClick={() => setOther('failed')}>{t('bench.failed')}</Button>
            {left > 0 ? null : <EarlierTime value={time} onChange={setTime} />}
          </>
        ) : null}
      </div>
    </div>
  );
}
