import { Cell } from '../parts/Cell.tsx';
import { type RowCell, useRowCell } from './row-cell.ts';

interface Props extends RowCell {
  readonly locked?: boolean;
  readonly figure?: boolean;
  readonly placeholder?: string;
  /** Enter goes down it. */
  readonly column?: 'words' | 'quantity' | 'price';
  readonly type?: 'text' | 'datetime-local' | 'date';
}

/** A cell of a row with a revision, saved on leaving it; both values stand in it where two people wrote there at once. */
export function SheetCell({ locked = false, figure = false, placeholder, type, column, ...row }: Props) {
  const { typing, send } = useRowCell(row);
  if (locked) return <span className={figure ? 'figure' : undefined}>{row.value}</span>;
  return (
    <Cell
      label={row.label}
      value={row.value}
      figure={figure}
      {...(type === undefined ? {} : { type })}
      {...(column === undefined ? {} : { column })}
      {...(placeholder === undefined ? {} : { placeholder })}
      onTyping={typing}
      save={send}
    />
  );
}
