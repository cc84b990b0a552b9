import type { Answer, ShopError } from '../../core/contract/errors.ts';

/** Besides the shop's own errors: the door turned the window away, or nobody answered. */
export type CallError =
  | ShopError
  | { readonly code: 'turned-away'; readonly why: string }
  | { readonly code: 'no-answer' };
export type CallAnswer<O> =
  | { readonly ok: true; readonly output: O }
  | { readonly ok: false; readonly error: CallError };

export interface CallBody {
  readonly operation: string;
  readonly input: unknown;
  /** UUIDv7, on what changes something: the same request twice is applied once. */
  readonly request?: string;
}

export interface Entered {
  readonly personId: string;
  readonly name: string;
  readonly role: 'owner' | 'desk' | 'mechanic';
}

export interface Who {
  readonly person: Entered | null;
  readonly practice: boolean;
  readonly folder: string;
}

/** A cell that somebody else has in hand. */
export interface Hand {
  readonly name: string;
  readonly cell: string;
}

/** What the desktop's preload puts at `window.crownwheel`; the browser host offers the same over HTTP. */
interface Bridge {
  call(body: CallBody): Promise<Answer>;
  enter(person: string, code: string): Promise<Answer>;
  leave(): Promise<Answer>;
  who(): Promise<Answer>;
  /** Tells the rooms of the contract that changed; returns how to stop listening. */
  onChange(listener: (rooms: readonly string[]) => void): () => void;
  /** This window has that cell in hand; null: none. */
  hand(cell: string | null): Promise<Answer>;
  /** Tells which cells the other windows have in hand; returns how to stop listening. */
  onHands(listener: (hands: readonly Hand[]) => void): () => void;
  /** What is asked before there is a garage. */
  begin?(body: unknown): Promise<Answer>;
  /** Lets somebody pick a copy on the desktop. */
  pickCopy?(): Promise<Answer>;
  /** Opens an issued paper in the machine's own reader. */
  openPaper?(paperId: string): void;
}

declare global {
  interface Window {
    readonly crownwheel?: Bridge;
  }
}

async function overHttp(path: string, body?: unknown): Promise<CallAnswer<unknown>> {
  try {
    const response = await fetch(path, {
      ...(body === undefined
        ? {}
        : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
    return (await response.json()) as CallAnswer<unknown>;
  } catch {
    return { ok: false, error: { code: 'no-answer' } };
  }
}

async function overBridge(answer: Promise<Answer>): Promise<CallAnswer<unknown>> {
  try {
    return await answer;
  } catch {
    return { ok: false, error: { code: 'no-answer' } };
  }
}

/** One call to the shop through whichever door this window has. Never throws. */
export function send(body: CallBody): Promise<CallAnswer<unknown>> {
  return window.crownwheel ? overBridge(window.crownwheel.call(body)) : overHttp('/call', body);
}

export function sendEnter(person: string, code: string): Promise<CallAnswer<unknown>> {
  return window.crownwheel ? overBridge(window.crownwheel.enter(person, code)) : overHttp('/enter', { person, code });
}

export function sendLeave(): Promise<CallAnswer<unknown>> {
  return window.crownwheel ? overBridge(window.crownwheel.leave()) : overHttp('/leave', {});
}

/** Nobody waits for it: where it is lost, a name is missing at a cell's edge. */
export function sendHand(cell: string | null): Promise<CallAnswer<unknown>> {
  return window.crownwheel ? overBridge(window.crownwheel.hand(cell)) : overHttp('/hand', { cell });
}

export function askWho(): Promise<CallAnswer<unknown>> {
  return window.crownwheel ? overBridge(window.crownwheel.who()) : overHttp('/who');
}

/** Asks before there is a garage: a look at the demo, or a copy. Never throws. */
export function sendBegin(body: object): Promise<CallAnswer<unknown>> {
  return window.crownwheel?.begin ? overBridge(window.crownwheel.begin(body)) : overHttp('/begin', body);
}

/** Whether this window can let somebody pick a place on the machine; a browser's cannot tell where a file lies. */
export const mayPickCopy = (): boolean => window.crownwheel?.pickCopy !== undefined;

/** Where somebody picked a copy, or null. */
export async function pickCopy(): Promise<string | null> {
  if (window.crownwheel?.pickCopy === undefined) return null;
  const answer = (await overBridge(window.crownwheel.pickCopy())) as CallAnswer<{ readonly path: string | null }>;
  return answer.ok ? answer.output.path : null;
}

/** Listens for changes; `onGap` is told when the stream came back after a break, since changes may have been missed. */
export function listen(
  onRooms: (rooms: readonly string[]) => void,
  onGap: () => void,
  onHands: (hands: readonly Hand[]) => void,
): () => void {
  if (window.crownwheel) {
    const stops = [window.crownwheel.onChange(onRooms), window.crownwheel.onHands(onHands)];
    return () => {
      for (const stop of stops) stop();
    };
  }
  const source = new EventSource('/changes');
  let broken = false;
  source.addEventListener('change', (event) => onRooms(JSON.parse(event.data) as readonly string[]));
  source.addEventListener('hands', (event) => onHands(JSON.parse(event.data) as readonly Hand[]));
  source.addEventListener('error', () => {
    broken = true;
  });
  source.addEventListener('open', () => {
    if (broken) onGap();
    broken = false;
  });
  return () => source.close();
}

const readAt = (paperId: string) => `/papers/${encodeURIComponent(paperId)}.pdf`;

/** Where an issued paper is read. */
export function openPaper(paperId: string): void {
  if (window.crownwheel?.openPaper) window.crownwheel.openPaper(paperId);
  else window.open(readAt(paperId), '_blank', 'noopener');
}

/** An issued paper to the printer: its reader opens and asks at once which one. On the desktop the reader's own key prints. */
export function printPaper(paperId: string): void {
  if (window.crownwheel?.openPaper) {
    window.crownwheel.openPaper(paperId);
    return;
  }
  const reader = window.open(readAt(paperId), '_blank');
  reader?.addEventListener('load', () => reader.print());
}
