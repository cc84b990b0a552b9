import { createContext, useContext, useRef, useState } from 'react';
import { comboOf } from '../../frame/keys.ts';
import { Cell, type CellSaved } from '../../parts/Cell.tsx';
import type { Content } from './draft.ts';

/** The job that is being written, and how its content is changed; null where the person may only read. */
export interface WritingJob {
  readonly content: Content;
  readonly change: ((now: (content: Content) => Content) => void) | null;
  /** The same for something that goes, told by its words so that it can be put back. */
  readonly takeOut: ((words: string, now: (content: Content) => Content) => void) | null;
}
const Here = createContext<WritingJob | null>(null);
export const JobHere = Here.Provider;

/** The job of this page. Throws outside of {@link JobHere}. */
export function useJob(): WritingJob {
  const job = useContext(Here);
  if (job === null) throw new Error('outside of a job of the book');
  return job;
}

interface Props {
  readonly label: string;
  readonly value: string;
  readonly rest?: string;
  /** The content with the typed text in it; null where it does not fit. */
  readonly read: (text: string, content: Content) => Content | null;
  /** What would fit; where it depends on what was typed, of that. */
  readonly wrong: string | ((text: string) => string);
  readonly figure?: boolean;
  readonly placeholder?: string;
  readonly className?: string;
  readonly list?: string;
  readonly autoFocus?: boolean;
  readonly wraps?: boolean;
  /** Enter takes what is typed and stays for the next one. */
  readonly again?: boolean;
}

/** A cell of the job; what is typed goes into the draft on leaving it. */
export function JobCell({ read, wrong, again = false, ...cell }: Props) {
  const { content, change } = useJob();
  const entered = useRef(false);
  // Each turn is a cell of its own: it comes empty at once, however fast the next one is typed.
  const [turn, setTurn] = useState(0);
  const save = async (text: string): Promise<CellSaved> => {
    if (read(text, content) === null) return { ok: false, words: typeof wrong === 'string' ? wrong : wrong(text) };
    change?.((now) => read(text, now) ?? now);
    if (again) setTurn((now) => now + 1);
    return { ok: true };
  };
  if (!again) return <Cell {...cell} save={save} readOnly={change === null} />;
  return (
    <span
      className="book-again"
      onKeyDownCapture={(event) => {
        entered.current = comboOf(event) === 'Enter';
      }}
    >
      <Cell key={turn} {...cell} save={save} readOnly={change === null} autoFocus={turn > 0 && entered.current} />
    </span>
  );
}
