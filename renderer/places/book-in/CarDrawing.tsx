import { BOX, type DrawnView, outlineOf } from '../../../core/car/outline.ts';
import type { CarShape } from '../../../core/car/outline-shapes.ts';
import type { Combo } from '../../frame/key-map.ts';
import { comboOf } from '../../frame/keys.ts';
import { t } from '../../words/t.ts';
import './marks.css';

/** A mark as it stands on the drawing. */
export interface PlacedMark {
  readonly key: string;
  readonly n: number;
  readonly x: number;
  readonly y: number;
  readonly words: string;
  /** Drawn in this talk: it can still be moved. */
  readonly fresh: boolean;
  readonly gone: boolean;
}

interface Props {
  readonly shape: CarShape;
  readonly view: DrawnView;
  readonly marks: readonly PlacedMark[];
  /** A press on the drawing, in thousandths of its width and height; left out where it is only to be looked at. */
  readonly onDraw?: (x: number, y: number) => void;
  readonly onMove?: (key: string, x: number, y: number) => void;
}

/** An arrow key moves a mark by so many thousandths. */
const STEP = 15;
const ARROWS: Readonly<Partial<Record<Combo, readonly [number, number]>>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};
const within = (thousandths: number) => Math.min(1000, Math.max(0, Math.round(thousandths)));

/** A car from one side with its marks: a press draws a new one there, the arrow keys move it. */
export function CarDrawing({ shape, view, marks, onDraw, onMove }: Props) {
  const { width, height } = BOX[view];
  return (
    <div
      className={onDraw === undefined ? 'car-drawing still' : 'car-drawing'}
      data-view={view}
      style={{ aspectRatio: `${width} / ${height}` }}
    >
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={t(onDraw === undefined ? 'intake.drawn' : 'intake.drawing', {
          shape: t(`intake.shape-${shape}`),
          view: t(`intake.view-${view}`),
        })}
        onPointerDown={(event) => {
          if (event.button !== 0 || onDraw === undefined) return;
          const box = event.currentTarget.getBoundingClientRect();
          onDraw(
            within(((event.clientX - box.left) * 1000) / box.width),
            within(((event.clientY - box.top) * 1000) / box.height),
          );
        }}
      >
        {outlineOf(shape, view).map((line) => {
          const points = line.map((point) => point.join(',')).join(' ');
          return <polyline key={points} points={points} />;
        })}
      </svg>
      <small className="car-front">{t('intake.front')}</small>
      {marks.map((mark) => {
        const place = { left: `${mark.x / 10}%`, top: `${mark.y / 10}%` };
        const look = `car-mark${mark.fresh ? ' fresh' : ''}${mark.gone ? ' gone' : ''}`;
        if (!mark.fresh)
          return (
            <span key={mark.key} className={look} style={place} aria-hidden="true">
              {mark.n}
            </span>
          );
        return (
          <button
            key={mark.key}
            type="button"
            className={look}
            data-mark={mark.key}
            style={place}
            aria-label={t('intake.markAt', { n: mark.n, words: mark.words })}
            onKeyDown={(event) => {
              const combo = comboOf(event);
              const by = combo === null ? undefined : ARROWS[combo];
              if (by === undefined || onMove === undefined) return;
              event.preventDefault();
              event.stopPropagation();
              onMove(mark.key, within(mark.x + by[0]), within(mark.y + by[1]));
            }}
          >
            {mark.n}
          </button>
        );
      })}
    </div>
  );
}
