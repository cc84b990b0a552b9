import type { InputOf, OperationName, Operations, OutputOf } from '../../core/contract/index.ts';
import { newRequestId } from './request-id.ts';
import { markSaved } from './saved.ts';
import { type CallAnswer, send } from './transport.ts';

type NamesOf<K extends 'ask' | 'do'> = {
  [N in OperationName]: Operations[N]['kind'] extends K ? N : never;
}[OperationName];
/** Operations that only read. */
export type AskName = NamesOf<'ask'>;
/** Operations that change something. */
export type DoName = NamesOf<'do'>;

/** Pauses before sending the same request again when nobody answered, in milliseconds. */
const PAUSES = [250, 1000, 2500];

/** Asks once. */
export async function ask<N extends AskName>(operation: N, input: InputOf<N>): Promise<CallAnswer<OutputOf<N>>> {
  return (await send({ operation, input })) as CallAnswer<OutputOf<N>>;
}

/**
 * Does something once, whatever the line does: where nobody answers, the same request is sent again with the same id,
 * which the shop applies once. Hand in the id of an earlier attempt to go on with it.
 */
export async function act<N extends DoName>(
  operation: N,
  input: InputOf<N>,
  request = newRequestId(),
): Promise<CallAnswer<OutputOf<N>>> {
  let answer = await send({ operation, input, request });
  for (const pause of PAUSES) {
    if (answer.ok || answer.error.code !== 'no-answer') break;
    await new Promise((later) => setTimeout(later, pause));
    answer = await send({ operation, input, request });
  }
  if (answer.ok) markSaved();
  return answer as CallAnswer<OutputOf<N>>;
}
