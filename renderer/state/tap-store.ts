import type { DoName } from './call.ts';

/** Something that was tapped beside the lift, kept until the shop has answered. */
export interface Tap {
  /** Its place in the order of tapping. */
  readonly place: number;
  readonly operation: DoName;
  readonly input: unknown;
  /** UUIDv7 under which it is applied once, however often it is sent. */
  readonly request: string;
  /** When it was tapped, epoch milliseconds. */
  readonly at: number;
  /** Who tapped: nobody else sends it. */
  readonly personId: string;
  /** Of torque: how many touches stand after it; null for anything else. */
  readonly leaves: number | null;
}

const STORE = 'taps';

function asked<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((ok, fail) => {
    request.onsuccess = () => ok(request.result);
    request.onerror = () => fail(request.error);
  });
}

let opened: Promise<IDBDatabase> | undefined;

function database(): Promise<IDBDatabase> {
  opened ??= new Promise((ok, fail) => {
    const opening = indexedDB.open('crownwheel-taps', 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(STORE, { keyPath: 'place' });
    opening.onsuccess = () => ok(opening.result);
    opening.onerror = () => fail(opening.error);
  });
  return opened;
}

async function within<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T | null> {
  try {
    return await asked(work((await database()).transaction(STORE, mode).objectStore(STORE)));
  } catch {
    // A browser that keeps nothing: what was tapped waits in the page alone.
    return null;
  }
}

/** Keeps a tap in this browser. */
export async function keepTap(tap: Tap): Promise<void> {
  await within('readwrite', (store) => store.put(tap));
}

/** All that is kept, in the order of tapping. */
export async function keptTaps(): Promise<Tap[]> {
  return (await within('readonly', (store) => store.getAll() as IDBRequest<Tap[]>)) ?? [];
}

/** The shop has answered it. */
export async function dropTap(place: number): Promise<void> {
  await within('readwrite', (store) => store.delete(place));
}
