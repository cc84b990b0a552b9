import { useRef } from 'react';
import { comboOf } from '../../../frame/keys.ts';
import { hrefOf } from '../../../frame/router.ts';
import { t } from '../../../words/t.ts';
import type { Booked, Moving } from './DayStrip.tsx';
import { fitting, type Placed } from './lay-out.ts';

/** Pixels of one sign of running words at 15 px, measured on the widest of the face. */
const WORD_SIGN = 7.2;

const clock = (minutes: number) => `${Math.trunc(minutes / 60)}:${String(Math.trunc(minutes % 60)).padStart(2, '0')}`;

interface Props {
  readonly car: Booked;
  readonly placed: Placed;
  readonly y: number;
  readonly scale: number;
  /** How much of its length is worked. */
  readonly inked: number;
  /** The bay and the minute under the mouse. */
  readonly under: (event: { readonly clientX: number; readonly clientY: number }) => {
    readonly bayId: string;
    readonly minute: number;
  } | null;
  readonly moving: Moving;
}

/** The mouse has to go so far before a press becomes a move, in pixels. */
const SLACK = 5;

interface Drag {
  readonly x: number;
  readonly y: number;
  /** Minutes from its beginning to where it was taken hold of. */
  readonly hold: number;
  readonly to: { readonly bayId: string; readonly from: number } | null;
}

/** A car in its bay. Enter opens its order; Space takes it in hand, for the arrows; dragging moves it. */
export function Car({ car, placed, y, scale, inked, under, moving }: Props) {
  const drag = useRef<Drag | null>(null);
  const dragged = useRef(false);
  const high = 34 * scale;
  const wide = Math.max(placed.wide, 6 * scale);
  const [id, ink, shown] = [`strip-${car.id}`, `strip-ink-${car.id}`, `strip-words-${car.id}`];
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
    <a
      href={hrefOf('orders', car.orderId)}
      aria-label={said}
      data-booking={car.id}
      draggable={false}
      onDragStart={(event) => event.preventDefault()}
      onClick={(event) => {
        if (dragged.current) event.preventDefault();
      }}
      onKeyDown={(event) => {
        if (comboOf(event) !== 'Space') return;
        event.preventDefault();
        moving.onTake(car.id);
      }}
      onPointerDown={(event) => {
        dragged.current = false;
        const at = event.button === 0 && event.pointerType !== 'touch' ? under(event) : null;
        if (at !== null) drag.current = { x: event.clientX, y: event.clientY, hold: at.minute - car.from, to: null };
      }}
      onPointerMove={(event) => {
        const { current } = drag;
        if (current === null) return;
        if (!dragged.current && Math.hypot(event.clientX - current.x, event.clientY - current.y) < SLACK) return;
        if (!dragged.current) {
          dragged.current = true;
          event.currentTarget.setPointerCapture(event.pointerId);
          moving.onTake(car.id);
        }
        const at = under(event);
        if (at === null) return;
        const to = { bayId: at.bayId, from: at.minute - current.hold };
        drag.current = { ...current, to };
        moving.onPut(car.id, to.bayId, to.from);
      }}
      onPointerUp={() => {
        const to = drag.current?.to ?? null;
        drag.current = null;
        if (to !== null) moving.onDrop(car.id, to.bayId, to.from);
      }}
      onPointerCancel={() => {
        drag.current = null;
      }}
    >
      {drawn}
    </a>
  );
}
