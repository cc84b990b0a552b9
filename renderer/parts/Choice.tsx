import { type ReactNode, useId } from 'react';

interface Option<V extends string> {
  readonly value: V;
  readonly words: ReactNode;
  /** Cannot be chosen now; the reason is said beside the group by whoever shows it. */
  readonly held?: boolean;
}

interface Props<V extends string> {
  readonly label: string;
  readonly value: V | null;
  readonly options: readonly Option<V>[];
  readonly onChange: (value: V) => void;
  /** The label is only said aloud, because the row's heading says it already. */
  readonly quiet?: boolean;
  /** Joined into one piece. */
  readonly joined?: boolean;
  /** Stamp blue on the chosen one of this value: a yes. */
  readonly stamp?: V;
}

/** One of a few, all in sight. Arrow keys move, Tab leaves. */
export function Choice<V extends string>({
  label,
  value,
  options,
  onChange,
  quiet = false,
  joined = false,
  stamp,
}: Props<V>) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend className={quiet ? 'aloud' : undefined}>{label}</legend>
      <div className={joined ? 'choice-joined' : 'choice-row'}>
        {options.map((option) => (
          <label key={option.value} className={option.value === stamp ? 'chip stamped' : 'chip'}>
            <input
              type="radio"
              className="aloud"
              name={name}
              checked={option.value === value}
              disabled={option.held}
              onChange={() => onChange(option.value)}
            />
            {option.words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface ManyProps<V extends string> {
  readonly label: string;
  readonly values: readonly V[];
  readonly options: readonly Option<V>[];
  readonly onChange: (values: V[]) => void;
  readonly quiet?: boolean;
}

/** Any of a few, all in sight. */
export function Choices<V extends string>({ label, values, options, onChange, quiet = false }: ManyProps<V>) {
  return (
    <fieldset className="choice">
      <legend className={quiet ? 'aloud' : undefined}>{label}</legend>
      <div className="choice-row">
        {options.map((option) => (
          <label key={option.value} className="chip">
            <input
              type="checkbox"
              className="aloud"
              checked={values.includes(option.value)}
              disabled={option.held}
              onChange={(event) =>
                onChange(
                  event.target.checked ? [...values, option.value] : values.filter((value) => value !== option.value),
                )
              }
            />
            {option.words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
