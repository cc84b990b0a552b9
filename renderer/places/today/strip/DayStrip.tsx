import { useRef } from 'react';
import { useMeasured } from '../../../frame/measured.ts';
import { hrefOf } from '../../../frame/router.ts';
import { t } from '../../../words/t.ts';
import { Flag } from './Flag.tsx';
import { fitting, hoursShown, layRows, type Placed, type Row } from './lay-out.ts';
import './strip.css';

/** A car that is booked into a bay today, or what else the bay is kept for. Times in minutes of the day. */
export interface Booked {
  /** The order; of what is no order the booking itself. */
  readonly orderId: string;
  readonly bayId: string;
  readonly from: number;
  readonly to: number;
  readonly plate: string;
  readonly words: string;
  /** worked: a clock runs on it, inked up to now; still: it is here and waits on somebody else, dashed; gone: it left;
   * missed: it did not come; kept: no car, the bay is kept for something else. */
  readonly look: 'booked' | 'worked' | 'still' | 'gone' | 'missed' | 'kept';
}

export interface Promised {
  readonly orderId: string;
  readonly bayId: string;
  /** Minutes of today; where it was promised for an earlier day, where its slot begins. */
  readonly at: number;
  readonly time: string;
  /** On the cloth, where it is more than the time. */
  readonly words: string;
  readonly plate: string;
  readonly promise: 'fine' | 'soon' | 'late';
}

interface Props {
  readonly bays: readonly { readonly id: string; readonly name: string; readonly words: string }[];
  readonly booked: readonly Booked[];
  readonly promised: readonly Promised[];
  /** Minutes of the day, and as a clock shows it. */
  readonly now: number;
  readonly nowText: string;
  readonly opens: number;
  readonly closes: number;
}

/** How high a lane is that holds cars, or pennants alone. */
const HIGH = { cars: 46, pennants: 28 } as const;
const TOP = 26;
const LABELS = 150;
/** Pixels of one sign at 14 px, measured on the widest figures and capitals of the face. */
const SIGN = 8;
/** The same of running words at 15 px. */
const WORD_SIGN = 7.2;

/** The day: bays against hours, a block a booked car, a pennant a promised time. Drawn to its width, never scaled. */
export function DayStrip({ bays, booked, promised, now, nowText, opens, closes }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const { width, scale } = useMeasured(place);
  const { from, to } = hoursShown(opens, closes, [
    ...booked.flatMap((one) => [one.from, one.to]),
    ...promised.map((one) => one.at),
  ]);
  const labels = width < 900 * scale ? 84 * scale : LABELS * scale;
  const end = width - 14 * scale;
  const x = (minutes: number) =>
    labels + ((Math.min(to, Math.max(from, minutes)) - from) / (to - from)) * (end - labels);
  const flagWide = (text: string) => (text.length * SIGN + 24) * scale;
  const rows = layRows(
    bays.map((bay) => bay.id),
    booked.map((one) => ({ ...one, id: one.orderId })),
    promised.map((one) => ({
      id: one.orderId,
      bayId: one.bayId,
      at: one.at,
      past: one.promise === 'late' || x(one.at) + flagWide(one.words || one.time) > width,
      wide: flagWide(one.words || one.time),
    })),
    x,
  );
  const highOf = (lanes: Row['lanes']) => lanes.reduce((sum, lane) => sum + HIGH[lane] * scale, 0);
  const tops = rows.map((_, at) => rows.slice(0, at).reduce((sum, row) => sum + highOf(row.lanes), TOP * scale));
  const bottom = rows.reduce((sum, row) => sum + highOf(row.lanes), TOP * scale);
  const topOf = (at: number, lane: number) => (tops[at] ?? 0) + highOf(rows[at]?.lanes.slice(0, lane) ?? []);
  const nowShown = now >= from && now <= to;
  const hours = Array.from({ length: (to - from) / 60 + 1 }, (_, i) => from + i * 60);
  const everyOther = (end - labels) / hours.length < 28 * scale;

  return (
    <div ref={place} className="strip">
      {width === 0 ? null : (
        <svg width={width} height={bottom + 6} role="group" aria-label={t('today.strip')}>
          {hours.map((hour, i) => (
            <g key={hour}>
              <line x1={x(hour)} x2={x(hour)} y1={20 * scale} y2={bottom} stroke="var(--hair)" />
              {(nowShown && Math.abs(x(hour) - x(now)) < 40 * scale) || (everyOther && i % 2 === 1) ? null : (
                <text className="strip-hour" x={x(hour)} y={14 * scale} textAnchor="middle">
                  {hour / 60}
                </text>
              )}
            </g>
          ))}
          {rows.map((row, at) => {
            const y = tops[at] ?? 0;
            const bay = bays.find((one) => one.id === row.bayId);
            return (
              <g key={row.bayId}>
                <line x1={0} x2={width} y1={y} y2={y} stroke="var(--rule)" />
                <text className="strip-bay" x={0} y={y + 21 * scale}>
                  {bay?.name ?? t('today.noBay')}
                </text>
                <text className="strip-words" x={0} y={y + 38 * scale}>
                  {labels < 100 * scale ? '' : bay?.words}
                </text>
              </g>
            );
          })}
          <line x1={0} x2={width} y1={bottom} y2={bottom} stroke="var(--rule)" />
          {nowShown ? <path d={`M${x(now)} ${20 * scale}V${bottom + 5}`} stroke="var(--ink)" strokeWidth="2" /> : null}
          {rows.flatMap((row, at) =>
            row.blocks.map((placed) => {
              const one = booked.find((car) => car.orderId === placed.id && car.bayId === row.bayId);
              return one === undefined ? null : (
                <Car
                  key={placed.id}
                  car={one}
                  placed={placed}
                  y={topOf(at, placed.lane) + 6 * scale}
                  scale={scale}
                  inked={one.look === 'worked' ? x(Math.max(one.from, Math.min(one.to, now))) - placed.x : 0}
                />
              );
            }),
          )}
          {rows.flatMap((row, at) =>
            row.pennants.map((placed) => {
              const one = promised.find((promise) => promise.orderId === placed.id);
              return one === undefined ? null : (
                <Flag
                  key={placed.id}
                  promised={one}
                  x={x(one.at)}
                  wide={placed.wide}
                  y={topOf(at, placed.lane)}
                  pole={HIGH[row.lanes[placed.lane] ?? 'cars'] * scale}
                  left={placed.x < x(one.at)}
                  scale={scale}
                />
              );
            }),
          )}
          {nowShown ? (
            <g>
              <rect x={x(now) - 24 * scale} y={0} width={48 * scale} height={20 * scale} fill="var(--ink)" />
              <text className="strip-now" x={x(now)} y={15 * scale} textAnchor="middle">
                {nowText}
              </text>
            </g>
          ) : null}
        </svg>
      )}
    </div>
  );
}

const clock = (minutes: number) => `${Math.trunc(minutes / 60)}:${String(Math.trunc(minutes % 60)).padStart(2, '0')}`;

interface CarProps {
  readonly car: Booked;
  readonly placed: Placed;
  readonly y: number;
  readonly scale: number;
  /** How much of its length is worked. */
  readonly inked: number;
}

function Car({ car, placed, y, scale, inked }: CarProps) {
  const high = 34 * scale;
  const wide = Math.max(placed.wide, 6 * scale);
  const [id, ink, shown] = [`strip-${car.orderId}`, `strip-ink-${car.orderId}`, `strip-words-${car.orderId}`];
  const room = Math.trunc((wide / scale - 24 - car.plate.length * 10.5) / WORD_SIGN);
  const box = { x: placed.x, y, width: wide, height: high };
  const drawn = (
    <>
      <clipPath id={id}>
        <rect {...box} width={Math.max(0, wide - 6 * scale)} />
      </clipPath>
      <clipPath id={ink}>
        <rect {...box} width={inked} />
      </clipPath>
      <rect {...box} className={`strip-block ${car.look}`} />
      <g clipPath={`url(#${id})`} fill={car.look === 'gone' || car.look === 'missed' ? 'var(--ink-2)' : 'var(--ink)'}>
        <text id={shown} className="strip-car" x={placed.x + 10 * scale} y={y + 22 * scale}>
          <tspan className="strip-plate">{car.plate}</tspan> <tspan dx={5 * scale}>{fitting(car.words, room)}</tspan>
        </text>
      </g>
      {inked > 0 ? (
        <g clipPath={`url(#${ink})`}>
          <rect {...box} fill="var(--ink)" />
          <g clipPath={`url(#${id})`} fill="var(--paper)">
            <use href={`#${shown}`} />
          </g>
        </g>
      ) : null}
      <rect className="strip-ring" x={box.x - 4} y={box.y - 4} width={wide + 8} height={high + 8} rx="3" />
    </>
  );
  if (car.look === 'kept') return <g>{drawn}</g>;
  const said = t(`today.block-${car.look}`, {
    car: `${car.plate} ${car.words}`.trim(),
    from: clock(car.from),
    to: clock(car.to),
  });
  return (
    <a href={hrefOf('orders', car.orderId)} aria-label={said}>
      {drawn}
    </a>
  );
}
