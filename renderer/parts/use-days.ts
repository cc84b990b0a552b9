import { isCivilDate } from '../../core/time/civil.ts';
import { civilDateOf } from '../../core/time/instant.ts';
import { readDate, typedDate } from '../../core/time/read-date.ts';
import { readMoment } from '../../core/time/read-moment.ts';
import { timeShown } from '../../core/time/time-shown.ts';
import { useWriting } from '../state/shop.ts';
import { t } from '../words/t.ts';
import { nearDays, weekdayNames } from '../words/times.ts';

/** A day (and a time of it) as read: its value, '' for nothing typed, or the sentence that says what would be right. */
export type Got = { readonly value: string } | { readonly words: string };

/**
 * How this shop types days, or with `moment` days and a time: values are 'YYYY-MM-DD' or 'YYYY-MM-DDTHH:MM'. With `past` a
 * day without its year is the last such day.
 */
export function useDays(moment: boolean, past = false) {
  const writing = useWriting();
  const form = writing.dateForm ?? 'language';
  const today = civilDateOf(Date.now(), writing.zone);
  const typedDay = (day: string) => typedDate(day, form, writing.language);
  const show = (value: string) => {
    const [day = '', time = ''] = value.split('T');
    if (!isCivilDate(day)) return value;
    return moment ? `${typedDay(day)} ${timeShown(time)}` : typedDay(day);
  };
  const read = (typed: string): Got => {
    if (typed.trim() === '') return { value: '' };
    const reading = { today, form, weekdays: weekdayNames(writing), near: nearDays(writing), past };
    const got = moment ? readMoment(typed, reading) : readDate(typed, reading);
    if ('wall' in got) return { value: got.wall };
    if ('date' in got) return { value: got.date };
    const example = show(`${today.slice(0, 4)}-11-29${moment ? 'T07:30' : ''}`);
    if (got.problem === 'no-such-day') return { words: t('parts.noSuchDay', { typed, example }) };
    if (got.problem === 'no-time') return { words: t('parts.noTime', { typed, example }) };
    return { words: t(moment ? 'parts.momentUnread' : 'parts.dateUnread', { typed, example }) };
  };
  return { today, read, show, typedDay };
}
