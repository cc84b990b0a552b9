import { create } from 'zustand';
import type { CallAnswer, CallError } from '../state/transport.ts';

/** Something that was done to this sheet at this window, and the way back: an inverse `do`. */
export interface Undo {
  /** Where its dashed line stands: the job a line was taken out of, or 'sheet' for a job; null where nothing is gone. */
  readonly at: string | null;
  readonly words: string;
  readonly run: () => Promise<CallAnswer<unknown>>;
}

interface Undoing {
  /** The oldest first; Ctrl Z undoes the last. */
  readonly stack: readonly Undo[];
  /** What was undone last, for whoever listens. */
  readonly said: string | null;
  readonly error: CallError | null;
}

const NOTHING: Undoing = { stack: [], said: null, error: null };

export const useUndo = create<Undoing>(() => NOTHING);

/** So many steps back are remembered. */
const DEEP = 50;

/** Remembers a way back. Never for a yes, a clock, a move of stock or a paper: those are followed, not undone. */
export function remember(undo: Undo): void {
  useUndo.setState(({ stack }) => ({ stack: [...stack, undo].slice(-DEEP), said: null, error: null }));
}

/** Undoes this; it stays where it cannot be undone, with the reason. */
export async function undo(one: Undo): Promise<void> {
  const answer = await one.run();
  useUndo.setState(({ stack }) =>
    answer.ok
      ? { stack: stack.filter((other) => other !== one), said: one.words, error: null }
      : { error: answer.error },
  );
}

/** Undoes what was done last. */
export async function undoLast(): Promise<void> {
  const last = useUndo.getState().stack.at(-1);
  if (last !== undefined) await undo(last);
}

/** The page is left: what was done on it stands. */
export function forgetUndo(): void {
  useUndo.setState(NOTHING);
}
