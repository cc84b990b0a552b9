import { useWriting } from '../../state/shop.ts';
import type { WordKey } from '../../words/t.ts';
import { t } from '../../words/t.ts';
import { Pick } from '../book-in/Talk.tsx';
import { type Content, type Step, withStep } from './draft.ts';
import { Labelled } from './Labelled.tsx';
import {
  fluidInText,
  fluidText,
  measureText,
  oneTimeText,
  readFluid,
  readFluidIn,
  readMeasure,
  readOneTime,
  readReopens,
  readSample,
  reopensText,
  sampleText,
} from './read-step.ts';
import { JobCell, useJob } from './writing-job.tsx';

const SECONDS = ['', 'looks', 'holds', 'signs', 'does it'] as const;
const PLUGS = ['', 'fill-opened', 'drained'] as const;

interface Props {
  readonly step: Step;
  /** How many steps there are. */
  readonly of: number;
}

/** What can be said of a step besides its words and its torque. */
export function StepFields({ step, of }: Props) {
  const { change } = useJob();
  const writing = useWriting();
  const { n } = step;
  const set = (part: Partial<Step>) => change?.((now) => withStep(now, n, part));
  const text = (name: 'tool' | 'care' | 'hold' | 'level' | 'source', label: WordKey, most: number) => (
    <StepCell
      label={t(label)}
      value={step[name]}
      read={(typed) => (typed.length > most ? null : { [name]: typed })}
      wrong={t('shop.wordsWrong')}
      n={n}
    />
  );
  return (
    <div className="book-step-fields">
      {text('hold', 'jobBook.hold', 200)}
      {text('care', 'jobBook.care', 300)}
      {text('tool', 'jobBook.tool', 120)}
      {text('source', 'jobBook.stepSource', 300)}
      <StepCell
        label={t('jobBook.oneTimeParts')}
        placeholder={t('jobBook.oneTimeHint')}
        value={oneTimeText(step.oneTime)}
        read={(typed) => {
          const oneTime = readOneTime(typed);
          return oneTime === null ? null : { oneTime };
        }}
        wrong={t('jobBook.oneTimeWrong')}
        n={n}
      />
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
      <StepCell
        label={t('jobBook.fluidOut')}
        placeholder={t('jobBook.fluidHint')}
        value={fluidText(step.fluidOut, writing)}
        read={(typed) =>
          orNothing(
            typed,
            (words) => readFluid(words, writing),
            (fluidOut) => ({ fluidOut }),
          )
        }
        wrong={t('jobBook.fluidWrong')}
        n={n}
      />
      <StepCell
        label={t('jobBook.sample')}
        placeholder={t('jobBook.sampleHint')}
        value={sampleText(step.sample)}
        read={(typed) => orNothing(typed, readSample, (sample) => ({ sample }))}
        wrong={t('jobBook.sampleWrong')}
        n={n}
      />
      <StepCell
        label={t('jobBook.fluidIn')}
        placeholder={t('jobBook.fluidInHint')}
        value={fluidInText(step.fluidIn, writing)}
        read={(typed) =>
          orNothing(
            typed,
            (words) => readFluidIn(words, step.fluidIn?.lastTime ?? true, writing),
            (fluidIn) => ({ fluidIn }),
          )
        }
        wrong={t('jobBook.fluidInWrong')}
        n={n}
      />
      {text('level', 'jobBook.level', 200)}
      <StepCell
        label={t('jobBook.measure')}
        placeholder={t('jobBook.measureHint')}
        value={measureText(step.measure)}
        read={(typed) =>
          orNothing(
            typed,
            (words) => readMeasure(words, writing),
            (measure) => ({ measure }),
          )
        }
        wrong={t('jobBook.measureWrong')}
        n={n}
      />
      {n === of ? null : (
        <StepCell
          label={t('jobBook.reopens')}
          placeholder={t('jobBook.reopensHint')}
          value={reopensText(step.reopens)}
          read={(typed) => {
            const reopens = readReopens(typed, n, of);
            return reopens === undefined ? null : { reopens };
          }}
          wrong={t('jobBook.reopensWrong', { from: n + 1, to: of })}
          n={n}
        />
      )}
    </div>
  );
}

/** Nothing typed is nothing said; what is typed has to fit. */
function orNothing<T>(
  typed: string,
  read: (words: string) => T | null,
  part: (value: T | null) => Partial<Step>,
): Partial<Step> | null {
  if (typed.trim() === '') return part(null);
  const value = read(typed);
  return value === null ? null : part(value);
}

interface StepCellProps {
  readonly n: number;
  readonly label: string;
  readonly value: string;
  readonly placeholder?: string;
  readonly read: (typed: string) => Partial<Step> | null;
  readonly wrong: string;
}

function StepCell({ n, label, value, placeholder, read, wrong }: StepCellProps) {
  return (
    <Labelled label={label}>
      <JobCell
        label={label}
        {...(placeholder === undefined ? {} : { placeholder })}
        value={value}
        read={(typed, now: Content) => {
          const part = read(typed);
          return part === null ? null : withStep(now, n, part);
        }}
        wrong={wrong}
      />
    </Labelled>
  );
}
