import { create } from 'zustand';
import type { InputOf, OperationName } from '../../core/contract/index.ts';
import { refreshed } from './asks.ts';
import type { DoName } from './call.ts';
import { newRequestId } from './request-id.ts';
import { markSaved } from './saved.ts';
import { useSession } from './session.ts';
import { dropTap, keepTap, keptTaps, type Tap } from './tap-store.ts';
import { type CallAnswer, type CallError, send } from './transport.ts';

/** A tap that the shop has not taken yet, or has refused. */
export interface WaitingTap extends Tap {
  /** Why it was refused; null while it waits. */
  readonly error: CallError | null;
  /** The shop has it; it stands here only until what is shown has followed. */
  readonly taken: boolean;
}

interface Taps {
  readonly taps: readonly WaitingTap[];
  /** Nobody answered the last time. */
  readonly away: boolean;
}

/** What was tapped and is not yet written down in the shop. */
export const useTaps = create<Taps>(() => ({ taps: [], away: false }));

/** Operations that can say when the thing was done. */
const TIMED: ReadonlySet<OperationName> = new Set<OperationName>(['torque.make', 'step.tick', 'clock.on', 'clock.off']);
/** Sent later than this, it says when it was tapped, in milliseconds. */
const LATE = 60_000;
/** Between two tries while nobody answers, in milliseconds. */
const AGAIN = 1500;

let lastPlace = 0;
let sending: Promise<void> | null = null;
let again: ReturnType<typeof setTimeout> | undefined;

/**
 * Keeps a tap and sends it as soon as the shop answers: in the order of tapping, each once. Resolves when it is kept,
 * whether the shop answers or not.
 */
export async function tap<N extends DoName>(
  operation: N,
  input: InputOf<N>,
  leaves: number | null = null,
): Promise<void> {
  const personId = useSession.getState().person?.personId;
  if (personId === undefined) return;
  const at = Date.now();
  lastPlace = Math.max(lastPlace + 1, at * 1000);
  const kept: Tap = { place: lastPlace, operation, input, request: newRequestId(at), at, personId, leaves };
  useTaps.setState(({ taps }) => ({ taps: [...taps, { ...kept, error: null, taken: false }] }));
  await keepTap(kept);
  void sendTaps();
}

/** A tap that was refused is sent once more, in its old place. */
export function sendAgain(place: number): void {
  change(place, { error: null });
  void sendTaps();
}

/** Takes out a tap: somebody has read why it was refused, or it is done. */
export function forgetTap(place: number): void {
  useTaps.setState(({ taps }) => ({ taps: taps.filter((one) => one.place !== place) }));
  void dropTap(place);
}

/** Sends what waits, in order; one round at a time. Where nobody answers it is tried again by itself. */
export function sendTaps(): Promise<void> {
  sending ??= sendAll().finally(() => {
    sending = null;
    // Tapped while the round was ending.
    if (nextTap() !== undefined && !useTaps.getState().away) void sendTaps();
  });
  return sending;
}

function nextTap(): WaitingTap | undefined {
  const personId = useSession.getState().person?.personId;
  return useTaps.getState().taps.find((one) => one.error === null && !one.taken && one.personId === personId);
}

async function sendAll(): Promise<void> {
  clearTimeout(again);
  if (useTaps.getState().taps.some((one) => one.taken)) void letGo();
  for (let next = nextTap(); next !== undefined; next = nextTap()) {
    const { place } = next;
    const answer = await sendOne(next);
    const away = !answer.ok && isAway(answer.error);
    useTaps.setState({ away });
    if (away) return tryLater();
    if (answer.ok) {
      markSaved();
      change(place, { taken: true });
      await dropTap(place);
    } else change(place, { error: answer.error });
    void letGo();
  }
}

/** What the shop has taken leaves the list when what is shown has followed; while nobody answers it stays. */
async function letGo(): Promise<void> {
  const taken = useTaps.getState().taps.filter((one) => one.taken);
  if (await refreshed()) for (const { place } of taken) forgetTap(place);
  else tryLater();
}

function tryLater(): void {
  clearTimeout(again);
  again = setTimeout(() => void sendTaps(), AGAIN);
}

/** Nobody answered, or whoever answered does not know this window any more: it says nothing about the tap. */
function isAway(error: CallError): boolean {
  if (error.code === 'not-allowed') return error.why === 'sign-in';
  return error.code === 'no-answer' || error.code === 'turned-away';
}

function change(place: number, to: Partial<WaitingTap>): void {
  useTaps.setState(({ taps }) => ({ taps: taps.map((one) => (one.place === place ? { ...one, ...to } : one)) }));
}

/**
 * One tap under its request id. One that is late says when it was tapped; if it had been taken without an answer, or the
 * clock of this machine is ahead, it is sent as it was first.
 */
async function sendOne({ operation, input, request, at }: Tap): Promise<CallAnswer<unknown>> {
  if (TIMED.has(operation) && Date.now() - at > LATE) {
    const late = await send({ operation, input: { at, ...(input as object) }, request });
    const plain = !late.ok && late.error.code === 'bad-input';
    if (!plain) return late;
  }
  return send({ operation, input, request });
}

/** Takes up what an earlier page of this browser kept, and goes on sending; returns how to stop. */
export function startTaps(): () => void {
  void keptTaps().then((kept) => {
    const known = new Set(useTaps.getState().taps.map((one) => one.place));
    const taken = kept.filter((one) => !known.has(one.place)).map((one) => ({ ...one, error: null, taken: false }));
    lastPlace = Math.max(lastPlace, ...taken.map((one) => one.place));
    useTaps.setState(({ taps }) => ({ taps: [...taken, ...taps].sort((a, b) => a.place - b.place) }));
    void sendTaps();
  });
  const now = () => void sendTaps();
  window.addEventListener('online', now);
  const stop = useSession.subscribe(now);
  return () => {
    window.removeEventListener('online', now);
    stop();
    clearTimeout(again);
  };
}

/** What was tapped for one operation and is not yet shown by the shop's own answers, in order. */
export function tapsOf<N extends DoName>(
  taps: readonly WaitingTap[],
  operation: N,
): (WaitingTap & { input: InputOf<N> })[] {
  return taps.filter((one) => one.operation === operation && one.error === null) as (WaitingTap & {
    input: InputOf<N>;
  })[];
}
