import { useEffect, useRef } from 'react';
import { Cell, type CellSaved } from '../parts/Cell.tsx';
import type { CallAnswer } from '../state/transport.ts';
import { t } from '../words/t.ts';
import { remember } from './undo.ts';

interface Props {
  /** Said aloud; the column says it to the eye. */
  readonly label: string;
  readonly value: string;
  readonly revision: number;
  readonly locked?: boolean;
  readonly figure?: boolean;
  readonly placeholder?: string;
  /** Saves what was typed; null where it cannot be read. */
  readonly save: (text: string, revision: number) => Promise<CallAnswer<{ readonly revision: number }>> | null;
  /** The same cell in a row that somebody changed meanwhile, as it is shown here. */
  readonly inRow: (row: Readonly<Record<string, unknown>>) => string;
}

/**
 * A cell of a row with a revision. Where the row changed meanwhile but this cell did not, it sends again by itself;
 * where this cell changed too, both values stand in the cell and the person picks.
 */
export function SheetCell({ label, value, revision, locked = false, figure = false, placeholder, save, inRow }: Props) {
  /** The cell and its revision when typing began: a fresher row that arrives under the typing must not hide a clash. */
  const begun = useRef<{ readonly value: string; readonly revision: number } | null>(null);
  /** What was written here last, as the sheet shows it; null until the sheet has answered. */
  const written = useRef<{ shown: string | null } | null>(null);
  useEffect(() => {
    if (written.current?.shown === null) written.current.shown = value;
  }, [value]);
  if (locked) return <span className={figure ? 'figure' : undefined}>{value}</span>;

  const send = async (text: string, over: boolean, on: number): Promise<CellSaved> => {
    const saving = save(text, on);
    if (saving === null) return { ok: false, words: t('sheet.unread', { label }) };
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
    const row = answer.error.now;
    const theirs = typeof row === 'object' && row !== null ? inRow(row as Record<string, unknown>) : '';
    if (over || theirs === begun.current?.value) return send(text, over, answer.error.revision);
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
    const row = answer.error.now;
    const stands = typeof row === 'object' && row !== null ? inRow(row as Record<string, unknown>) : '';
    return stands === wrote.shown ? writeBack(before, wrote, answer.error.revision) : answer;
  };

  return (
    <Cell
      label={label}
      value={value}
      figure={figure}
      {...(placeholder === undefined ? {} : { placeholder })}
      onTyping={(text) => {
        if (text === value && begun.current?.value === value) begun.current = null;
        else begun.current ??= { value, revision };
      }}
      save={(text, over) => send(text, over, begun.current?.revision ?? revision)}
    />
  );
}
