import type { CellSaved } from '../../parts/Cell.tsx';
import { refresh } from '../../state/asks.ts';
import type { CallAnswer } from '../../state/transport.ts';

/** A row as it was read, with the revision it had. */
interface Row<F> {
  readonly revision: number;
  readonly fields: F;
}
interface Saving<F> {
  /** The row the cell was drawn from. */
  readonly row: Row<F>;
  /** Sends the whole row on the revision it was read at. */
  readonly send: (row: Row<F>) => Promise<CallAnswer<unknown>>;
  /** Reads the row as it stands now. */
  readonly read: () => Promise<CallAnswer<Row<F>>>;
}
interface CellOf<F> {
  /** What the cell shows of the row. */
  readonly show: (fields: F) => string;
  /** What the row becomes by what was typed, or the sentence that says what would be right. */
  readonly take: (text: string, fields: F) => F | string;
}

const TRIES = 3;

/**
 * Saves one cell of a row. Where the row was changed meanwhile but not this cell, it is sent again by itself on the new
 * row; where this cell was changed too, nothing is written and both values come back for the person to pick.
 */
export function cellSaver<F extends object>(cell: CellOf<F>, how: Saving<F>) {
  return async (text: string, over: boolean): Promise<CellSaved> => {
    let row = how.row;
    for (let tries = 0; ; tries++) {
      const fields = cell.take(text, row.fields);
      if (typeof fields === 'string') return { ok: false, words: fields };
      const answer = await how.send({ revision: row.revision, fields });
      if (answer.ok) {
        refresh();
        return { ok: true };
      }
      if (answer.error.code !== 'changed-meanwhile' || tries === TRIES) return { ok: false, error: answer.error };
      const fresh = await how.read();
      if (!fresh.ok) return { ok: false, error: fresh.error };
      row = fresh.output;
      const now = cell.show(row.fields);
      if (!over && now !== cell.show(how.row.fields)) {
        refresh();
        return { ok: false, meanwhile: now };
      }
    }
  };
}

/** The same for a field that is text as it is typed. */
export function fieldSaver<K extends string, F extends Readonly<Record<K, string>>>(field: K, how: Saving<F>) {
  return cellSaver<F>({ show: (fields) => fields[field], take: (text, fields) => ({ ...fields, [field]: text }) }, how);
}
