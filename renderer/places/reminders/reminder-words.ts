import type { OutputOf } from '../../../core/contract/index.ts';
import type { Writing } from '../../words/figures.ts';
import { wholeText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';

export type Reminder = OutputOf<'reminder.list'>['rows'][number];

/** A distance with the unit of the car's clock. */
export const distanceText = (figure: number, unit: 'km' | 'mi', writing: Writing): string =>
  t(unit === 'km' ? 'cars.kilometres' : 'cars.miles', { figure: wholeText(figure, writing) });

/** The day it falls due, with "about" where the pace of the visits says so. */
export function whenText({ on, guessed }: Reminder, writing: Writing): string {
  if (on === null) return t('reminders.noDay');
  return guessed ? t('reminders.onGuess', { day: civilText(on, writing) }) : civilText(on, writing);
}

/** What was set and what the guess stands on, a sentence each. */
export function whyText(row: Reminder, writing: Writing): string {
  const parts = [
    row.dueMileage === null ? '' : t('reminders.dueAt', { distance: distanceText(row.dueMileage, row.unit, writing) }),
    row.dueOn === null ? '' : t('reminders.dueOn', { day: civilText(row.dueOn, writing) }),
    row.expected === null ? '' : t('reminders.expected', { distance: distanceText(row.expected, row.unit, writing) }),
  ];
  return parts.filter((part) => part !== '').join('; ');
}
