import { type ReactNode, useId } from 'react';
import './talk.css';

interface TalkProps {
  readonly head: string;
  readonly words?: string;
  readonly children: ReactNode;
}

/** A row of a page that is filled in from top to bottom: its heading hangs at the left. */
export function Talk({ head, words, children }: TalkProps) {
  return (
    <section className="talk">
      <header>
        <h2>{head}</h2>
        {words === undefined ? null : <p>{words}</p>}
      </header>
      <div>{children}</div>
    </section>
  );
}

interface PickProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly words: string }[];
  readonly onChange: (value: string) => void;
}

/** One of a list too long to stand in sight. */
export function Pick({ label, value, options, onChange }: PickProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} className="in" value={value} onChange={(event) => onChange(event.target.value)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.words}
          </option>
        ))}
      </select>
    </div>
  );
}
