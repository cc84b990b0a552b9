import { useRef } from 'react';
import { useMeasured } from '../../frame/measured.ts';
import { useWriting } from '../../state/shop.ts';
import { wholeText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { LifePoint } from './life.ts';
import type { LifeEvent } from './life-events.ts';
import { EDGES, isStruck, placeLabels, rulerSpan, shortened, stepFor } from './ruler.ts';

interface Props {
  readonly visits: readonly LifePoint[];
  readonly again: readonly LifePoint[];
  /** Clocks replaced, new owners, new plates. */
  readonly events: readonly LifeEvent[];
  readonly unit: 'km' | 'mi';
}

const LANES = 3;
const LANE = 22;
/** Pixels of one sign at 15 px semibold, and how long a label may be. */
const SIGN = 7.8;
/** Pixels of one figure of a tick at 13 px. */
const TICK_SIGN = 7.2;
const LONGEST = 26;

/** The car's life on one ruler of distance: visits above it, what is ahead and what else befell it below. Drawn to its width. */
export function MileageRuler({ visits, again, events, unit }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const { width, scale } = useMeasured(place);
  const writing = useWriting();
  const all = [...visits, ...again, ...events].map((point) => point.distance);
  if (all.length === 0) return null;
  const span = rulerSpan(Math.min(...all), Math.max(...all));
  const [start, end] = [EDGES.left * scale, width - EDGES.right * scale];
  const x = (distance: number) => start + ((distance - span.from) / (span.to - span.from)) * (end - start);
  const step = stepFor(span.to - span.from, Math.max(2, (end - start) / (92 * scale)));
  const ticks = Array.from({ length: Math.floor((span.to - span.from) / step) + 1 }, (_, i) => span.from + i * step);
  const short = (words: string) => shortened(words, LONGEST);
  const labels = (points: readonly LifePoint[]) =>
    placeLabels(
      points.map(({ id, distance, words }) => ({ id, x: x(distance), wide: short(words).length * SIGN * scale })),
      width,
      LANES,
    );
  const above = labels(visits);
  const befell = events.map((event) => ({ ...event, words: t(`cars.event-${event.what}`, { words: event.words }) }));
  const beneath = [...again, ...befell];
  const below = labels(beneath);
  const stems = below.flatMap(({ id }) => beneath.filter((one) => one.id === id).map(({ distance }) => x(distance)));
  const lanes = 1 + Math.max(-1, ...above.map((label) => label.lane));
  const line = (lanes * LANE + 22) * scale;
  const under = line + 44 * scale;
  const high = under + (1 + Math.max(-1, ...below.map((label) => label.lane))) * LANE * scale;
  const last = x(Math.max(...(visits.length > 0 ? visits : again).map((point) => point.distance)));
  const figure = (distance: number) =>
    t(unit === 'km' ? 'cars.kilometres' : 'cars.miles', { figure: wholeText(distance, writing) });

  return (
    <div ref={place} className="life-ruler">
      {width === 0 ? null : (
        <svg width={width} height={high} role="img" aria-label={t('cars.ruler')}>
          {ticks.map((tick) => {
            const words = wholeText(tick, writing);
            return (
              <g key={tick}>
                <line x1={x(tick)} x2={x(tick)} y1={line} y2={line + 12 * scale} stroke="var(--ink)" />
                {isStruck(x(tick), words.length * TICK_SIGN * scale, stems) ? null : (
                  <text className="ruler-tick" x={x(tick)} y={line + 30 * scale} textAnchor="middle">
                    {words}
                  </text>
                )}
              </g>
            );
          })}
          <text className="ruler-tick" x={0} y={line + 30 * scale}>
            {t(unit === 'km' ? 'cars.km' : 'cars.mi')}
          </text>
          <line x1={start} x2={last} y1={line} y2={line} stroke="var(--ink)" strokeWidth="3" />
          <line x1={last} x2={end} y1={line} y2={line} stroke="var(--ink)" strokeDasharray="4 4" />
          {above.map(({ id, left, lane }) => {
            const point = visits.find((one) => one.id === id);
            const y = line - (14 + lane * LANE) * scale;
            return point === undefined ? null : (
              <g key={id}>
                {lane === 0 ? null : (
                  <line
                    x1={x(point.distance)}
                    x2={x(point.distance)}
                    y1={y + 5 * scale}
                    y2={line}
                    stroke="var(--ink-2)"
                  />
                )}
                <text className="ruler-label" x={left} y={y}>
                  {short(point.words)}
                </text>
              </g>
            );
          })}
          {below.map(({ id, left, lane }) => {
            const point = beneath.find((one) => one.id === id);
            const y = under + (14 + lane * LANE) * scale;
            return point === undefined ? null : (
              <g key={id}>
                <line
                  x1={x(point.distance)}
                  x2={x(point.distance)}
                  y1={line}
                  y2={y - 15 * scale}
                  stroke="var(--ink-2)"
                />
                <text className="ruler-again" x={left} y={y}>
                  {short(point.words)}
                </text>
              </g>
            );
          })}
          {befell.map((event) => (
            <rect
              key={event.id}
              className="ruler-event"
              x={x(event.distance) - 2 * scale}
              y={line - 9 * scale}
              width={4 * scale}
              height={18 * scale}
            >
              <title>{`${event.words}, ${figure(event.distance)}`}</title>
            </rect>
          ))}
          {visits.toReversed().map((point) => {
            const newest = point === visits[0];
            return (
              <circle
                key={point.id}
                className={newest ? 'ruler-newest' : 'ruler-visit'}
                cx={x(point.distance)}
                cy={line}
                r={(newest ? 9 : 7) * scale}
              >
                <title>{`${point.words}, ${figure(point.distance)}`}</title>
              </circle>
            );
          })}
          {again.map((point) => (
            <rect
              key={point.id}
              className="ruler-visit"
              x={x(point.distance) - 6 * scale}
              y={line - 6 * scale}
              width={12 * scale}
              height={12 * scale}
            >
              <title>{`${point.words}, ${figure(point.distance)}`}</title>
            </rect>
          ))}
        </svg>
      )}
    </div>
  );
}
