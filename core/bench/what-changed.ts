/** What two versions of a job are compared by. */
export interface ComparedJob {
  readonly bookHours: number;
  /** Minor units; null: what its lines come to. */
  readonly fixedPrice: number | null;
  readonly steps: readonly { readonly n: number; readonly do: string }[];
  readonly lines: readonly unknown[];
  readonly cautions: readonly string[];
}

/** How a version differs from the one before; hours in thousandths. */
export interface WhatChanged {
  readonly hours: { readonly from: number; readonly to: number } | null;
  /** Steps, counted. */
  readonly added: number;
  readonly takenOut: number;
  readonly changed: number;
  /** The same steps stand in another order. */
  readonly moved: boolean;
  readonly lines: boolean;
  /** Its fixed price. */
  readonly price: boolean;
  readonly cautions: boolean;
  /** Title, car, people, source, what goes with it or comes after. */
  readonly rest: boolean;
}

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);
/** A step without its number: moving it does not change it. */
const text = (step: ComparedJob['steps'][number]): string => JSON.stringify({ ...step, n: 0 });

/** What is compared on its own. */
const COMPARED: ComparedJob = { bookHours: 0, fixedPrice: null, steps: [], lines: [], cautions: [] };

/** What of the second list is not in the first, and the other way round, each counted as often as it stands there. */
function apart<T>(before: readonly T[], after: readonly T[], key: (one: T) => string): [T[], T[]] {
  const left = [...before];
  const fresh: T[] = [];
  for (const one of after) {
    const at = left.findIndex((other) => key(other) === key(one));
    if (at < 0) fresh.push(one);
    else left.splice(at, 1);
  }
  return [left, fresh];
}

/** How a version of a job differs from the one before. A step is known again by what is done in it. */
export function whatChanged(before: ComparedJob, after: ComparedJob): WhatChanged {
  const [left, fresh] = apart(before.steps, after.steps, text);
  const [takenOut, added] = apart(left, fresh, (step) => step.do);
  // One that is said anew where another went is that step, changed.
  const reworded = Math.min(takenOut.length, added.length);
  const unchanged = left.length === 0 && fresh.length === 0;
  return {
    hours: before.bookHours === after.bookHours ? null : { from: before.bookHours, to: after.bookHours },
    added: added.length - reworded,
    takenOut: takenOut.length - reworded,
    changed: fresh.length - added.length + reworded,
    moved: unchanged && !same(before.steps.map(text), after.steps.map(text)),
    lines: !same(before.lines, after.lines),
    price: before.fixedPrice !== after.fixedPrice,
    cautions: !same(before.cautions, after.cautions),
    rest: !same({ ...before, ...COMPARED }, { ...after, ...COMPARED }),
  };
}
