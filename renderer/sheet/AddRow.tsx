import type { ReactNode } from 'react';
import { t } from '../words/t.ts';

interface Props<C extends string> {
  readonly label: string;
  readonly hint: string;
  readonly typed: string;
  readonly onType: (text: string) => void;
  /** What goes with the words, and how each choice is said. */
  readonly choiceLabel: string;
  readonly choices: readonly C[];
  readonly choice: C;
  readonly sayChoice: (choice: C) => string;
  readonly onChoose: (choice: C) => void;
  readonly busy: boolean;
  readonly onAdd: () => void;
  readonly children?: ReactNode;
}

/** One open line under a list of the sheet: words typed there with one choice beside them are added to it. */
export function AddRow<C extends string>(row: Props<C>) {
  return (
    <form
      className="found-add"
      onSubmit={(event) => {
        event.preventDefault();
        row.onAdd();
      }}
    >
      <input
        value={row.typed}
        aria-label={row.label}
        placeholder={row.hint}
        onChange={(event) => row.onType(event.target.value)}
      />
      {row.typed === '' ? null : (
        <>
          <select
            aria-label={row.choiceLabel}
            value={row.choice}
            onChange={(event) => row.onChoose(row.choices.find((one) => one === event.target.value) ?? row.choice)}
          >
            {row.choices.map((one) => (
              <option key={one} value={one}>
                {row.sayChoice(one)}
              </option>
            ))}
          </select>
          <button type="submit" className="b" disabled={row.busy}>
            {t('sheet.add')}
          </button>
        </>
      )}
      {row.children}
    </form>
  );
}
