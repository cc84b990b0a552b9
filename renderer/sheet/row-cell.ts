import { useEffect, useRef } from 'react';
import type { CellSaved } from '../parts/Cell.tsx';
import type { CallAnswer } from '../state/transport.ts';
import { t } from '../words/t.ts';
import { remember } from './undo.ts';

/** One cell of a row with a revision. */
export interface RowCell {
  /** Said aloud; the column says it to the eye. */
  readonly label: string;
  /** As it stands in the shop. */
  readonly value: string;
  readonly revision: number;
  /** Saves what was typed; null where it cannot be read. */
  readonly save: (text: string, revision: number) => Promise<CallAnswer<{ readonly revision: number }>> | null;
  /** The same cell in a row that somebody changed meanwhile, as it is shown here. */
  readonly inRow: (row: Readonly<Record<string, unknown>>) => string;
  /** What would be right, where it cannot be read; where it depends on what was typed, of that. */
  readonly unread?: string | ((text: string) => string);
}

/**
 * Saves a cell on the revision that typing began at. Where the row changed meanwhile but this cell did not, it sends
 * again by itself; where this cell changed too, nothing is written and `meanwhile` is what stands there now. What is
 * saved can be undone, unless somebody else has written there since.
 */
export function useRowCell({ label, value, revision, save, inRow, unread }: RowCell) {
  /** The cell and its revision when typing began: a fresher row that arrives under the typing must not hide a clash. */
  const begun = useRef<{ readonly value: string; readonly revision: number } | null>(null);
  /** What was written here last, as the sheet shows it; null until the sheet has answered. */
  const written = useRef<{ shown: string | null } | null>(null);
  useEffect(() => {
    if (written.current?.shown === null) written.current.shown = value;
  }, [value]);

  const send = async (text: string, over: boolean, on: number): Promise<CellSaved> => {
    const saving = save(text, on);
    if (saving === null)
      return {
        ok: false,
        words: typeof unread === 'function' ? unread(text) : (unread ?? t('sheet.unread', { label })),
      };
    const answer = await saving;
    if (answer.ok) {
      const before = begun.current?.value ?? value;
      const wrote = { shown: null };
      written.current = wrote;
      const saved = answer.output.revision;
      remember({ at: null, words: label, run: () => writeBack(before, wrote, saved) });
      begun.current = null;
      return { ok: true };
    }
    if (answer.error.code !== 'changed-meanwhile') return { ok: false, error: answer.error };
    const theirs = shownIn(answer.error.now);
    if (over || theirs === (begun.current?.value ?? value)) return send(text, over, answer.error.revision);
    begun.current = { value: theirs, revision: answer.error.revision };
    return { ok: false, meanwhile: theirs };
  };

  /** Undo: what stood here before, unless somebody else has written here since. */
  const writeBack = async (
    before: string,
    wrote: { readonly shown: string | null },
    on: number,
  ): Promise<CallAnswer<unknown>> => {
    const saving = save(before, on);
    if (saving === null) return { ok: false, error: { code: 'bad-input', fields: [] } };
    const answer = await saving;
    if (answer.ok || answer.error.code !== 'changed-meanwhile') return answer;
    return shownIn(answer.error.now) === wrote.shown ? writeBack(before, wrote, answer.error.revision) : answer;
  };

  const shownIn = (row: unknown) =>
    typeof row === 'object' && row !== null ? inRow(row as Record<string, unknown>) : '';

  return {
    /** As one types: remembers what stood here when it began. */
    typing: (text: string) => {
      if (text === value && begun.current?.value === value) begun.current = null;
      else begun.current ??= { value, revision };
    },
    send: (text: string, over: boolean) => send(text, over, begun.current?.revision ?? revision),
  };
}
