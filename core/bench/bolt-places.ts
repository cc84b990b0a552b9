import type { DescribedGroup } from './torque-group.ts';

/** Where the holes of a group are, as a procedure describes them. */
export type DescribedHoles = Pick<DescribedGroup, 'pattern' | 'count' | 'degrees' | 'rows'>;

/** A point of the drawing, which is 200 by 200. */
export interface BoltPlace {
  readonly x: number;
  readonly y: number;
}

const MIDDLE = 100;
/** Distance of a hole from the middle where they lie round one. */
export const RING = 66;
/** How far a bolt of a pair stands from the middle of its clip, in parts of the pair's share of the ring. */
const HALF_PAIR = 0.2;
const EDGE = 16;
/** Fasteners that are drawn in one row where nobody described where they are. */
const IN_A_ROW = 8;

const onRing = (degrees: number): BoltPlace => {
  const turn = ((degrees - 90) * Math.PI) / 180;
  return { x: MIDDLE + RING * Math.cos(turn), y: MIDDLE + RING * Math.sin(turn) };
};

/** Rows across the drawing, each in the middle. */
function inRows(rows: readonly number[]): BoltPlace[] {
  const across = Math.max(...rows, 2) - 1;
  const gap = Math.min((2 * MIDDLE - 2 * EDGE) / across, (2 * MIDDLE - 2 * EDGE) / Math.max(rows.length - 1, 1), 44);
  return rows.flatMap((holes, row) =>
    Array.from({ length: holes }, (_, hole) => ({
      x: MIDDLE + (hole - (holes - 1) / 2) * gap,
      y: MIDDLE + (row - (rows.length - 1) / 2) * gap,
    })),
  );
}

/** Where the holes of one side are drawn, in the order of their numbers; `round`: they lie round a middle. */
export function holePlaces({ pattern, count, degrees, rows }: DescribedHoles): {
  readonly places: readonly BoltPlace[];
  readonly round: boolean;
} {
  switch (pattern) {
    case 'ring':
      return { places: Array.from({ length: count }, (_, hole) => onRing((hole * 360) / count)), round: true };
    case 'angles':
      return { places: degrees.map(onRing), round: true };
    case 'pairs': {
      const share = 720 / count;
      const hole = (at: number) => onRing((Math.floor(at / 2) + (at % 2 === 0 ? -HALF_PAIR : HALF_PAIR)) * share);
      return { places: Array.from({ length: count }, (_, at) => hole(at)), round: true };
    }
    case 'rows':
      return { places: inRows(rows.length === 0 ? [count] : rows), round: false };
    case 'free': {
      const whole = Array.from({ length: Math.ceil(count / IN_A_ROW) }, (_, row) =>
        Math.min(IN_A_ROW, count - row * IN_A_ROW),
      );
      return { places: inRows(whole), round: false };
    }
  }
}

/** The least distance between two of the places; Infinity for one alone. */
export function closest(places: readonly BoltPlace[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [at, one] of places.entries())
    for (const two of places.slice(at + 1)) least = Math.min(least, Math.hypot(one.x - two.x, one.y - two.y));
  return least;
}
