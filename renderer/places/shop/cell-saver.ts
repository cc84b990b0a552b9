import type { CellSaved } from '../../parts/Cell.tsx';
import { refresh } from '../../state/asks.ts';
import type { CallAnswer, CallError } from '../../state/transport.ts';

interface Saving<R extends { readonly revision: number }, C> {
  /** The row the cell was drawn from. */
  readonly row: R;
  /** What the cell says of a row. */
  readonly show: (row: R) => string;
  /** The change that the typed text means for a row; null where it does not fit. */
  readonly read: (text: string, row: R) => C | null;
  /** What would fit; where it depends on what was typed, of that. */
  readonly wrong: string | ((text: string) => string);
  readonly send: (row: R, change: C) => Promise<CallAnswer<unknown>>;
  /** The row as it stands now. */
  readonly fresh: () => Promise<CallAnswer<R>>;
  /** An error's own sentence where the place has a better one. */
  readonly say?: (error: CallError) => string | null;
}

const TRIES = 3;

/**
 * Saves one cell on the revision its row was read at. Where the row was changed meanwhile but not this cell, it is sent
 * again on the new row; where this cell was changed too nothing is written and both values stand for the person to pick.
 */
export function cellSaver<R extends { readonly revision: number }, C>(how: Saving<R, C>) {
  return async (text: string, over: boolean): Promise<CellSaved> => {
    let row = how.row;
    for (let tries = 0; ; tries++) {
      const change = how.read(text, row);
      if (change === null) return { ok: false, words: typeof how.wrong === 'string' ? how.wrong : how.wrong(text) };
      const answer = await how.send(row, change);
      if (answer.ok) {
        refresh();
        return { ok: true };
      }
      if (answer.error.code !== 'changed-meanwhile' || tries === TRIES) {
        const words = how.say?.(answer.error) ?? null;
        return words === null ? { ok: false, error: answer.error } : { ok: false, words };
      }
      const fresh = await how.fresh();
      if (!fresh.ok) return { ok: false, error: fresh.error };
      row = fresh.output;
      if (!over && how.show(row) !== how.show(how.row)) {
        refresh();
        return { ok: false, meanwhile: how.show(row) };
      }
    }
  };
}
