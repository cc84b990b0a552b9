/** A stretch of a day in minutes from midnight. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * The earliest minute from `earliest` on at which a bay is free for `need` minutes before it closes; null where it is
 * not. What is taken may overlap and stand in any order.
 */
export function freeFrom(
  taken: readonly Stretch[],
  open: Stretch,
  need: number,
  earliest: number = open.from,
): number | null {
  let at = Math.max(open.from, earliest);
  for (const { from, to } of taken.toSorted((a, b) => a.from - b.from)) {
    if (from >= at + need) break;
    at = Math.max(at, to);
  }
  return at + need <= open.to ? at : null;
}

/** The part of a day that is taken, each minute once however many stand in it. */
export function takenMinutes(taken: readonly Stretch[], open: Stretch): number {
  let [sum, reached] = [0, open.from];
  for (const { from, to } of taken.toSorted((a, b) => a.from - b.from)) {
    const until = Math.min(to, open.to);
    sum += Math.max(0, until - Math.max(from, reached));
    reached = Math.max(reached, until);
  }
  return sum;
}

/** Minutes as a wall time 'HH:MM'. */
export const wallTime = (minutes: number): string =>
  `${String(Math.trunc(minutes / 60)).padStart(2, '0')}:${String(Math.trunc(minutes % 60)).padStart(2, '0')}`;
