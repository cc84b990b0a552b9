import { hrefOf } from '../../../frame/router.ts';
import { t } from '../../../words/t.ts';
import type { Promised } from './DayStrip.tsx';

interface Props {
  readonly promised: Promised;
  /** Where its pole stands, and the top of its lane. */
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly left: boolean;
  /** How long its pole is. */
  readonly pole: number;
  readonly scale: number;
}

const LOOK = {
  fine: { cloth: 'var(--paper)', words: 'var(--ink)' },
  soon: { cloth: 'var(--heed-fill)', words: 'var(--on-heed)' },
  late: { cloth: 'var(--stop)', words: 'var(--on-stop)' },
} as const;

/** A promised time: plain, brass when soon, oxide when past; the row below says the same in words. */
export function Flag({ promised, x, y, wide, left, pole, scale }: Props) {
  const { cloth, words } = LOOK[promised.promise];
  const way = left ? -1 : 1;
  const [high, notch, top] = [20 * scale, 7 * scale, y + 4 * scale];
  const length = way * (wide - 4 * scale);
  return (
    <a
      href={hrefOf('orders', promised.orderId)}
      aria-label={t(`today.flag-${promised.promise}`, { car: promised.plate, time: promised.words || promised.time })}
    >
      <path d={`M${x} ${y + 2 * scale}v${pole - 2 * scale}`} stroke="var(--ink)" strokeWidth="2" />
      <path
        d={`M${x} ${top}h${length}l${-way * notch} ${high / 2}l${way * notch} ${high / 2}h${-length}z`}
        fill={cloth}
        stroke="var(--ink)"
        strokeWidth="1.3"
      />
      <text
        className="strip-time"
        x={x + way * 7 * scale}
        y={top + 15 * scale}
        textAnchor={left ? 'end' : 'start'}
        style={{ fill: words }}
      >
        {promised.words || promised.time}
      </text>
      <rect
        className="strip-ring"
        x={Math.min(x, x + length) - 4}
        y={top - 4}
        width={Math.abs(length) + 8}
        height={high + 8}
        rx="3"
      />
    </a>
  );
}
