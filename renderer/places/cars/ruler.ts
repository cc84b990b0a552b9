import { fitting } from '../today/strip/lay-out.ts';

/** A point on the ruler with the label that wants to stand over it. Lengths in pixels. */
export interface Labelled {
  readonly id: string;
  readonly x: number;
  readonly wide: number;
}
export interface LabelPlace {
  readonly id: string;
  /** The label's left edge. */
  readonly left: number;
  /** 0 is the lane next to the line. */
  readonly lane: number;
}

/** Where the line of a car's life begins and ends, in pixels from its place's edges. */
export const EDGES = { left: 68, right: 30 } as const;

const GAP = 10;
const STEM = 5;
const EDGE = 4;

/** Where a label may stand over its point: centred, ending at it, beginning at it. */
type Stand = (x: number, wide: number) => number;
const CENTRED: Stand = (x, wide) => x - wide / 2;
const ENDING: Stand = (x, wide) => x - wide + EDGE;
const BEGINNING: Stand = (x) => x - EDGE;
const WAYS: readonly (readonly Stand[])[] = [
  [CENTRED, ENDING, BEGINNING],
  [ENDING, CENTRED, BEGINNING],
  [BEGINNING, CENTRED, ENDING],
];

/**
 * Places labels in lanes so that none covers another and no stem, which goes from a label straight to its point, crosses
 * a label nearer to the line. Those handed in first are placed first; what finds no room gets no label, only its point.
 * Of a few ways and orders to begin with, the one that labels most.
 */
export function placeLabels(points: readonly Labelled[], width: number, lanes: number): LabelPlace[] {
  const orders = [points, points.toSorted((a, b) => a.x - b.x), points.toSorted((a, b) => b.x - a.x)];
  const ways = orders.flatMap((order) => WAYS.map((stands) => placedBy(order, width, lanes, stands)));
  return ways.reduce((best, way) => (way.length > best.length ? way : best));
}

function placedBy(points: readonly Labelled[], width: number, lanes: number, stands: readonly Stand[]): LabelPlace[] {
  const placed: (LabelPlace & { readonly right: number; readonly x: number })[] = [];
  for (const { id, x, wide } of points) {
    if (wide > width) continue;
    const free = stands
      .map((stand) => Math.max(0, Math.min(width - wide, stand(x, wide))))
      .flatMap((left) => Array.from({ length: lanes }, (_, lane) => ({ left, lane })))
      .find(({ left, lane }) =>
        placed.every((one) => {
          const right = left + wide;
          if (one.lane === lane) return right + GAP <= one.left || one.right + GAP <= left;
          // A stem of the farther one must not cross the nearer one.
          if (one.lane > lane) return one.x + STEM <= left || right + STEM <= one.x;
          return x + STEM <= one.left || one.right + STEM <= x;
        }),
      );
    if (free !== undefined) placed.push({ ...free, id, x, right: free.left + wide });
  }
  return placed.map(({ id, left, lane }) => ({ id, left, lane }));
}

/** The first of 1, 2, 5, 10 … steps of which so many at most lie in a span. */
export function stepFor(span: number, most: number): number {
  for (let ten = 1; ; ten *= 10) for (const step of [ten, 2 * ten, 5 * ten]) if (span / step <= most) return step;
}

/**
 * What the ruler shows: from nought where the readings begin low, else from a round figure below the first, so that
 * visits of one year do not crowd at its end; to a round figure above the last.
 */
export function rulerSpan(least: number, most: number): { readonly from: number; readonly to: number } {
  const near = most > least && most - least < most / 4;
  const step = stepFor(near ? Math.max(most - least, most / 50) * 2 : most, 10);
  const from = near ? Math.max(0, Math.floor((least - step) / step) * step) : 0;
  return { from, to: Math.max(from + step, Math.ceil((most + step / 2) / step) * step) };
}

/** Words that fit into so many signs, whole words where that goes; what is left out is told by its three points. */
export function shortened(words: string, most: number): string {
  if (words.length <= most) return words;
  return `${fitting(words, most - 1) || words.slice(0, most - 1)}…`;
}

/** Whether a stem, by its x, runs through a figure that stands centred at `x` and is so wide. */
export const isStruck = (x: number, wide: number, stems: readonly number[]): boolean =>
  stems.some((stem) => Math.abs(stem - x) < wide / 2 + STEM);
