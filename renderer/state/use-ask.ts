import { useEffect, useState } from 'react';
import type { InputOf, OutputOf } from '../../core/contract/index.ts';
import { type Kept, keyOf, useKept, watch } from './asks.ts';
import type { AskName } from './call.ts';
import type { CallError } from './transport.ts';

export interface Asked<O> {
  readonly data: O | undefined;
  readonly error: CallError | null;
  /** No answer after 200 ms: only then is it worth drawing that it loads. */
  readonly loading: boolean;
}

const PATIENCE = 200;

/** True once `waiting` has lasted 200 ms. */
function useLate(waiting: boolean): boolean {
  const [late, setLate] = useState(false);
  useEffect(() => {
    if (!waiting) return setLate(false);
    const timer = setTimeout(() => setLate(true), PATIENCE);
    return () => clearTimeout(timer);
  }, [waiting]);
  return late && waiting;
}

/** The answer to a question, kept fresh while the component stands. `null` as input asks nothing. */
export function useAsk<N extends AskName>(operation: N, input: InputOf<N> | null): Asked<OutputOf<N>> {
  const text = input === null ? null : JSON.stringify(input);
  const key = text === null ? '' : keyOf(operation, input);
  const kept: Kept | undefined = useKept((state) => state.kept[key]);
  useEffect(() => {
    if (text === null) return;
    return watch(key, operation, JSON.parse(text));
  }, [key, operation, text]);
  const loading = useLate(text !== null && kept === undefined);
  return { data: kept?.data as OutputOf<N> | undefined, error: kept?.error ?? null, loading };
}

/**
 * The same for what is being typed: the answer to what stood there a letter before stands until the next one is here, so
 * that a list of finds does not go and come under the hand that is on its way to it.
 */
export function useAskAsTyped<N extends AskName>(operation: N, input: InputOf<N> | null): Asked<OutputOf<N>> {
  const asked = useAsk(operation, input);
  const [last, setLast] = useState<OutputOf<N> | undefined>(undefined);
  const standing = input === null ? undefined : (asked.data ?? last);
  if (standing !== last) setLast(standing);
  return { ...asked, data: standing };
}
