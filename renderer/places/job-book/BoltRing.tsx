import { tighteningOrder } from '../../../core/bench/tightening.ts';
import { t } from '../../words/t.ts';

/** More bolts than this stand too close for their numbers. */
const MOST = 24;

/** The bolts of a ring as one looks at them, each with its number in the order of tightening; lines go from one to the next. */
export function BoltRing({ count }: { readonly count: number }) {
  if (count < 2 || count > MOST) return null;
  const order = tighteningOrder({ layout: 'ring', count });
  const radius = 58;
  const bolt = Math.min(12, (Math.PI * radius) / count - 1);
  const at = (hole: number) => {
    const turn = ((hole - 1) * 2 * Math.PI) / count - Math.PI / 2;
    return { x: 74 + radius * Math.cos(turn), y: 74 + radius * Math.sin(turn) };
  };
  return (
    <svg
      className="ring"
      width="148"
      height="148"
      viewBox="0 0 148 148"
      role="img"
      aria-label={t('parts.boltsInOrder', { n: count })}
    >
      {order.slice(1).map((hole, i) => {
        const from = at(order[i] ?? 1);
        const to = at(hole);
        return <line key={hole} x1={from.x} y1={from.y} x2={to.x} y2={to.y} />;
      })}
      {order.map((hole, i) => {
        const { x, y } = at(hole);
        return (
          <g key={hole} className="bolt">
            <circle cx={x} cy={y} r={bolt} />
            <text x={x} y={y} dy="0.35em" textAnchor="middle" fontSize={Math.min(12, bolt + 2)}>
              {i + 1}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
