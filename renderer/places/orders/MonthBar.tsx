import { type PointerEvent, useEffect, useRef } from 'react';
import type { Combo } from '../../frame/key-map.ts';
import { comboOf } from '../../frame/keys.ts';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { monthText } from '../../words/times.ts';
import type { Month } from './months.ts';

interface Props {
  readonly months: readonly Month[];
  /** Place of the month that is in view. */
  readonly at: number;
  readonly onGo: (month: Month) => void;
}

/** With so few months each has its name; with more only the years have. */
const NAMED = 24;

/** The scroll bar of all years: one stroke a month, as long as that month's orders. Click, drag, or the arrow keys. */
export function MonthBar({ months, at, onGo }: Props) {
  const writing = useWriting();
  const bar = useRef<HTMLDivElement>(null);
  const most = Math.max(...months.map(({ n }) => n), 1);
  // Keys pressed one after the other go on from where the last one led, before that is in view.
  const led = useRef(at);
  useEffect(() => {
    led.current = at;
  }, [at]);
  const go = (to: number) => {
    const place = Math.min(months.length - 1, Math.max(0, to));
    const month = months[place];
    if (month === undefined) return;
    led.current = place;
    onGo(month);
  };
  const byPointer = (event: PointerEvent) => {
    const box = bar.current?.getBoundingClientRect();
    if (box !== undefined) go(Math.floor(((event.clientY - box.top) / box.height) * months.length));
  };
  const keys: Readonly<Partial<Record<Combo, number>>> = {
    ...{ ArrowUp: -1, ArrowDown: 1, PageUp: -12, PageDown: 12 },
    ...{ Home: -months.length, End: months.length },
  };
  return (
    <div
      ref={bar}
      className="month-bar"
      role="slider"
      tabIndex={0}
      aria-label={t('orders.months')}
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={months.length - 1}
      aria-valuenow={at}
      aria-valuetext={monthText(months[at]?.month ?? '', writing)}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        byPointer(event);
      }}
      onPointerMove={(event) => {
        if (event.buttons === 1) byPointer(event);
      }}
      onKeyDown={(event) => {
        const combo = comboOf(event);
        const by = combo === null ? undefined : keys[combo];
        if (by === undefined) return;
        event.preventDefault();
        go(led.current + by);
      }}
    >
      {months.map(({ month, n }, place) => {
        const named = months.length <= NAMED || month.endsWith('-01');
        return (
          <div key={month} data-here={place === at || undefined}>
            {named ? <span>{months.length <= NAMED ? monthText(month, writing) : month.slice(0, 4)}</span> : null}
            <i style={{ width: `${(n / most) * 100}%` }} />
          </div>
        );
      })}
    </div>
  );
}
