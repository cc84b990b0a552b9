import { useState } from 'react';
import { Both, type CellSaved, refusedWords } from '../../parts/Cell.tsx';
import { useWriting } from '../../state/shop.ts';
import { useNotSaved } from '../../state/unsaved.ts';
import { type RowCell, useRowCell } from '../row-cell.ts';

interface Props extends RowCell {
  readonly options: readonly { readonly value: string; readonly words: string }[];
}

/** One of a list as a cell of a row: saved when it is chosen. */
export function SheetPick({ options, ...row }: Props) {
  const writing = useWriting();
  const notSaved = useNotSaved();
  const { typing, send } = useRowCell(row);
  const [chosen, setChosen] = useState<string | null>(null);
  const [refused, setRefused] = useState<Exclude<CellSaved, { ok: true }> | null>(null);
  const wordsOf = (value: string) => options.find((one) => one.value === value)?.words ?? value;
  const go = async (value: string, over: boolean) => {
    setChosen(value);
    typing(value);
    const saved = await send(value, over);
    setRefused(saved.ok ? null : saved);
    notSaved(saved.ok ? null : saved.error, () => void go(value, over));
    if (saved.ok) setChosen(null);
  };
  return (
    <span className="cell-place">
      <select
        className="pick-one"
        aria-label={row.label}
        value={chosen ?? row.value}
        onChange={(event) => void go(event.target.value, false)}
      >
        {options.map((one) => (
          <option key={one.value} value={one.value}>
            {one.words}
          </option>
        ))}
      </select>
      {refused === null || refused.meanwhile !== undefined ? null : (
        <span className="wrong-words" role="alert">
          {refusedWords(refused, writing)}
        </span>
      )}
      {refused?.meanwhile === undefined ? null : (
        <Both
          yours={wordsOf(chosen ?? '')}
          theirs={wordsOf(refused.meanwhile)}
          onKeep={() => void go(chosen ?? '', true)}
          onTake={() => {
            setRefused(null);
            setChosen(null);
          }}
        />
      )}
    </span>
  );
}
