import { useEffect, useRef } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { t } from '../../words/t.ts';
import { newTorque, type Step, withStep } from './draft.ts';
import { StepFields } from './StepFields.tsx';
import { TorquePart } from './TorquePart.tsx';
import { JobCell, useJob } from './writing-job.tsx';

interface Props {
  readonly step: Step;
  readonly of: number;
  readonly onMove: (by: -1 | 1) => void;
  readonly onClose: () => void;
  readonly onTakeOut: () => void;
}

/** One step opened: everything that can be said of it. */
export function StepOpen({ step, of, onMove, onClose, onTakeOut }: Props) {
  const { change } = useJob();
  const { n } = step;
  const here = useRef<HTMLFieldSetElement>(null);
  useEffect(() => here.current?.querySelector('input')?.focus(), []);
  const set = (part: Partial<Step>) => change?.((now) => withStep(now, n, part));
  return (
    <fieldset className="book-step-open" ref={here}>
      <legend className="aloud">{t('jobBook.step', { n })}</legend>
      <div className="book-step-top">
        <b className="book-n">{n}</b>
        <JobCell
          label={t('jobBook.stepDo')}
          value={step.do}
          read={(text, now) => (text.trim() === '' || text.length > 400 ? null : withStep(now, n, { do: text.trim() }))}
          wrong={t('jobBook.stepDoNeeded')}
        />
      </div>
      {step.torque === null ? null : <TorquePart n={n} torque={step.torque} />}
      <StepFields step={step} of={of} />
      <div className="book-step-ticks">
        {(['photoWanted', 'recheckCard'] as const).map((name) => (
          <Tick key={name} ticked={step[name]} onTick={(ticked) => set({ [name]: ticked })}>
            {t(`jobBook.${name}`)}
          </Tick>
        ))}
      </div>
      <div className="book-step-acts">
        <Button small onClick={onClose}>
          {t('jobBook.closeStep')}
        </Button>
        {step.torque === null ? (
          <Button small onClick={() => set({ torque: newTorque() })}>
            {t('jobBook.torqueAdd')}
          </Button>
        ) : (
          <Button small onClick={() => set({ torque: null })}>
            {t('jobBook.torqueLeave')}
          </Button>
        )}
        <Button small disabled={n === 1} label={t('jobBook.moveUp', { n })} onClick={() => onMove(-1)}>
          {t('jobBook.up')}
        </Button>
        <Button small disabled={n === of} label={t('jobBook.moveDown', { n })} onClick={() => onMove(1)}>
          {t('jobBook.down')}
        </Button>
        <Button small label={t('jobBook.takeOutStep', { n })} onClick={onTakeOut}>
          {t('jobBook.takeOut')}
        </Button>
      </div>
    </fieldset>
  );
}
