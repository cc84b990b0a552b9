import type { OutputOf } from '../../../core/contract/index.ts';

export type TorqueStep = OutputOf<'torque.get'>;
export type Group = TorqueStep['group'];

/** A point of the drawing, which is 200 by 200. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface BoltPlaces {
  /** One a hole, in the order of the holes' numbers. */
  readonly places: readonly Place[];
  /** Radius of a bolt as drawn. */
  readonly bolt: number;
  /** They lie round a middle that has room for the figures. */
  readonly round: boolean;
}

const MIDDLE = 100;
const RING = 66;
const LARGEST = 12.4;
/** How far a bolt of a pair stands from the middle of its clip, in parts of the pair's share of the ring. */
const HALF_PAIR = 0.2;
const EDGE = 16;
/** Fasteners that are drawn in one row where nobody described where they are. */
const IN_A_ROW = 8;

const onRing = (degrees: number): Place => {
  const turn = ((degrees - 90) * Math.PI) / 180;
  return { x: MIDDLE + RING * Math.cos(turn), y: MIDDLE + RING * Math.sin(turn) };
};

/** Rows across the drawing, each in the middle. */
function inRows(rows: readonly number[]): Place[] {
  const across = Math.max(...rows, 2) - 1;
  const gap = Math.min((2 * MIDDLE - 2 * EDGE) / across, (2 * MIDDLE - 2 * EDGE) / Math.max(rows.length - 1, 1), 44);
  return rows.flatMap((holes, row) =>
    Array.from({ length: holes }, (_, hole) => ({
      x: MIDDLE + (hole - (holes - 1) / 2) * gap,
      y: MIDDLE + (row - (rows.length - 1) / 2) * gap,
    })),
  );
}

function placesOf({ pattern, count, degrees, rows }: Group): { places: Place[]; round: boolean } {
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

/** Where the holes of one side are drawn, and how large, so that no bolt touches another. */
export function boltPlaces(group: Group): BoltPlaces {
  const { places, round } = placesOf(group);
  const near = places.flatMap((one, at) => places.slice(at + 1).map((two) => Math.hypot(one.x - two.x, one.y - two.y)));
  return { places, round, bolt: Math.min(LARGEST, ...near.map((apart) => apart / 2 - 1)) };
}
