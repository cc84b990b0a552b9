import type { InputOf, OutputOf } from '../../core/contract/index.ts';
import { refresh } from '../state/asks.ts';
import { act, type DoName } from '../state/call.ts';
import type { CallAnswer } from '../state/transport.ts';

/** Does something once and asks again for what is in view, also where the row had changed meanwhile. */
export async function save<N extends DoName>(operation: N, input: InputOf<N>): Promise<CallAnswer<OutputOf<N>>> {
  const answer = await act(operation, input);
  if (answer.ok || answer.error.code === 'changed-meanwhile') refresh();
  return answer;
}
