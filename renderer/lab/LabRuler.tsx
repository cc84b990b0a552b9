import { useRef } from 'react';
import { useMeasured } from '../frame/measured.ts';
import { EDGES, rulerSpan } from '../places/cars/ruler.ts';
import { useWriting } from '../state/shop.ts';
import { quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import type { Metal } from './lab-series.ts';
import { metalName } from './metal-name.ts';

interface Props {
  readonly label: string;
  readonly metals: readonly Metal[];
  /** How far the car had gone when each sample was drawn. */
  readonly at: ReadonlyMap<string, number>;
  /** All that stands on the car's own ruler, so that both lines are one. */
  readonly life: readonly number[];
}

const ROW = 56;
/** White above the highest and below the lowest figure of a row. */
const HEAD = 20;
const FOOT = 6;
/** Pixels that a figure needs before the next point. */
const CLEAR = 34;

/** One small drawing a metal, on the car's own mileage line: the lab's raw figures and its limit. */
export function LabRuler({ label, metals, at, life }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const { width, scale } = useMeasured(place);
  const writing = useWriting();
  const span = rulerSpan(Math.min(...life), Math.max(...life));
  const [start, end] = [EDGES.left * scale, width - EDGES.right * scale];
  const x = (distance: number) => start + ((distance - span.from) / (span.to - span.from)) * (end - start);
  const high = metals.length * ROW * scale;
  const figure = (ppm: number) => quantityText(ppm, '', writing);
  return (
    <div ref={place} className="lab-ruler">
      {width === 0 ? null : (
        <svg width={width} height={high} role="img" aria-label={label}>
          {[...at].map(([id, distance]) => (
            <line key={id} x1={x(distance)} x2={x(distance)} y1={0} y2={high} stroke="var(--hair)" />
          ))}
          {metals.map((metal, row) => {
            const points = metal.points.flatMap((point) => {
              const distance = at.get(point.sampleId);
              return distance === undefined ? [] : [{ ...point, x: x(distance) }];
            });
            const most = Math.max(1, metal.limit ?? 0, ...points.map(({ ppm }) => ppm));
            const [low, tall] = [((row + 1) * ROW - FOOT) * scale, (ROW - HEAD - FOOT) * scale];
            const y = (ppm: number) => low - (ppm / most) * tall;
            return (
              <g key={metal.element}>
                <text className="lab-metal" x={0} y={(row * ROW + 22) * scale}>
                  {metalName(metal.element)}
                </text>
                <text className="ruler-tick" x={0} y={(row * ROW + 40) * scale}>
                  {t('lab.ppm')}
                </text>
                <line
                  x1={0}
                  x2={width}
                  y1={(row + 1) * ROW * scale - 1}
                  y2={(row + 1) * ROW * scale - 1}
                  stroke="var(--hair)"
                />
                {metal.limit === null ? null : (
                  <>
                    <line className="lab-limit" x1={start} x2={end} y1={y(metal.limit)} y2={y(metal.limit)} />
                    <text className="ruler-tick" x={start} y={y(metal.limit) - 3 * scale}>
                      {t('lab.limit', { figure: figure(metal.limit) })}
                    </text>
                  </>
                )}
                <polyline className="lab-line" points={points.map((one) => `${one.x},${y(one.ppm)}`).join(' ')} />
                {points.map((point, n) => {
                  const last = n === points.length - 1;
                  const over = last && isOver(metal, point.ppm);
                  // A figure that would run into the next one is left out; its point stays.
                  const next = points[n + 1];
                  const clear = next === undefined || next.x - point.x > CLEAR * scale;
                  return (
                    <g key={point.sampleId} className={over ? 'lab-over' : undefined}>
                      <circle cx={point.x} cy={y(point.ppm)} r={(last ? 5 : 3) * scale} />
                      {clear ? (
                        <text
                          className={last ? 'lab-last' : 'lab-figure'}
                          x={last ? point.x + 10 * scale : point.x}
                          y={last ? y(point.ppm) + 5 * scale : y(point.ppm) - 6 * scale}
                          textAnchor={last ? 'start' : 'middle'}
                        >
                          {figure(point.ppm)}
                        </text>
                      ) : null}
                    </g>
                  );
                })}
              </g>
            );
          })}
        </svg>
      )}
    </div>
  );
}

/** Past the lab's own limit, or past what the unit's own run calls an alarm. */
const isOver = ({ limit, says }: Metal, ppm: number) => (limit !== null && ppm > limit) || says === 'alarm';
