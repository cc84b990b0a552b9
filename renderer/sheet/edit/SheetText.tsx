import { useState } from 'react';
import { comboOf } from '../../frame/keys.ts';
import { Both, type CellSaved, InCell, refusedWords } from '../../parts/Cell.tsx';
import { takeInHand, useHands } from '../../state/hands.ts';
import { useWriting } from '../../state/shop.ts';
import { useNotSaved } from '../../state/unsaved.ts';
import { type RowCell, useRowCell } from '../row-cell.ts';

interface Props extends RowCell {
  readonly locked: boolean;
  /** The customer's own words: in italic. */
  readonly said?: boolean;
  readonly placeholder?: string;
  /** What every window calls this cell. */
  readonly hand: string;
}

/** Words of more than one line as a cell of a row: as high as they are, saved on leaving. */
export function SheetText({ locked, said = false, placeholder, hand, ...row }: Props) {
  const writing = useWriting();
  const notSaved = useNotSaved();
  const { typing, send } = useRowCell(row);
  const other = useHands((hands) => hands.others.get(hand));
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
      {other === undefined ? null : <InCell name={other} />}
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
        onFocus={() => takeInHand(hand)}
        onBlur={() => {
          takeInHand(null);
          if (text !== null && text !== row.value) void go(text, false);
        }}
        onKeyDown={(event) => {
          if (comboOf(event) !== 'Esc') return;
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
