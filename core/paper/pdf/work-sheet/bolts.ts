import { closest, holePlaces, RING } from '../../../bench/bolt-places.ts';
import { tighteningOrder } from '../../../bench/tightening.ts';
import { holesOf } from '../../../bench/torque-group.ts';
import type { WorkSheetStep } from '../../work-sheet.ts';
import type { Item } from '../block.ts';
import type { Shaper } from '../shape.ts';
import { centred, line } from './marks.ts';

export type Torque = NonNullable<WorkSheetStep['torque']>;

/** Radius of a bolt as drawn: two figures of the smallest print fit. */
const BOLT = 7;
/** Bolts stand at least so far apart, middle to middle. */
const APART = 15;
/** Those of a pair, so that their clip is seen. */
const PAIR_APART = 19;
/** The smallest ring that is drawn, middle to bolt. */
const SMALLEST = 18;
/** From the bolts to the outline. */
const OUTLINE = 2.5;

export interface BoltDrawing {
  readonly width: number;
  readonly height: number;
  /** From the top left corner of the drawing. */
  readonly items: readonly Item[];
}

/**
 * The holes of one side where they are, numbered and joined in the order of tightening; null where nobody described where
 * they are, or where there is one alone. Holes that lie too close for that are drawn over each other rather than wider than
 * `room` points.
 */
export function boltDrawing(shaper: Shaper, torque: Torque, room: number): BoltDrawing | null {
  if (torque.pattern === 'free' || torque.count < 2) return null;
  const { places, round } = holePlaces(torque);
  const wanted = Math.max(
    (torque.pattern === 'pairs' ? PAIR_APART : APART) / closest(places),
    round ? SMALLEST / RING : 0,
  );
  const rim = BOLT + (round ? OUTLINE : 0);
  const scale = Math.min(wanted, ((room - 1) / 2 - rim) / widest(places, round));
  const drawn = places.map(({ x, y }) => ({ x: (x - 100) * scale, y: (y - 100) * scale }));
  const reach = (of: (place: { x: number; y: number }) => number) => Math.max(...drawn.map((one) => Math.abs(of(one))));
  const ring = RING * scale + BOLT + OUTLINE;
  const half = round ? { x: ring, y: ring } : { x: reach((one) => one.x) + BOLT, y: reach((one) => one.y) + BOLT };
  const at = (hole: number) => {
    const place = drawn[hole - 1] ?? { x: 0, y: 0 };
    return { x: place.x + half.x + 0.5, y: place.y + half.y + 0.5 };
  };
  const order = tighteningOrder(holesOf(torque));
  const joined = order.slice(1).map((hole, i): Item => {
    const from = at(order[i] ?? hole);
    const to = at(hole);
    return line(from.x, from.y, to.x - from.x, to.y - from.y, 0.35);
  });
  const bolts = order.flatMap((hole, i): Item[] => {
    const { x, y } = at(hole);
    return [
      { kind: 'circle', x, y, radius: BOLT, weight: 0.8, blank: true },
      centred(shaper, String(i + 1), x, y + 3.1),
    ];
  });
  const outline: Item[] = round
    ? [{ kind: 'circle', x: half.x + 0.5, y: half.y + 0.5, radius: ring, weight: 0.8, blank: false }]
    : [];
  const clips = torque.pattern === 'pairs' ? pairClips(torque.count, at) : [];
  return {
    width: 2 * half.x + 1,
    height: 2 * half.y + 1,
    items: [...outline, ...joined, ...clips, ...bolts],
  };
}

/** How far the drawing goes from its middle before it is made larger. */
const widest = (places: readonly { x: number; y: number }[], round: boolean): number =>
  round ? RING : Math.max(...places.map(({ x, y }) => Math.max(Math.abs(x - 100), Math.abs(y - 100))));

/** The clip that the two bolts of a pair share. */
function pairClips(count: number, at: (hole: number) => { x: number; y: number }): Item[] {
  return Array.from({ length: count / 2 }, (_, pair) => {
    const one = at(2 * pair + 1);
    const two = at(2 * pair + 2);
    return line(one.x, one.y, two.x - one.x, two.y - one.y, 3);
  });
}
