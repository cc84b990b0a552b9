import { type BoltPlace, closest, holePlaces } from '../../../core/bench/bolt-places.ts';
import type { OutputOf } from '../../../core/contract/index.ts';

export type TorqueStep = OutputOf<'torque.get'>;
export type Group = TorqueStep['group'];

export interface BoltPlaces {
  /** One a hole, in the order of the holes' numbers; the drawing is 200 by 200. */
  readonly places: readonly BoltPlace[];
  /** Radius of a bolt as drawn. */
  readonly bolt: number;
  /** They lie round a middle that has room for the figures. */
  readonly round: boolean;
  /** The part of the drawing that is shown: where it begins from the top, and how high it is. */
  readonly top: number;
  readonly high: number;
}

const LARGEST = 12.4;
const WHOLE = { top: 0, high: 200 };

/** Rows take no more height than they need; the bolt in hand is drawn larger. */
function heightOf(places: readonly BoltPlace[], bolt: number): { top: number; high: number } {
  const downs = places.map((place) => place.y);
  const edge = bolt * 1.22 + 4;
  const top = Math.min(...downs) - edge;
  return { top, high: Math.max(...downs) + edge - top };
}

/** Where the holes of one side are drawn, and how large, so that no bolt touches another. */
export function boltPlaces(group: Group): BoltPlaces {
  const { places, round } = holePlaces(group);
  const bolt = Math.min(LARGEST, closest(places) / 2 - 1);
  return { places, round, bolt, ...(round ? WHOLE : heightOf(places, bolt)) };
}
