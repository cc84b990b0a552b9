import { type ReactNode, useEffect, useRef } from 'react';
import { requiredEntries } from '../../../core/bench/torque.ts';
import { Button } from '../../parts/Button.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { t } from '../../words/t.ts';
import { Pick } from '../book-in/Talk.tsx';
import { BoltRing } from './BoltRing.tsx';
import { type Content, newTorque, type Step } from './draft.ts';
import {
  fluidText,
  measureText,
  oneTimeText,
  readFluid,
  readMeasure,
  readOneTime,
  readStages,
  stagesText,
} from './read-step.ts';
import { newtonMetres, poundFeet } from './torque-words.ts';
import { JobCell, useJob } from './writing-job.tsx';

type Torque = NonNullable<Step['torque']>;

const SECONDS = ['', 'looks', 'holds', 'signs', 'does it'] as const;
const PLUGS = ['', 'fill-opened', 'drained'] as const;
const PATTERNS = ['ring', 'rows', 'free'] as const;

const withStep = (content: Content, n: number, part: Partial<Step>): Content => ({
  ...content,
  steps: content.steps.map((step) => (step.n === n ? { ...step, ...part } : step)),
});

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
  const words = (name: 'tool' | 'care' | 'hold', most: number) => (
    <Labelled label={t(`jobBook.${name}`)}>
      <JobCell
        label={t(`jobBook.${name}`)}
        value={step[name]}
        read={(text, now) => (text.length > most ? null : withStep(now, n, { [name]: text }))}
        wrong={t('shop.wordsWrong')}
      />
    </Labelled>
  );
  const fluid = (name: 'fluidIn' | 'fluidOut') => (
    <Labelled label={t(`jobBook.${name}`)}>
      <JobCell
        label={t(`jobBook.${name}`)}
        placeholder={t('jobBook.fluidHint')}
        value={fluidText(step[name])}
        read={(text, now) => {
          const read = text.trim() === '' ? null : readFluid(text);
          if (text.trim() !== '' && read === null) return null;
          if (name === 'fluidOut') return withStep(now, n, { fluidOut: read });
          const { strokes = null, lastTime = true } = step.fluidIn ?? {};
          return withStep(now, n, { fluidIn: read && { ...read, strokes, lastTime } });
        }}
        wrong={t('jobBook.fluidWrong')}
      />
    </Labelled>
  );
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
      <div className="book-step-fields">
        {words('hold', 200)}
        {words('care', 300)}
        {words('tool', 120)}
        <Labelled label={t('jobBook.stepSource')}>
          <JobCell
            label={t('jobBook.stepSource')}
            value={step.source}
            read={(text, now) => (text.length > 300 ? null : withStep(now, n, { source: text }))}
            wrong={t('shop.wordsWrong')}
          />
        </Labelled>
        <Labelled label={t('jobBook.oneTimeParts')}>
          <JobCell
            label={t('jobBook.oneTimeParts')}
            placeholder={t('jobBook.oneTimeHint')}
            value={oneTimeText(step.oneTime)}
            read={(text, now) => {
              const oneTime = readOneTime(text);
              return oneTime === null ? null : withStep(now, n, { oneTime });
            }}
            wrong={t('jobBook.oneTimeWrong')}
          />
        </Labelled>
        <Pick
          label={t('jobBook.second')}
          value={step.second}
          options={SECONDS.map((value) => ({ value, words: t(`jobBook.second-${value}`) }))}
          onChange={(value) => set({ second: SECONDS.find((one) => one === value) ?? '' })}
        />
        <Pick
          label={t('jobBook.plug')}
          value={step.plug}
          options={PLUGS.map((value) => ({ value, words: t(`jobBook.plug-${value}`) }))}
          onChange={(value) => set({ plug: PLUGS.find((one) => one === value) ?? '' })}
        />
        {fluid('fluidOut')}
        {fluid('fluidIn')}
        <Labelled label={t('jobBook.measure')}>
          <JobCell
            label={t('jobBook.measure')}
            placeholder={t('jobBook.measureHint')}
            value={measureText(step.measure)}
            read={(text, now) => {
              const measure = text.trim() === '' ? null : readMeasure(text);
              return text.trim() !== '' && measure === null ? null : withStep(now, n, { measure });
            }}
            wrong={t('jobBook.measureWrong')}
          />
        </Labelled>
      </div>
      <div className="book-step-ticks">
        {(['photoWanted', 'recheckCard'] as const).map((name) => (
          <Tick key={name} ticked={step[name]} onTick={(ticked) => set({ [name]: ticked })}>
            {t(`jobBook.${name}`)}
          </Tick>
        ))}
      </div>
      {step.torque === null ? null : <TorquePart n={n} torque={step.torque} />}
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

function Labelled({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <div className="book-labelled">
      <span aria-hidden="true">{label}</span>
      {children}
    </div>
  );
}

/** Bolts, their order and their rounds, in both units, with how many ticks the bench will ask for. */
function TorquePart({ n, torque }: { readonly n: number; readonly torque: Torque }) {
  const { change } = useJob();
  const set = (content: Content, part: Partial<Torque>) => withStep(content, n, { torque: { ...torque, ...part } });
  const whole = (name: 'count' | 'sides', most: number) => (
    <Labelled label={t(`jobBook.${name}`)}>
      <JobCell
        label={t(`jobBook.${name}`)}
        value={String(torque[name])}
        read={(text, now) => {
          const figure = /^\d{1,2}$/.test(text.trim()) ? Number(text) : 0;
          return figure < 1 || figure > most ? null : set(now, { [name]: figure });
        }}
        wrong={t('jobBook.countWrong', { most })}
      />
    </Labelled>
  );
  const ticks = requiredEntries({ fasteners: torque.count * torque.sides, stages: torque.stages.length });
  return (
    <div className="book-torque">
      {torque.pattern === 'ring' ? <BoltRing count={torque.count} /> : null}
      <Labelled label={t('jobBook.torqueWhat')}>
        <JobCell
          label={t('jobBook.torqueWhat')}
          value={torque.what}
          read={(what, now) => (what.length > 80 ? null : set(now, { what }))}
          wrong={t('shop.wordsWrong')}
        />
      </Labelled>
      {whole('count', 64)}
      {whole('sides', 4)}
      <Pick
        label={t('jobBook.pattern')}
        value={torque.pattern}
        options={PATTERNS.map((value) => ({ value, words: t(`jobBook.pattern-${value}`) }))}
        onChange={(value) => change?.((now) => set(now, { pattern: PATTERNS.find((one) => one === value) ?? 'ring' }))}
      />
      <Labelled label={t('jobBook.stages')}>
        <JobCell
          label={t('jobBook.stages')}
          placeholder={t('jobBook.stagesHint')}
          value={stagesText(torque.stages)}
          read={(text, now) => {
            const stages = readStages(text);
            return stages === null ? null : set(now, { stages });
          }}
          wrong={t('jobBook.stagesWrong')}
        />
      </Labelled>
      <p className="small">
        <b>{newtonMetres(torque.stages)}</b> <span className="ink-2">{poundFeet(torque.stages)}</span>,{' '}
        {t('jobBook.ticks', { n: ticks })}
      </p>
    </div>
  );
}
