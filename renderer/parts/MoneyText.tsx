import type { ReckoningStep } from '../../core/money/line.ts';
import { useWriting } from '../state/shop.ts';
import { amountText } from '../words/figures.ts';
import { reckoningSentence } from '../words/reckoning.ts';
import { t } from '../words/t.ts';

interface Props {
  /** Minor units; null where the person may not see prices. */
  readonly amount: number | null;
  /** How it came about, as core tells it. */
  readonly reckoning?: readonly ReckoningStep[];
}

/** A sum; on request, in words, how it came about. */
export function MoneyText({ amount, reckoning }: Props) {
  const writing = useWriting();
  const text = amountText(amount, writing);
  if (reckoning === undefined || reckoning.length === 0) return <span className="whole">{text}</span>;
  return (
    <details className="how">
      <summary title={t('parts.howCame')}>
        {text}
        <span className="aloud">{t('parts.howCame')}</span>
      </summary>
      <ol>
        {reckoning.map((step) => (
          <li key={`${step.rule} ${JSON.stringify(step.on)} ${step.result}`}>
            <span>{reckoningSentence(step, writing)}</span>
            <b>{amountText(step.result, writing)}</b>
          </li>
        ))}
      </ol>
    </details>
  );
}
