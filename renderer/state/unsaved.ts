import { useCallback, useEffect, useId } from 'react';
import { create } from 'zustand';
import type { CallError } from './transport.ts';

/** What was typed somewhere and could not be saved, for a reason that has nothing to do with what was typed. */
export interface Unsaved {
  readonly error: CallError;
  readonly again: () => void;
}

/** By the cell that it stands in, the latest last. */
export const useUnsaved = create<{ readonly cells: ReadonlyMap<string, Unsaved> }>(() => ({ cells: new Map() }));

/** Errors that may go away by themselves: then it is worth trying the same again. */
const PASSING: ReadonlySet<CallError['code']> = new Set(['no-answer', 'disk-full', 'read-only', 'unknown-fault']);

export const mayPass = (error: CallError): boolean => PASSING.has(error.code);

function note(cell: string, unsaved: Unsaved | null): void {
  const cells = new Map(useUnsaved.getState().cells);
  const stood = cells.delete(cell);
  if (unsaved !== null) cells.set(cell, unsaved);
  if (stood || unsaved !== null) useUnsaved.setState({ cells });
}

/**
 * For a cell: tells the line above the foot what became of its saving, and how to try again; `null` once it is saved, or
 * nothing waits to be. A cell that goes out of view waits for nothing.
 */
export function useNotSaved(): (error: CallError | null | undefined, again?: () => void) => void {
  const cell = useId();
  useEffect(() => () => note(cell, null), [cell]);
  return useCallback(
    (error, again = () => {}) => note(cell, error && mayPass(error) ? { error, again } : null),
    [cell],
  );
}
