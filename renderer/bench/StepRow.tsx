import { Tick } from '../parts/Tick.tsx';
import { WordMark } from '../parts/WordMark.tsx';
import { useWriting } from '../state/shop.ts';
import { t } from '../words/t.ts';
import { timeText } from '../words/times.ts';
import { type StepView, stepFigures } from './step-view.ts';

interface Props {
  readonly view: StepView;
  readonly held: boolean;
  readonly onTake: () => void;
  readonly onDone: () => void;
}

/** One step that is not in hand: its box, its words, its figures, and how it ended. */
export function StepRow({ view, held, onTake, onDone }: Props) {
  const writing = useWriting();
  const { step, state, standing, waiting } = view;
  const plain =
    step.torque === null &&
    step.measure === null &&
    step.fluidIn === null &&
    step.fluidOut === null &&
    step.sample === null &&
    step.second !== 'signs' &&
    step.second !== 'does it';
  const ended = endWords(view);
  return (
    <li className={`step-row ${state}`}>
      {/* A glove that slips over a done step opens it to look at, and undoes nothing. */}
      <Tick
        ticked={state === 'done'}
        disabled={held}
        label={`${step.n} ${step.do}`}
        onTick={() => (plain && state === 'open' ? onDone() : onTake())}
      />
      <button type="button" className="step-words" onClick={onTake}>
        <span>
          {step.n}
          {'\u2002'}
          {step.do}
        </span>
        {ended === '' ? null : <span className="small ink-2">{ended}</span>}
        {state === 'done' && standing?.at != null ? (
          <span className="small ink-2">
            {standing.secondBy === null
              ? standing.by
              : t('bench.doneBy', { by: standing.by ?? '', second: standing.secondBy })}
            , {timeText(standing.at, writing)}
            {standing.lateBy === '' ? '' : `, ${t('bench.lateBy', { name: standing.lateBy })}`}
          </span>
        ) : null}
      </button>
      <span className="step-figures">
        {waiting ? <WordMark kind="heed">{t('bench.waits')}</WordMark> : null}
        {state === 'failed' ? <WordMark kind="stop">{t('bench.failedMark')}</WordMark> : null}
        {step.hold !== '' && state === 'open' ? <WordMark kind="hold">{t('bench.holdMark')}</WordMark> : null}
        <span className="whole">{stepFigures(step)}</span>
      </span>
    </li>
  );
}

function endWords({ state, standing }: StepView): string {
  if (state !== 'not-needed' && state !== 'failed') return '';
  return t(`bench.state-${state}`, { why: standing?.why ?? '' });
}
