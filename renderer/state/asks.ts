import { create } from 'zustand';
import { type AskName, ask } from './call.ts';
import { hear } from './hands.ts';
import { type CallError, listen } from './transport.ts';

/** One answer that is kept, by operation and input. */
export interface Kept {
  readonly data: unknown;
  readonly error: CallError | null;
  /** When it was answered last; 0 while the first answer is under way. */
  readonly at: number;
}

interface Watched {
  readonly operation: AskName;
  readonly input: unknown;
  watchers: number;
  /** The round under way. */
  running: Promise<void> | null;
  /** Something changed while it ran: ask again. */
  again: boolean;
}

/** Answers by key. */
export const useKept = create<{ readonly kept: Readonly<Record<string, Kept>> }>(() => ({ kept: {} }));

const watched = new Map<string, Watched>();

export function keyOf(operation: string, input: unknown): string {
  return `${operation} ${JSON.stringify(input)}`;
}

function run(key: string, entry: Watched): Promise<void> {
  if (entry.running !== null) entry.again = true;
  else
    entry.running = askAgain(key, entry).finally(() => {
      entry.running = null;
    });
  return entry.running;
}

async function askAgain(key: string, entry: Watched): Promise<void> {
  do {
    entry.again = false;
    const answer = await ask(entry.operation, entry.input as never);
    useKept.setState(({ kept }) => {
      const before = kept[key];
      const next: Kept = answer.ok
        ? { data: answer.output, error: null, at: Date.now() }
        : { data: before?.data, error: answer.error, at: Date.now() };
      return { kept: { ...kept, [key]: next } };
    });
  } while (entry.again);
}

/** Asks and keeps the answer fresh while anybody watches; what nobody watches is dropped at the next change. */
export function watch(key: string, operation: AskName, input: unknown): () => void {
  let entry = watched.get(key);
  if (entry === undefined) {
    entry = { operation, input, watchers: 0, running: null, again: false };
    watched.set(key, entry);
  }
  entry.watchers++;
  void run(key, entry);
  const mine = entry;
  return () => {
    mine.watchers--;
  };
}

let soon: ReturnType<typeof setTimeout> | undefined;

/**
 * Something changed: everything watched is asked again. An order's answer depends on customers, cars, clocks, parts and
 * people alike and each answer takes about a millisecond, so nothing is guessed about which room moves which answer.
 */
export function refresh(): void {
  clearTimeout(soon);
  soon = setTimeout(() => {
    const gone = new Set<string>();
    for (const [key, entry] of watched) {
      if (entry.watchers > 0) void run(key, entry);
      else gone.add(key);
    }
    for (const key of gone) watched.delete(key);
    if (gone.size > 0)
      useKept.setState(({ kept }) => ({
        kept: Object.fromEntries(Object.entries(kept).filter(([key]) => !gone.has(key))),
      }));
  }, 30);
}

/** The same at once. Resolves when it was all asked: whether the shop answered, or nobody did. */
export async function refreshed(): Promise<boolean> {
  const asked = [...watched].filter(([, entry]) => entry.watchers > 0);
  await Promise.all(asked.map(([key, entry]) => run(key, entry)));
  const { kept } = useKept.getState();
  return !asked.some(([key]) => kept[key]?.error?.code === 'no-answer');
}

/** Forgets every answer: somebody else works at this window now. */
export function forgetAll(): void {
  useKept.setState({ kept: {} });
  refresh();
}

/** Starts listening for what others change. */
export function startListening(): () => void {
  return listen(refresh, refresh, hear);
}
