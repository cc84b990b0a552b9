import { useRef } from 'react';
import { formatQuantity } from '../../../core/measure/quantity.ts';
import { timeShown } from '../../../core/time/time-shown.ts';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import type { Stretch } from '../book-in/bay-day.ts';
import { at, goesOn, minutesTaken, type Place, type Planned } from './plan.ts';

interface Props {
  readonly one: Planned;
  readonly bay: string;
  readonly dayWords: string;
  readonly lane: number;
  readonly shown: Stretch;
  readonly held: boolean;
  readonly onTake: () => void;
  /** Let go of by the mouse, there. */
  readonly onDrop: (place: Place) => void;
  readonly onPut: (place: Place) => void;
}

/** The mouse has to go so far before a press becomes a move, in pixels. */
const SLACK = 5;

interface Drag {
  readonly x: number;
  readonly y: number;
  /** Minutes from the start of the booking to where it was taken hold of. */
  readonly hold: number;
  readonly place: Place | null;
}

/** A booking in its lane: a press takes it in hand, dragging moves it; the keys that move what is in hand are the page's. */
export function Block({ one, bay, dayWords, lane, shown, held, onTake, onDrop, onPut }: Props) {
  const writing = useWriting();
  const drag = useRef<Drag | null>(null);
  const { from, to } = minutesTaken(one.part);
  const wide = shown.to - shown.from;
  const hours = formatQuantity(one.hours, writing.decimal);
  const place = t('plan.place', { bay, day: dayWords, from: timeShown(one.from), hours });
  const still = one.look === 'no-show' ? t('plan.didNotCome') : one.leftWithoutWork ? t('plan.leftWithoutWork') : '';

  /** The place under the mouse; null where no lane is. */
  const under = (event: React.PointerEvent, hold: number): Place | null => {
    const found = document.elementsFromPoint(event.clientX, event.clientY).find((node) => node.matches('.week-lane'));
    if (!(found instanceof HTMLElement)) return null;
    const box = found.getBoundingClientRect();
    const minutes = shown.from + ((event.clientX - box.left) / box.width) * wide - hold;
    return at({ ...one, day: found.dataset.day ?? one.day, bayId: found.dataset.bay ?? one.bayId }, minutes);
  };
  return (
    <button
      type="button"
      data-booking={one.id}
      className={`week-block ${one.look}${one.leftWithoutWork ? ' idle' : ''}`}
      style={{
        left: `${((from - shown.from) * 100) / wide}%`,
        width: `${((to - from) * 100) / wide}%`,
        ...{ '--lane': lane },
      }}
      aria-pressed={held}
      title={`${one.name} ${one.about}`.trim()}
      onClick={() => {
        if (!held) onTake();
      }}
      onPointerDown={(event) => {
        // A later day of a long booking is moved by its first, or by the keys.
        if (event.button !== 0 || event.pointerType === 'touch' || goesOn(one)) return;
        const box = event.currentTarget.getBoundingClientRect();
        const hold = ((event.clientX - box.left) / box.width) * (to - from);
        drag.current = { x: event.clientX, y: event.clientY, hold, place: null };
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={(event) => {
        const { current } = drag;
        if (current === null) return;
        const far = Math.hypot(event.clientX - current.x, event.clientY - current.y);
        if (current.place === null && far < SLACK) return;
        if (!held) onTake();
        const where = under(event, current.hold) ?? current.place;
        if (where === null) return;
        drag.current = { ...current, place: where };
        onPut(where);
      }}
      onPointerUp={() => {
        const where = drag.current?.place ?? null;
        drag.current = null;
        if (where !== null) onDrop(where);
      }}
      onPointerCancel={() => {
        drag.current = null;
      }}
    >
      <b>{one.name}</b> {goesOn(one) ? <em>{t('plan.goesOn')}</em> : null} {still === '' ? one.about : <em>{still}</em>}
      {one.person === '' ? null : <span className="week-person"> {one.person}</span>}
      <span className="aloud"> {t(`plan.said-${one.look}`, { place })}</span>
    </button>
  );
}
