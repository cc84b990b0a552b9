import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';
import { figureText } from '../figure-text.ts';
import type { StepView } from '../step-view.ts';

/** What is written down of a step that was done, was not needed, or failed: who, when, the figures, the wrench. */
export function StepEnded({ view }: { readonly view: StepView }) {
  const writing = useWriting();
  const now = useNow(30_000);
  const { step, state, standing } = view;
  if (standing?.at == null || state === 'open') return null;
  const said = [
    state === 'done' ? '' : t(`bench.state-${state}`, { why: standing.why }),
    standing.secondBy === null
      ? (standing.by ?? '')
      : t('bench.doneBy', { by: standing.by ?? '', second: standing.secondBy }),
    nearText(standing.at, writing, now),
    standing.lateBy === '' ? '' : t('bench.lateBy', { name: standing.lateBy }),
    standing.reading.length === 0
      ? ''
      : `${step.measure?.what ?? ''} ${listWords(standing.reading.map(figureText))} ${step.measure?.unit ?? ''}`.trim(),
    standing.wrench,
  ].filter((words) => words !== '');
  return <p className={state === 'failed' ? 'step-ended in-stop semi' : 'step-ended'}>{said.join(', ')}</p>;
}
