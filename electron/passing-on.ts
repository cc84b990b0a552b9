import { z } from 'zod';
import type { Answer } from '../core/contract/errors.ts';
import type { Holder } from '../db/file/errors.ts';

const answerShape = z.union([
  z.object({ ok: z.literal(true), output: z.unknown() }),
  z.object({ ok: z.literal(false), error: z.looseObject({ code: z.string() }) }),
]);
const linkShape = z.object({ ok: z.literal(true), output: z.object({ link: z.string() }) });

/** How long the process that holds the shop may take for one answer, in milliseconds. */
const PATIENCE = 60_000;

/**
 * Asks the process that holds the shop for a link that lets one device in.
 * Throws where it does not answer or does not know the key.
 */
export async function askForLink(holder: Holder, device: string): Promise<string> {
  if (holder.address === null || holder.key === null) throw new Error('The holder has no door open yet.');
  const answer = await fetch(`${holder.address}/door`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Bearer ${holder.key}` },
    body: JSON.stringify({ device }),
    signal: AbortSignal.timeout(PATIENCE),
  });
  if (!answer.ok) throw new Error(`The holder turned the request away (${answer.status}).`);
  return linkShape.parse(await answer.json()).output.link;
}

/** The door of the holder, gone through like a window goes: a link, a cookie, then calls. */
export interface PassedOn {
  post(path: '/call' | '/enter' | '/leave', body: unknown): Promise<Answer>;
}

/** Lets this process in at the holder's door. */
export async function passOn(holder: Holder, device: string): Promise<PassedOn> {
  const link = await askForLink(holder, device);
  const entry = await fetch(link, { signal: AbortSignal.timeout(PATIENCE) });
  const cookie = entry.headers.getSetCookie()[0]?.split(';')[0];
  if (cookie === undefined) throw new Error('The holder gave no session.');
  return {
    async post(path, body) {
      const answer = await fetch(`${holder.address}${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', cookie },
        body: JSON.stringify(body),
        signal: AbortSignal.timeout(PATIENCE),
      });
      return answerShape.parse(await answer.json()) as Answer;
    },
  };
}
