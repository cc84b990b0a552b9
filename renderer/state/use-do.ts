import { useCallback, useRef, useState } from 'react';
import type { InputOf, OutputOf } from '../../core/contract/index.ts';
import { refresh } from './asks.ts';
import { act, type DoName } from './call.ts';
import { newRequestId } from './request-id.ts';
import type { CallAnswer, CallError } from './transport.ts';

export interface Doing<N extends DoName> {
  /** Runs with a new request id. The same input once more while it is under way is the same press, done once. */
  readonly run: (input: InputOf<N>) => Promise<CallAnswer<OutputOf<N>>>;
  /** The last run again under the same request id: applied once, however often it is sent. */
  readonly again: () => Promise<CallAnswer<OutputOf<N>> | null>;
  readonly busy: boolean;
  readonly error: CallError | null;
  readonly clear: () => void;
}

/** Something that is done to the shop. Answers, never throws; what is watched is asked again after it. */
export function useDo<N extends DoName>(operation: N): Doing<N> {
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<CallError | null>(null);
  const last = useRef<{ input: InputOf<N>; request: string } | null>(null);
  const underWay = useRef(new Map<string, Promise<CallAnswer<OutputOf<N>>>>());

  const attempt = useCallback(
    async (input: InputOf<N>, request: string) => {
      last.current = { input, request };
      setBusy(true);
      const answer = await act(operation, input, request);
      setBusy(false);
      setError(answer.ok ? null : answer.error);
      if (answer.ok || answer.error.code === 'changed-meanwhile') refresh();
      return answer;
    },
    [operation],
  );
  const run = useCallback(
    (input: InputOf<N>) => {
      const same = JSON.stringify(input);
      const answer = underWay.current.get(same) ?? attempt(input, newRequestId());
      underWay.current.set(same, answer);
      return answer.finally(() => underWay.current.delete(same));
    },
    [attempt],
  );
  const again = useCallback(
    async () => (last.current ? attempt(last.current.input, last.current.request) : null),
    [attempt],
  );
  const clear = useCallback(() => setError(null), []);
  return { run, again, busy, error, clear };
}
