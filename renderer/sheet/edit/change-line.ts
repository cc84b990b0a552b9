import type { InputOf } from '../../../core/contract/index.ts';
import { save } from '../save.ts';

type Change = InputOf<'line.change'>['change'];

/** Changes some fields of a line on the revision it was read at. */
export const changeLine = (id: string) => (revision: number, change: Change) =>
  save('line.change', { id, revision, change });
