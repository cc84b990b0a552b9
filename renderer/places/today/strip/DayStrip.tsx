import { useRef } from 'react';
import { useMeasured } from '../../../frame/measured.ts';
import { t } from '../../../words/t.ts';
import { Car } from './Car.tsx';
import { Flag } from './Flag.tsx';
import { hoursShown, layRows, type Row } from './lay-out.ts';
import './strip.css';

/** A car that is booked into a bay today, or what else the bay is kept for. Times in minutes of the day. */
export interface Booked {
  /** The booking. */
  readonly id: string;
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

/** A booking that is being moved, and what is told of it. Minutes of the day. */
export interface Moving {
  readonly held: string | null;
  readonly going: { readonly bayId: string; readonly from: number; readonly to: number } | null;
  readonly onTake: (id: string) => void;
  readonly onPut: (id: string, bayId: string, from: number) => void;
  readonly onDrop: (id: string, bayId: string, from: number) => void;
}

interface Props {
  readonly moving: Moving;
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

/** The day: bays against hours, a block a booked car, a pennant a promised time. Drawn to its width, never scaled. */
export function DayStrip({ moving, bays, booked, promised, now, nowText, opens, closes }: Props) {
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
    booked,
    promised.map((one) => ({
      id: one.orderId,
      bayId: one.bayId,
      at: one.at,
      past: one.promise === 'late' || x(one.at) + flagWide(one.words || one.time) > width,
      wide: flagWide(one.words || one.time),
    })),
    x,
    labels,
  );
  const highOf = (lanes: Row['lanes']) => lanes.reduce((sum, lane) => sum + HIGH[lane] * scale, 0);
  const tops = rows.map((_, at) => rows.slice(0, at).reduce((sum, row) => sum + highOf(row.lanes), TOP * scale));
  const bottom = rows.reduce((sum, row) => sum + highOf(row.lanes), TOP * scale);
  const topOf = (at: number, lane: number) => (tops[at] ?? 0) + highOf(rows[at]?.lanes.slice(0, lane) ?? []);
  const nowShown = now >= from && now <= to;
  const hours = Array.from({ length: (to - from) / 60 + 1 }, (_, i) => from + i * 60);
  /** What lies under the mouse: a bay, and the minute there; null beside the bays. */
  const under = (event: { readonly clientX: number; readonly clientY: number }) => {
    const box = place.current?.getBoundingClientRect();
    if (box === undefined) return null;
    const y = event.clientY - box.top;
    const at = rows.findIndex((row, index) => y >= (tops[index] ?? 0) && y < (tops[index] ?? 0) + highOf(row.lanes));
    const bayId = rows[at]?.bayId ?? '';
    const minute = from + ((event.clientX - box.left - labels) / (end - labels)) * (to - from);
    return bayId === '' ? null : { bayId, minute };
  };
  const { going } = moving;
  const goingRow = going === null ? -1 : rows.findIndex((row) => row.bayId === going.bayId);
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
              const one = booked.find((car) => car.id === placed.id);
              return one === undefined ? null : (
                <Car
                  key={placed.id}
                  car={one}
                  placed={placed}
                  y={topOf(at, placed.lane) + 6 * scale}
                  scale={scale}
                  inked={one.look === 'worked' ? x(Math.max(one.from, Math.min(one.to, now))) - placed.x : 0}
                  under={under}
                  moving={moving}
                />
              );
            }),
          )}
          {going === null || goingRow < 0 ? null : (
            <rect
              className="strip-going"
              x={x(going.from)}
              y={topOf(goingRow, 0) + 6 * scale}
              width={x(going.to) - x(going.from)}
              height={34 * scale}
            />
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
