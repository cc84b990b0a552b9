/**
 * The order in which fasteners are tightened. Holes are counted from 1, round the ring as one looks at it, or along the
 * rows from left to right and then down.
 */

/** Where holes are: evenly round a ring, at angles of their own, in rows, or anywhere (as they are numbered). */
export type Holes =
  | { readonly layout: 'ring'; readonly count: number }
  /** Degrees from the top, clockwise, one a hole; they need not be evenly spaced. */
  | { readonly layout: 'angles'; readonly degrees: readonly number[] }
  /** Pairs that share a clip: both bolts of a pair are tightened before the wrench crosses over. */
  | { readonly layout: 'pairs'; readonly pairs: number }
  | { readonly layout: 'rows'; readonly rows: readonly number[] }
  | { readonly layout: 'free'; readonly count: number };

const MOST = 64;

/**
 * A cross pattern over n places (from 0). Even: each place is followed by the one opposite, and the pairs stand in the
 * cross pattern of the half; so that 4, 8, 12 and 16 agree with the published tables. Odd, where nothing is opposite:
 * the star, nearly half way round at each step.
 */
function cross(n: number): number[] {
  if (n <= 1) return n === 1 ? [0] : [];
  if (n % 2 === 0) return cross(n / 2).flatMap((place) => [place, place + n / 2]);
  const step = (n - 1) / 2;
  return Array.from({ length: n }, (_, k) => (k * step) % n);
}

/** Rows are drawn up from the middle outwards, each hole followed by the one that mirrors it through the centre. */
function fromTheMiddle(rows: readonly number[]): number[] {
  const places = rows.flatMap((holes, row) =>
    Array.from({ length: holes }, (_, hole) => ({ x: hole - (holes - 1) / 2, y: row - (rows.length - 1) / 2 })),
  );
  const left = new Set(places.keys());
  const far = (k: number) => {
    const place = places[k];
    return place === undefined ? 0 : Math.hypot(place.x, place.y);
  };
  const order: number[] = [];
  for (const k of [...left].sort((a, b) => far(a) - far(b) || a - b)) {
    if (!left.delete(k)) continue;
    order.push(k);
    const here = places[k];
    const mirror = [...left].find((other) => {
      const there = places[other];
      return here !== undefined && there !== undefined && there.x === -here.x && there.y === -here.y;
    });
    if (mirror !== undefined && left.delete(mirror)) order.push(mirror);
  }
  return order;
}

const turn = (a: number, b: number) => {
  const between = Math.abs(a - b) % 360;
  return Math.min(between, 360 - between);
};

/**
 * Holes at angles of their own: after each, the one nearest to opposite; then, for the next pair, the one furthest from
 * all that are tight.
 */
function acrossAngles(degrees: readonly number[]): number[] {
  const at = (k: number) => degrees[k] ?? 0;
  const left = new Set(degrees.keys());
  const order: number[] = [];
  const best = (worth: (k: number) => number): number => {
    let found = -1;
    let most = Number.NEGATIVE_INFINITY;
    for (const k of left) {
      // A hair's difference is the same place: the earlier hole stands.
      if (worth(k) > most + 1e-9) [found, most] = [k, worth(k)];
    }
    return found;
  };
  while (left.size > 0) {
    const last = order.at(-1);
    const opposite = order.length % 2 === 1 && last !== undefined;
    const next = opposite
      ? best((k) => turn(at(k), at(last)))
      : best((k) => Math.min(360, ...order.map((tight) => turn(at(k), at(tight)))));
    left.delete(next);
    order.push(next);
  }
  return order;
}

/** How many holes there are. */
export function holeCount(holes: Holes): number {
  switch (holes.layout) {
    case 'ring':
    case 'free':
      return holes.count;
    case 'angles':
      return holes.degrees.length;
    case 'pairs':
      return holes.pairs * 2;
    case 'rows':
      return holes.rows.reduce((all, row) => all + row, 0);
  }
}

/**
 * The numbers of the holes, from 1, in the order of tightening. Checked against the published cross patterns for 4, 8,
 * 12 and 16 bolts and the properties that all published even patterns share (FAA AC 43.13-1B and others, in tests).
 * Throws RangeError for no hole at all, or more than 64.
 */
export function tighteningOrder(holes: Holes): number[] {
  const count = holeCount(holes);
  if (!Number.isInteger(count) || count < 1 || count > MOST)
    throw new RangeError(`1 to ${MOST} fasteners, not ${count}`);
  return placesOf(holes).map((place) => place + 1);
}

function placesOf(holes: Holes): number[] {
  switch (holes.layout) {
    case 'ring':
      return cross(holes.count);
    case 'angles':
      return acrossAngles(holes.degrees);
    case 'pairs':
      return cross(holes.pairs).flatMap((pair) => [2 * pair, 2 * pair + 1]);
    case 'rows':
      return fromTheMiddle(holes.rows);
    case 'free':
      return Array.from({ length: holes.count }, (_, k) => k);
  }
}

/** One touch of the wrench: which hole, in which stage (from 0). `check`: the last round, in a circle, at the full figure. */
export interface Touch {
  readonly hole: number;
  readonly stage: number;
  readonly check: boolean;
}

/**
 * Every touch of a group in its order: each stage goes once over all holes before the next begins, so that the joint is
 * drawn up evenly; where the procedure wants it, a last round in a circle at the full figure follows.
 * Throws RangeError as tighteningOrder does, and without a stage.
 */
export function touches(holes: Holes, stages: number, checkRound: boolean): Touch[] {
  if (!Number.isInteger(stages) || stages < 1) throw new RangeError(`At least one stage, not ${stages}`);
  const order = tighteningOrder(holes);
  const rounds = Array.from({ length: stages }, (_, stage) => order.map((hole) => ({ hole, stage, check: false })));
  const circle = checkRound
    ? [...order].sort((a, b) => a - b).map((hole) => ({ hole, stage: stages - 1, check: true }))
    : [];
  return [...rounds.flat(), ...circle];
}

/**
 * The touch that is due after so many recorded ones; null when all are made. A recorded touch is always the one that
 * was due, so no hole can be missed or taken twice.
 */
export function dueTouch(all: readonly Touch[], recorded: number): Touch | null {
  return all[recorded] ?? null;
}

/** Which records (by place) share their minute with another: tapped after the work rather than with it. */
export function enteredTogether(instants: readonly number[]): boolean[] {
  const minute = (instant: number) => Math.floor(instant / 60_000);
  const often = new Map<number, number>();
  for (const instant of instants) often.set(minute(instant), (often.get(minute(instant)) ?? 0) + 1);
  return instants.map((instant) => (often.get(minute(instant)) ?? 0) > 1);
}
