import { useEffect, useRef, useState } from 'react';
import { addDays, addMonths, weekday } from '../../core/time/civil.ts';
import { weeksOfMonth } from '../../core/time/read-date.ts';
import type { Combo } from '../frame/key-map.ts';
import { comboOf } from '../frame/keys.ts';
import { useWriting } from '../state/shop.ts';
import { t } from '../words/t.ts';
import { civilText, monthText, weekdayName } from '../words/times.ts';
import { Button } from './Button.tsx';
import { Dialog } from './Dialog.tsx';

interface Props {
  readonly title: string;
  readonly day: string;
  readonly today: string;
  readonly onPick: (day: string) => void;
  readonly onClose: () => void;
}

const DAYS = [1, 2, 3, 4, 5, 6, 7] as const;

/** A month to pick a day from: arrows by days and weeks, Page Up and Page Down by months, Home and End of the week. */
export function Month({ title, day, today, onPick, onClose }: Props) {
  const writing = useWriting();
  const [at, setAt] = useState(day);
  const grid = useRef<HTMLTableElement>(null);
  useEffect(() => {
    grid.current?.querySelector<HTMLElement>(`[data-day="${at}"]`)?.focus();
  }, [at]);
  const goes: Readonly<Partial<Record<Combo, string>>> = {
    ArrowLeft: addDays(at, -1),
    ArrowRight: addDays(at, 1),
    ArrowUp: addDays(at, -7),
    ArrowDown: addDays(at, 7),
    PageUp: addMonths(at, -1),
    PageDown: addMonths(at, 1),
    Home: addDays(at, 1 - weekday(at)),
    End: addDays(at, 7 - weekday(at)),
  };
  return (
    <Dialog title={title} onClose={onClose}>
      <div className="month-head">
        <Button small label={t('parts.monthBack')} onClick={() => setAt(addMonths(at, -1))}>
          ‹
        </Button>
        <b aria-live="polite">{monthText(at.slice(0, 7), writing)}</b>
        <Button small label={t('parts.monthOn')} onClick={() => setAt(addMonths(at, 1))}>
          ›
        </Button>
      </div>
      <table
        ref={grid}
        className="month"
        onKeyDown={(event) => {
          const combo = comboOf(event);
          const to = combo === null ? undefined : goes[combo];
          if (to === undefined) return;
          event.preventDefault();
          setAt(to);
        }}
      >
        <thead>
          <tr>
            {DAYS.map((one) => (
              <th key={one} scope="col" className="small ink-2">
                {weekdayName(one, writing)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {weeksOfMonth(at).map((week) => (
            <tr key={week[0]}>
              {week.map((one) => (
                <td key={one}>
                  <button
                    type="button"
                    data-day={one}
                    tabIndex={one === at ? 0 : -1}
                    className={one.slice(0, 7) === at.slice(0, 7) ? undefined : 'ink-2'}
                    aria-label={civilText(one, { ...writing, dateForm: 'language' })}
                    aria-current={one === today ? 'date' : undefined}
                    aria-pressed={one === day}
                    onClick={() => onPick(one)}
                  >
                    {Number(one.slice(8))}
                  </button>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Dialog>
  );
}
