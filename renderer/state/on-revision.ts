import type { CallAnswer } from './transport.ts';

/**
 * Sends a change of one field on the revision that is known here. Where the row changed meanwhile but this field did not,
 * it is sent again on the newer revision: what others wrote elsewhere in the row does not stand in its way.
 * @param untouched whether the field is in that newer row what it was here
 */
export async function onRevision<O>(
  revision: number,
  send: (revision: number) => Promise<CallAnswer<O>>,
  untouched: (row: Readonly<Record<string, unknown>>) => boolean,
): Promise<CallAnswer<O>> {
  const answer = await send(revision);
  if (answer.ok || answer.error.code !== 'changed-meanwhile') return answer;
  const { now } = answer.error;
  const same = typeof now === 'object' && now !== null && untouched(now as Readonly<Record<string, unknown>>);
  return same ? onRevision(answer.error.revision, send, untouched) : answer;
}
