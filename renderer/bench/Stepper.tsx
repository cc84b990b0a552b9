import { useState } from 'react';
import { parseQuantity, twoWays } from '../../core/measure/quantity.ts';
import { useWriting } from '../state/shop.ts';
import { quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { unreadWords } from '../words/unread.ts';

interface Props {
  readonly label: string;
  /** Thousandths of the unit; null while nothing was said. */
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  /** One press of less or more, in thousandths. */
  readonly step: number;
  readonly unit: string;
  readonly least?: number;
}

/** A figure for gloved hands: less, the figure itself to type over, more. */
export function Stepper({ label, value, onChange, step, unit, least = 0 }: Props) {
  const writing = useWriting();
  const shown = value === null ? '' : quantityText(value, '', writing);
  // While it is typed it stays as it is typed: "1." is on its way to "1.2".
  const [typed, setTyped] = useState<string | null>(null);
  const by = (change: number) => {
    setTyped(null);
    onChange(Math.max(least, (value ?? 0) + change));
  };
  return (
    <div className="stepper">
      <button type="button" className="button" aria-label={t('bench.less', { label })} onClick={() => by(-step)}>
        {'\u2212'}
      </button>
      <label>
        <span className="aloud">{label}</span>
        <input
          inputMode="decimal"
          autoComplete="off"
          value={typed ?? shown}
          onBlur={() => setTyped(null)}
          onChange={(event) => {
            setTyped(event.target.value);
            const read = parseQuantity(event.target.value, writing);
            onChange(read === null ? null : Math.max(least, read));
          }}
        />
        <span aria-hidden="true">{unit}</span>
      </label>
      <button type="button" className="button" aria-label={t('bench.more', { label })} onClick={() => by(step)}>
        +
      </button>
      {typed === null || twoWays(typed, writing) === null ? null : (
        <span className="wrong-words" role="alert">
          {unreadWords(typed, writing, '')}
        </span>
      )}
    </div>
  );
}
