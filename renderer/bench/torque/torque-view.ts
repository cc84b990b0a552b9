import type { WaitingTap } from '../../state/taps.ts';
import { tapsOf } from '../../state/taps.ts';
import type { TorqueStep } from './bolt-places.ts';

type Touch = TorqueStep['touches'][number];

/** A torque step as the person at it sees it: what the shop has, and after it what was tapped and still waits. */
export interface TorqueView {
  /** Touches that are made, waiting ones among them. */
  readonly made: number;
  /** The touch in hand; null when all are made. */
  readonly due: Touch | null;
  /** All of the round in hand: one side, one stage. */
  readonly round: readonly Touch[];
  /** How many of that round are made. */
  readonly roundMade: number;
  /** Hole to its number in the order of tightening, which is what is said of it. */
  readonly numbers: ReadonlyMap<number, number>;
}

/** What the waiting taps leave of a step; null where none waits. */
export function waitingMade(taps: readonly WaitingTap[], jobId: string, step: number): number | null {
  const mine = [...tapsOf(taps, 'torque.make'), ...tapsOf(taps, 'torque.back')]
    .filter(({ input }) => input.jobId === jobId && input.step === step)
    .sort((a, b) => a.place - b.place);
  return mine.at(-1)?.leaves ?? null;
}

const sameRound = (a: Touch, b: Touch) => a.side === b.side && a.stage === b.stage && a.check === b.check;

/** Puts a step and what waits for it together. `waiting`: from waitingMade. */
export function torqueView({ touches, made: kept }: TorqueStep, waiting: number | null): TorqueView {
  const made = Math.min(waiting ?? kept, touches.length);
  const due = touches[made] ?? null;
  const last = touches.at(-1);
  const at = due ?? last;
  const round = at === undefined ? [] : touches.filter((touch) => sameRound(touch, at));
  const first = touches.filter((touch) => touch.side === 1 && touch.stage === 0 && !touch.check);
  return {
    made,
    due,
    round,
    roundMade: round.filter((touch) => touch.touch < made).length,
    numbers: new Map(first.map((touch, place) => [touch.hole, place + 1])),
  };
}
