import { type BoltPlace, closest, type DescribedHoles, holePlaces } from '../../../core/bench/bolt-places.ts';
import { tighteningOrder } from '../../../core/bench/tightening.ts';
import { holesOf } from '../../../core/bench/torque-group.ts';
import { t } from '../../words/t.ts';

/** Bolts that are drawn smaller than this have no room for their numbers. */
const SMALLEST = 5;
const LARGEST = 17;

/** The bolts where they are, each with its number in the order of tightening; lines go from one to the next. */
export function BoltRing({ torque }: { readonly torque: DescribedHoles }) {
  const { count, pattern } = torque;
  if (count < 2 || pattern === 'free') return null;
  const { places, round } = holePlaces(torque);
  // Between the two of a pair their clip is seen.
  const bolt = Math.min(LARGEST, closest(places) / 2 - (pattern === 'pairs' ? 3 : 1));
  if (bolt < SMALLEST) return null;
  const at = (hole: number): BoltPlace => places[hole - 1] ?? { x: 100, y: 100 };
  const order = tighteningOrder(holesOf({ ...torque, sides: 1, stages: [], checkRound: false }));
  return (
    <svg
      className="ring book-ring"
      width="148"
      height="148"
      viewBox="0 0 200 200"
      role="img"
      aria-label={t('parts.boltsInOrder', { n: count })}
    >
      {round ? <circle className="rim" cx="100" cy="100" r="92" /> : null}
      {order.slice(1).map((hole, i) => {
        const from = at(order[i] ?? 1);
        const to = at(hole);
        return <line key={hole} x1={from.x} y1={from.y} x2={to.x} y2={to.y} />;
      })}
      {pattern === 'pairs' ? <Clips places={places} /> : null}
      {order.map((hole, i) => {
        const { x, y } = at(hole);
        return (
          <g key={hole} className="bolt">
            <circle cx={x} cy={y} r={bolt} />
            <text x={x} y={y} dy="0.35em" textAnchor="middle" fontSize={Math.min(15, bolt * 1.2)}>
              {i + 1}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** The clip that the two bolts of a pair share. */
function Clips({ places }: { readonly places: readonly BoltPlace[] }) {
  return places.map((one, at) => {
    const two = places[at + 1];
    if (at % 2 === 1 || two === undefined) return null;
    return <line key={`${one.x} ${one.y}`} className="clip" x1={one.x} y1={one.y} x2={two.x} y2={two.y} />;
  });
}
