import { useId } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { formatQuantity } from '../../../core/measure/quantity.ts';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { weekdayText } from '../../words/times.ts';
import { type Stretch, takenMinutes } from './bay-day.ts';

type Listed = OutputOf<'booking.list'>;
export interface BayDay {
  readonly bayId: string;
  readonly taken: readonly Stretch[];
}

interface Props {
  /** `free`: hours that can still be promised, in thousandths; null where that is not known. */
  readonly days: readonly { readonly day: string; readonly bays: readonly BayDay[]; readonly free: number | null }[];
  readonly bays: Listed['bays'];
  readonly open: Stretch;
  /** Hours that are looked for, in thousandths. */
  readonly needs: number;
  readonly chosen: string;
  readonly onPick: (day: string) => void;
}

/** The coming days as cards: hours that can still be promised, and one line a bay, dark is booked. One of them is chosen like any choice. */
export function DayPicks({ days, bays, open, needs, chosen, onPick }: Props) {
  const writing = useWriting();
  const name = useId();
  const [length, whole] = [open.to - open.from, bays.length * (open.to - open.from)];
  const hours = (minutes: number) => formatQuantity(Math.round(minutes / 6) * 100, writing.decimal);
  return (
    <fieldset className="choice">
      <legend>{t('intake.whichDay')}</legend>
      <div className="day-picks">
        {days.map(({ day, bays: rows, free }) => {
          const booked = rows.reduce((sum, row) => sum + takenMinutes(row.taken, open), 0);
          return (
            <label key={day} className="day-pick">
              <input type="radio" className="aloud" name={name} checked={day === chosen} onChange={() => onPick(day)} />
              <span>{weekdayText(Date.parse(`${day}T12:00Z`), { ...writing, zone: 'UTC' }).replace(/ \S+$/, '')}</span>
              {free === null ? null : (
                <small className={free < needs ? 'in-heed' : 'ink-2'}>
                  {free > 0
                    ? t('intake.dayFree', { free: formatQuantity(free, writing.decimal) })
                    : t('intake.dayFull')}
                </small>
              )}
              <span className="aloud">{t('intake.dayLoad', { booked: hours(booked), of: hours(whole) })}</span>
              {rows.map((row) => (
                <span key={row.bayId} className="day-line" aria-hidden="true">
                  {row.taken.map(({ from, to }) => (
                    <i
                      key={`${from} ${to}`}
                      style={{
                        left: `${(Math.max(0, from - open.from) * 100) / length}%`,
                        right: `${(Math.max(0, open.to - to) * 100) / length}%`,
                      }}
                    />
                  ))}
                </span>
              ))}
            </label>
          );
        })}
      </div>
    </fieldset>
  );
}
