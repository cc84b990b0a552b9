import { wallToInstant } from '../../../core/time/instant.ts';
import { timeShown } from '../../../core/time/time-shown.ts';
import { amountText, type Writing } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, timeText, weekdayText } from '../../words/times.ts';
import { type Draft, marksOf, sumOf } from './draft.ts';

/** The booking read back as a person would say it: who and which car, then the rest. */
export function readBack(
  draft: Draft,
  bays: readonly { id: string; name: string }[],
  writing: Writing,
): [string, string] {
  const who = draft.name.trim() || t('intake.footWho');
  const car = draft.plate.trim() || draft.words.trim() || t('intake.footCar');
  const bay = bays.find((one) => one.id === draft.bayId);
  const rest: string[] = [];
  if (bay && draft.day !== '' && draft.from !== '')
    rest.push(t('intake.footBay', { bay: bay.name, day: civilText(draft.day, writing), time: timeShown(draft.from) }));
  if (draft.promise !== '') {
    const at = wallToInstant(draft.promise, writing.zone);
    rest.push(t('intake.footPromise', { time: `${weekdayText(at, writing)}, ${timeText(at, writing)}` }));
  }
  const sums = [
    ['intake.footMost', draft.ownMost],
    ['intake.footLook', draft.lookUpTo],
    ['intake.footDeposit', draft.deposit],
  ] as const;
  for (const [words, typed] of sums) {
    const sum = sumOf(typed, writing);
    if (sum !== null && sum >= 0) rest.push(t(words, { sum: amountText(sum, writing) }));
  }
  if (draft.payer !== null) rest.push(t('intake.footPayer', { name: draft.payer.name }));
  if (draft.storageTold) rest.push(t('intake.footStorage'));
  const marks = marksOf(draft).length;
  if (marks > 0) rest.push(t('intake.footMarks', { n: marks }));
  return [
    t(draft.night ? 'intake.footNight' : draft.here ? 'intake.footHere' : 'intake.footComing', { who, car }),
    rest.join(' '),
  ];
}
