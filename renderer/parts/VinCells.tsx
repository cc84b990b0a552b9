import { type ReactNode, useId, useState } from 'react';
import { t } from '../words/t.ts';

interface Props {
  readonly value: string;
  readonly onChange: (vin: string) => void;
  readonly onLeave?: () => void;
  /** What the check digit and the year letter say; a warning never blocks. */
  readonly note?: ReactNode;
  /** A sign that no VIN has. */
  readonly error?: string | null;
}

const CELLS = Array.from({ length: 17 }, (_, i) => i);

/**
 * A VIN in 17 cells: the ninth underlined for the check digit, the tenth marked for the year letter. One real field
 * lies over the drawn cells, so typing, pasting and reading aloud work as in any field.
 */
export function VinCells({ value, onChange, onLeave, note, error = null }: Props) {
  const id = useId();
  const [caret, setCaret] = useState<number | null>(null);
  return (
    <div className="field">
      <label htmlFor={id}>{t('parts.vin')}</label>
      <div className="vin">
        <div className="vin-cells" aria-hidden="true">
          {CELLS.map((i) => (
            <span
              key={i}
              className={i === 8 ? 'check' : i === 9 ? 'year' : undefined}
              data-here={caret === i || undefined}
            >
              {value[i] ?? ''}
            </span>
          ))}
        </div>
        <input
          id={id}
          value={value}
          maxLength={24}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          aria-invalid={error !== null || undefined}
          aria-describedby={error !== null ? `${id}-error` : note === undefined ? undefined : `${id}-note`}
          onChange={(event) =>
            onChange(
              event.target.value
                .replace(/[^0-9A-Za-z]/g, '')
                .toUpperCase()
                .slice(0, 17),
            )
          }
          onSelect={(event) => setCaret(Math.min(16, event.currentTarget.selectionStart ?? 0))}
          onBlur={() => {
            setCaret(null);
            onLeave?.();
          }}
        />
      </div>
      {error === null ? null : (
        <p className="wrong-words" id={`${id}-error`} role="alert">
          {error}
        </p>
      )}
      {note === undefined ? null : (
        <p className="field-note" id={`${id}-note`}>
          {note}
        </p>
      )}
    </div>
  );
}
