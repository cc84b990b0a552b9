import { Cell } from '../parts/Cell.tsx';
import { DateCell } from '../parts/DateCell.tsx';
import { takeInHand, useHands } from '../state/hands.ts';
import { type RowCell, useRowCell } from './row-cell.ts';

interface Props extends RowCell {
  readonly locked?: boolean;
  readonly figure?: boolean;
  readonly placeholder?: string;
  /** Enter goes down it. */
  readonly column?: 'words' | 'quantity' | 'price';
  /** Long words go on in a second line. */
  readonly wraps?: boolean;
  /** What every window calls this cell: the row's id and the column. */
  readonly hand?: string;
  /** A day and a time of it, 'YYYY-MM-DDTHH:MM'. */
  readonly moment?: boolean;
}

/** A cell of a row with a revision, saved on leaving it; both values stand in it where two people wrote there at once. */
export function SheetCell({
  locked = false,
  figure = false,
  placeholder,
  moment = false,
  column,
  hand,
  wraps = false,
  ...row
}: Props) {
  const { typing, send } = useRowCell(row);
  const other = useHands((hands) => (hand === undefined ? undefined : hands.others.get(hand)));
  if (locked) return <span className={figure ? 'figure' : undefined}>{row.value}</span>;
  const Kind = moment ? DateCell : Cell;
  return (
    <Kind
      label={row.label}
      value={row.value}
      figure={figure}
      {...(moment ? { moment } : {})}
      {...(column === undefined ? {} : { column })}
      {...(placeholder === undefined ? {} : { placeholder })}
      other={other}
      wraps={wraps}
      {...(hand === undefined ? {} : { onHand: (held: boolean) => takeInHand(held ? hand : null) })}
      onTyping={typing}
      save={send}
    />
  );
}
