import type { Mapping } from '../../../core/bring-in/fields.ts';
import { type DecimalMark, readSum } from '../../../core/bring-in/sum.ts';
import { Choice } from '../../parts/Choice.tsx';
import { useWriting } from '../../state/shop.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';

const MARKS = { point: '.', comma: ',' } as const satisfies Record<string, DecimalMark>;
const STYLES = ['point', 'comma'] as const;
const SHOWN = 3;

interface Props {
  /** The file's sums as they stand there. */
  readonly sums: readonly string[];
  /** Of the shop's currency. */
  readonly digits: number;
  readonly mapping: Mapping;
  /** A sum with two readings, as long as nobody said which. */
  readonly unclear: string | null;
  readonly onChange: (mapping: Mapping) => void;
}

/** How the file writes its sums: told from all of them, else asked; beside it how some of them are read. */
export function SumsWritten({ sums, digits, mapping, unclear, onChange }: Props) {
  const writing = useWriting();
  // Those with a mark show what the choice is about.
  const shown = sums.toSorted((a, b) => Number(/[.,]/.test(b)) - Number(/[.,]/.test(a))).slice(0, SHOWN);
  const readText = (typed: string): string => {
    const sum = readSum(typed, digits, mapping.decimal);
    return typeof sum === 'number'
      ? t('bringIn.sumRead', { typed, sum: amountText(sum, writing) })
      : t('bringIn.sumUnread', { typed });
  };
  return (
    <section aria-label={t('bringIn.sums')}>
      <Choice
        label={t('bringIn.sums')}
        value={STYLES.find((style) => MARKS[style] === mapping.decimal) ?? null}
        options={STYLES.map((value) => ({ value, words: t(`bringIn.sums-${value}`) }))}
        onChange={(style) => onChange({ ...mapping, decimal: MARKS[style] })}
      />
      <p className="small ink-2" aria-live="polite">
        {unclear === null ? shown.map(readText).join('; ') : t('bringIn.sumsUnclear', { sum: unclear })}
      </p>
    </section>
  );
}
