import { useState } from 'react';
import { Both, type CellSaved, refusedWords } from '../../parts/Cell.tsx';
import { useWriting } from '../../state/shop.ts';
import { useNotSaved } from '../../state/unsaved.ts';
import { type RowCell, useRowCell } from '../row-cell.ts';

interface Props extends RowCell {
  readonly locked: boolean;
  /** The customer's own words: in italic. */
  readonly said?: boolean;
  readonly placeholder?: string;
}

/** Words of more than one line as a cell of a row: as high as they are, saved on leaving. */
export function SheetText({ locked, said = false, placeholder, ...row }: Props) {
  const writing = useWriting();
  const notSaved = useNotSaved();
  const { typing, send } = useRowCell(row);
  const [text, setText] = useState<string | null>(null);
  const [refused, setRefused] = useState<Exclude<CellSaved, { ok: true }> | null>(null);
  const go = async (typed: string, over: boolean) => {
    const saved = await send(typed, over);
    setRefused(saved.ok ? null : saved);
    notSaved(saved.ok ? null : saved.error, () => void go(typed, over));
    if (saved.ok) setText(null);
  };
  if (locked) return <p className={said ? 'said' : undefined}>{row.value}</p>;
  return (
    <span className="cell-place">
      <textarea
        className={said ? 'cell text said' : 'cell text'}
        aria-label={row.label}
        rows={1}
        value={text ?? row.value}
        placeholder={placeholder}
        onChange={(event) => {
          setText(event.target.value);
          typing(event.target.value);
        }}
        onBlur={() => {
          if (text !== null && text !== row.value) void go(text, false);
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Escape') return;
          setText(null);
          setRefused(null);
          notSaved(null);
          event.currentTarget.blur();
          event.stopPropagation();
        }}
      />
      {refused === null || refused.meanwhile !== undefined ? null : (
        <span className="wrong-words" role="alert">
          {refusedWords(refused, writing)}
        </span>
      )}
      {refused?.meanwhile === undefined ? null : (
        <Both
          yours={text ?? ''}
          theirs={refused.meanwhile}
          onKeep={() => void go(text ?? '', true)}
          onTake={() => {
            setRefused(null);
            setText(null);
          }}
        />
      )}
    </span>
  );
}
