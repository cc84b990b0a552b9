import { t } from '../../words/t.ts';
import { boltPlaces, type Group } from './bolt-places.ts';
import type { TorqueView } from './torque-view.ts';

interface Props {
  readonly group: Group;
  readonly view: TorqueView;
  /** In the middle, both units: "60 N·m", "44 lbf·ft". */
  readonly figures: readonly [string, string];
}

const TEETH = 41;

/** The outline of a crown wheel: 41 teeth between radius 86 and 97 around the middle. */
function teeth(): string {
  const turn = (tooth: number, radius: number) => {
    const at = (tooth / TEETH) * 2 * Math.PI - Math.PI / 2;
    return `${(100 + radius * Math.cos(at)).toFixed(1)} ${(100 + radius * Math.sin(at)).toFixed(1)}`;
  };
  const points = Array.from({ length: TEETH }, (_, tooth) => [
    turn(tooth - 0.27, 86),
    turn(tooth - 0.12, 97),
    turn(tooth + 0.14, 97),
    turn(tooth + 0.28, 86),
  ]);
  return `M${points.flat().join('L')}Z`;
}

const OUTLINE = teeth();

/** Bolts where they are, numbered and joined in the order of tightening; tight ones inked, the one in hand brass. */
export function BoltDrawing({ group, view, figures }: Props) {
  const { places, bolt, round, top, high } = boltPlaces(group);
  const at = (hole: number) => places[hole - 1] ?? { x: 100, y: 100 };
  const n = view.round.length;
  const tight = view.roundMade;
  const next = view.due === null ? undefined : view.numbers.get(view.due.hole);
  const label = `${t('parts.boltsInOrder', { n })}. ${
    next === undefined ? t('parts.allTight', { n }) : t('parts.boltAt', { bolt: next, done: tight, n })
  }`;
  return (
    <svg className="ring bolts" viewBox={`0 ${top} 200 ${high}`} role="img" aria-label={label}>
      {round ? <path d={OUTLINE} className="teeth" /> : null}
      {round ? <circle cx="100" cy="100" r="33.5" className="teeth" /> : null}
      {view.round.slice(1).map(({ touch, hole }, i) => {
        const from = at(view.round[i]?.hole ?? hole);
        const to = at(hole);
        const look = i + 1 < tight ? 'gone' : i + 1 === tight ? 'going' : '';
        return <line key={touch} x1={from.x} y1={from.y} x2={to.x} y2={to.y} className={look} />;
      })}
      {group.pattern === 'pairs' ? <Clips places={places} /> : null}
      {view.round.map(({ touch, hole }, i) => {
        const { x, y } = at(hole);
        const look = i < tight ? 'tight' : i === tight && view.due !== null ? 'next' : '';
        return (
          <g key={touch} className={`bolt ${look}`}>
            <circle cx={x} cy={y} r={look === 'next' ? bolt * 1.22 : bolt} />
            <text x={x} y={y} dy="0.36em" textAnchor="middle" fontSize={Math.min(11, bolt * 1.15)}>
              {view.numbers.get(hole) ?? hole}
            </text>
          </g>
        );
      })}
      {round ? (
        <>
          <circle cx="100" cy="100" r="33" className="middle" />
          <text x="100" y="100" textAnchor="middle" fontSize="15" fontWeight="700">
            {figures[0]}
          </text>
          <text x="100" y="114" textAnchor="middle" fontSize="10">
            {figures[1]}
          </text>
        </>
      ) : null}
    </svg>
  );
}

/** The clip that the two bolts of a pair share. */
function Clips({ places }: { readonly places: ReturnType<typeof boltPlaces>['places'] }) {
  return places.map((one, at) => {
    const two = places[at + 1];
    if (at % 2 === 1 || two === undefined) return null;
    return <line key={`${one.x} ${one.y}`} x1={one.x} y1={one.y} x2={two.x} y2={two.y} className="clip" />;
  });
}
