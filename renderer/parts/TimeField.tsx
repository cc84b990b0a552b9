import { readTime } from '../../core/time/read-time.ts';
import { timeShown } from '../../core/time/time-shown.ts';
import { t } from '../words/t.ts';
import type { PickProps } from './DateField.tsx';
import type { Got } from './use-days.ts';
import { useTyped } from './use-typed.ts';

function read(typed: string): Got {
  if (typed.trim() === '') return { value: '' };
  const value = readTime(typed);
  return value === null ? { words: t('parts.timeUnread', { typed }) } : { value };
}

/** A time of day, typed as 730, 7:30 or 7.30. The value is 'HH:MM', '' while it is none. */
export function TimeField(props: PickProps) {
  const { input, wrong } = useTyped(props, read, timeShown);
  return (
    <span className="date-field">
      <input {...input} maxLength={20} />
      <span className="small date-read" id={`${props.id}-read`} aria-live="polite">
        {wrong === null ? null : <span className="wrong-words">{wrong}</span>}
      </span>
    </span>
  );
}
