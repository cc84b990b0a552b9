import type { CellSaved } from '../../parts/Cell.tsx';
import { refresh } from '../../state/asks.ts';
import type { CallAnswer } from '../../state/transport.ts';

/** One cell's new value, sent on the revision it was read at. */
type Send = (revision: number, text: string) => Promise<CallAnswer<unknown>>;

const TRIES = 3;

/**
 * Saves one cell of a row. Where the row was changed meanwhile but not this cell, it is sent again by itself; where this
 * cell was changed too, nothing is written and both values come back for the person to pick.
 */
export function fieldSaver(field: string, before: string, revision: number, send: Send) {
  return async (text: string, over: boolean): Promise<CellSaved> => {
    let at = revision;
    for (let tries = 0; ; tries++) {
      const answer = await send(at, text);
      if (answer.ok) {
        refresh();
        return { ok: true };
      }
      const { error } = answer;
      if (error.code !== 'changed-meanwhile' || tries === TRIES) return { ok: false, error };
      const now = valueIn(error.now, field);
      if (!over && now !== before) {
        refresh();
        return { ok: false, meanwhile: now };
      }
      at = error.revision;
    }
  };
}

function valueIn(row: unknown, field: string): string {
  if (typeof row !== 'object' || row === null) return '';
  return String((row as Readonly<Record<string, unknown>>)[field] ?? '');
}
