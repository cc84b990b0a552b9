import { type Ref, useEffect, useRef, useState } from 'react';
import { addDays, isCivilDate, weekday } from '../../core/time/civil.ts';
import { timeShown } from '../../core/time/time-shown.ts';
import { comboOf } from '../frame/keys.ts';
import { useWriting } from '../state/shop.ts';
import { t } from '../words/t.ts';
import { civilText, weekdayNames } from '../words/times.ts';
import { Month } from './Month.tsx';
import { useDays } from './use-days.ts';
import { useTyped } from './use-typed.ts';

export interface PickProps {
  readonly id: string;
  readonly label: string;
  readonly className: string;
  readonly value: string;
  readonly onChange?: ((value: string) => void) | undefined;
  /** On leaving; not while what stands there is no date. */
  readonly onLeave?: (() => void) | undefined;
  readonly readOnly: boolean;
  readonly required?: boolean | undefined;
  readonly invalid: boolean;
  readonly describedBy?: string | undefined;
  readonly ref?: Ref<HTMLInputElement> | undefined;
  /** With a time of the day. */
  readonly moment?: boolean;
  /** Only the past makes sense. */
  readonly past?: boolean;
}

/**
 * A day as the shop writes it: typed (29.11, +3, tomorrow, a day of the week), a day on or back by the arrow keys, or
 * picked from a month (Alt ↓; its button is for the mouse, so that Tab goes on to the next field). Beside it stands what was read. The value is 'YYYY-MM-DD', with `moment`
 * 'YYYY-MM-DDTHH:MM', '' while it is none.
 */
export function DateField(props: PickProps) {
  const { id, readOnly, moment = false, past = false } = props;
  const writing = useWriting();
  const { today, read, show, typedDay } = useDays(moment, past);
  const { own, input, typed, got, wrong, put } = useTyped(props, read, show);
  const [open, setOpen] = useState(false);
  const now = 'value' in got ? got.value : '';
  const [day = '', time = ''] = now.split('T');
  const there = isCivilDate(day);

  /** A day alone is not yet a day with a time: it is typed as far as it is known. */
  const putDay = (next: string) => {
    if (!moment) put(next, null);
    else if (time === '') put('', `${typedDay(next)} `);
    else put(`${next}T${time}`, null);
  };
  // What lies behind an open dialog takes no focus: it goes back to the field once the month is gone.
  const back = useRef(false);
  const close = () => {
    back.current = true;
    setOpen(false);
  };
  useEffect(() => {
    if (open || !back.current) return;
    back.current = false;
    own.current?.focus();
  }, [open, own]);
  return (
    <span className="date-field">
      <input
        {...input}
        maxLength={40}
        aria-keyshortcuts="Alt+ArrowDown"
        onKeyDown={(event) => {
          const combo = comboOf(event);
          if (readOnly || (combo !== 'ArrowDown' && combo !== 'ArrowUp' && combo !== 'Alt+ArrowDown')) return;
          event.preventDefault();
          if (combo === 'Alt+ArrowDown') setOpen(true);
          // What cannot be read stays as it was typed.
          else if ('value' in got) putDay(there ? addDays(day, combo === 'ArrowUp' ? 1 : -1) : today);
        }}
      />
      {readOnly ? null : (
        <button
          type="button"
          className="button date-open"
          aria-label={t('parts.month')}
          aria-describedby={`${id}-label`}
          title={`${t('parts.month')} (Alt ↓)`}
          tabIndex={-1}
          aria-haspopup="dialog"
          onClick={() => setOpen(true)}
        >
          <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
            <path d="M2 4h12v10H2zM2 7h12M5 2v3M11 2v3" fill="none" stroke="currentColor" strokeWidth="1.4" />
          </svg>
        </button>
      )}
      <span className="small ink-2 date-read" id={`${id}-read`} aria-live="polite">
        {wrong !== null ? (
          <span className="wrong-words">{wrong}</span>
        ) : !there ? null : typed === null ? (
          weekdayNames(writing)[weekday(day) - 1]?.[0]
        ) : (
          `${weekdayNames(writing)[weekday(day) - 1]?.[0] ?? ''} ${civilText(day, { ...writing, dateForm: 'language' })} ${timeShown(time)}`.trim()
        )}
      </span>
      {open ? (
        <Month
          title={props.label}
          day={there ? day : today}
          today={today}
          onPick={(next) => {
            putDay(next);
            close();
          }}
          onClose={close}
        />
      ) : null}
    </span>
  );
}
