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

const TRIES = 3;

/**
 * Saves one cell of a row. Where the row was changed meanwhile but not this cell, it is sent again by itself on the new
 * row; where this cell was changed too, nothing is written and both values come back for the person to pick.
 */
export function fieldSaver<K extends string, F extends Readonly<Record<K, string>>>(field: K, how: Saving<F>) {
  return async (text: string, over: boolean): Promise<CellSaved> => {
    let row = how.row;
    for (let tries = 0; ; tries++) {
      const answer = await how.send({ revision: row.revision, fields: { ...row.fields, [field]: text } });
      if (answer.ok) {
        refresh();
        return { ok: true };
      }
      if (answer.error.code !== 'changed-meanwhile' || tries === TRIES) return { ok: false, error: answer.error };
      const fresh = await how.read();
      if (!fresh.ok) return { ok: false, error: fresh.error };
      row = fresh.output;
      const now = row.fields[field];
      if (!over && now !== how.row.fields[field]) {
        refresh();
        return { ok: false, meanwhile: now };
      }
    }
  };
}
