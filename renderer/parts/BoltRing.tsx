import { t } from '../words/t.ts';

interface Props {
  /** order[k] is the place of bolt k + 1: 0 at the top, clockwise. */
  readonly order: readonly number[];
  /** How many are tight in this round. */
  readonly done: number;
  /** In the middle, both units: "60 N·m", "44 lbf·ft". */
  readonly torque: readonly [string, string];
  /** Width and height, in rem. */
  readonly size?: number;
}

const TEETH = 41;

/** The outline of a ring gear: 41 teeth between radius 86 and 97 around 100, 100. */
function teeth(): string {
  const turn = (i: number, r: number) => {
    const at = (i / TEETH) * 2 * Math.PI - Math.PI / 2;
    return `${(100 + r * Math.cos(at)).toFixed(1)} ${(100 + r * Math.sin(at)).toFixed(1)}`;
  };
  const points = Array.from({ length: TEETH }, (_, i) => [
    turn(i - 0.27, 86),
    turn(i - 0.12, 97),
    turn(i + 0.14, 97),
    turn(i + 0.28, 86),
  ]);
  return `M${points.flat().join('L')}Z`;
}

const OUTLINE = teeth();

/** Bolts of a ring in the order of tightening, joined by lines; tight ones inked, the next one brass. */
export function BoltRing({ order, done, torque, size = 12.5 }: Props) {
  const n = order.length;
  const radius = Math.min(12.4, (66 * Math.PI) / n - 1.5);
  const place = (k: number): readonly [number, number] => {
    const at = ((order[k] ?? 0) / n) * 2 * Math.PI - Math.PI / 2;
    return [100 + 66 * Math.cos(at), 100 + 66 * Math.sin(at)];
  };
  const bolts = order.map((_, k) => k);
  const label = `${t('parts.boltsInOrder', { n })}. ${done < n ? t('parts.boltAt', { bolt: done + 1, done, n }) : t('parts.allTight', { n })}`;
  return (
    <svg
      className="ring"
      viewBox="0 0 200 200"
      style={{ width: `${size}rem`, height: `${size}rem` }}
      role="img"
      aria-label={label}
    >
      <path d={OUTLINE} fill="none" stroke="var(--ink)" strokeWidth="1.1" strokeLinejoin="round" />
      {bolts.slice(1).map((k) => {
        const [x1, y1] = place(k - 1);
        const [x2, y2] = place(k);
        return (
          <line key={k} x1={x1} y1={y1} x2={x2} y2={y2} className={k < done ? 'gone' : k === done ? 'going' : ''} />
        );
      })}
      {bolts.map((k) => {
        const [x, y] = place(k);
        const look = k < done ? 'tight' : k === done ? 'next' : '';
        return (
          <g key={k} className={`bolt ${look}`}>
            <circle cx={x} cy={y} r={k === done ? radius * 1.22 : radius} />
            <text x={x} y={y + 4.4} textAnchor="middle" fontSize={Math.min(13, radius * 1.3)}>
              {k + 1}
            </text>
          </g>
        );
      })}
      <circle cx="100" cy="100" r="33" fill="var(--paper)" stroke="var(--ink)" strokeWidth="1.2" />
      <text x="100" y="100" textAnchor="middle" fontSize="15" fontWeight="700">
        {torque[0]}
      </text>
      <text x="100" y="114" textAnchor="middle" fontSize="12">
        {torque[1]}
      </text>
    </svg>
  );
}
