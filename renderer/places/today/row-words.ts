import type { OutputOf } from '../../../core/contract/index.ts';
import { figureWords } from '../../words/error-sentence.ts';
import type { Writing } from '../../words/figures.ts';
import { t, tMaybe } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';

type Row = OutputOf<'today.get'>['rows'][number];

/** Late by its promise, or because what was ordered for it is overdue. */
export function isLate(row: Row): boolean {
  return row.next.promise === 'late' || row.next.with.late === 1;
}

/** Next things that say on what: the jobs, or before there are any the customer's words. */
const ABOUT: ReadonlySet<string> = new Set([
  'start-work',
  'carry-on',
  'work-goes-on',
  'write-up-quote',
  'send-quote',
  'say-yes',
  'find-out',
  'looking',
  'bring-it-in',
]);

/** What the next thing is about, or '' where it says all there is. */
export function aboutWords(row: Row): string {
  return ABOUT.has(row.next.what) ? row.titles.join(', ') || row.complaint : '';
}

/** The next thing to do. Where the sum is not for this person, it says so without the sum. */
export function nextWords(row: Row, writing: Writing): string {
  const figures = { balance: t('today.theSum'), ...figureWords(row.next.with, writing) };
  return tMaybe(`next.${row.next.what}`, figures) ?? row.next.what;
}

/** What the customer was told: the words of the promise, else its time. */
export function promiseWords(row: Row, writing: Writing, now: number): string {
  if (row.promiseAt !== null && row.next.promise !== 'none')
    return t('today.promised', { time: nearText(row.promiseAt, writing, now) });
  return row.promiseWords || t('today.noPromise');
}
