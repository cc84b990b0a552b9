import { Caution } from '../../parts/Caution.tsx';
import { WordMark } from '../../parts/WordMark.tsx';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import type { Step } from '../step-view.ts';

/** What a step says beside its words: care, where it stops, the tool, parts used once, who else, how full, the card. */
export function StepFacts({ step }: { readonly step: Step }) {
  const reopens = step.reopens === null || step.reopens.length === 0 ? '' : listWords(step.reopens.map(String));
  const facts = [
    step.tool === '' ? '' : t('bench.tool', { words: step.tool }),
    step.oneTime.length === 0
      ? ''
      : t('bench.oneTime', { parts: listWords(step.oneTime.map(({ part, count }) => `${count} × ${part}`)) }),
    step.second === '' ? '' : t(`bench.second-${secondKey(step.second)}`),
    step.level === '' ? '' : t('bench.level', { words: step.level }),
    step.recheckCard ? t('bench.recheckCard') : '',
    reopens === '' ? '' : t('bench.reopens', { steps: reopens }),
    step.torque === null && step.measure === null && step.source !== ''
      ? t('bench.figuresFrom', { source: step.source })
      : '',
  ].filter((fact) => fact !== '');
  return (
    <>
      {step.hold === '' ? null : (
        <p className="step-hold">
          <WordMark kind="hold">{t('bench.holdMark')}</WordMark> {step.hold}
        </p>
      )}
      {step.care === '' ? null : <Caution>{step.care}</Caution>}
      {facts.length === 0 ? null : (
        <ul className="step-facts">
          {facts.map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
        </ul>
      )}
    </>
  );
}

/** Words have no blank in their keys. */
function secondKey(second: Exclude<Step['second'], ''>): 'looks' | 'holds' | 'signs' | 'does-it' {
  return second === 'does it' ? 'does-it' : second;
}
