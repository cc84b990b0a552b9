import { type Holes, holeCount, type Touch, touches } from './tightening.ts';
import type { TorqueGroup } from './torque.ts';

/** Fasteners that are tightened together, as a procedure describes them. */
export interface DescribedGroup {
  readonly pattern: Holes['layout'];
  /** Holes on one side of the car. */
  readonly count: number;
  readonly degrees: readonly number[];
  /** Holes in each row; empty: all in one. */
  readonly rows: readonly number[];
  readonly sides: number;
  readonly stages: readonly unknown[];
  readonly checkRound: boolean;
}

/** Where the holes of one side are. */
export function holesOf({ pattern, count, degrees, rows }: DescribedGroup): Holes {
  switch (pattern) {
    case 'ring':
    case 'free':
      return { layout: pattern, count };
    case 'angles':
      return { layout: 'angles', degrees };
    case 'pairs':
      return { layout: 'pairs', pairs: count / 2 };
    case 'rows':
      return { layout: 'rows', rows: rows.length === 0 ? [count] : rows };
  }
}

/** Fasteners on all sides, and the rounds that each is touched in, the last one in a circle too. */
export function groupOf(group: DescribedGroup): TorqueGroup {
  return {
    fasteners: holeCount(holesOf(group)) * group.sides,
    stages: group.stages.length + (group.checkRound ? 1 : 0),
  };
}

/** A touch on one side of the car, sides from 1. */
export interface SidedTouch extends Touch {
  readonly side: number;
}

/** Every touch of a group in its order: one side of the car whole, then the next. Throws as `touches` does. */
export function touchesOf(group: DescribedGroup): SidedTouch[] {
  const one = touches(holesOf(group), group.stages.length, group.checkRound);
  return Array.from({ length: group.sides }, (_, side) => one.map((touch) => ({ ...touch, side: side + 1 }))).flat();
}
