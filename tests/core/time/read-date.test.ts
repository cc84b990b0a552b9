import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, weekday } from '../../../core/time/civil.ts';
import type { DateForm } from '../../../core/time/date-form.ts';
import { readDate, typedDate, weeksOfMonth } from '../../../core/time/read-date.ts';
import { readMoment } from '../../../core/time/read-moment.ts';
import { readTime } from '../../../core/time/read-time.ts';

const ENGLISH = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const GERMAN = ['Montag', 'Dienstag', 'Mittwoch', 'Donnerstag', 'Freitag', 'Samstag', 'Sonntag'];
const near = new Map([
  ...([-1, 0, 1] as const).map((days) => [['yesterday', 'today', 'tomorrow'][days + 1] ?? '', days] as const),
  ...([-1, 0, 1] as const).map((days) => [['gestern', 'heute', 'morgen'][days + 1] ?? '', days] as const),
]);
const weekdays = ENGLISH.map((name, at) => [name, GERMAN[at] ?? '']);
// 29 November 2026 is a Sunday.
const read = (text: string, form: DateForm = 'day-month', today = '2026-11-29') =>
  readDate(text, { today, form, weekdays, near });

describe('a date as typed', () => {
  test.each([
    ['29.11.2026', 'day-month', '2026-11-29'],
    ['29/11/26', 'day-month', '2026-11-29'],
    ['11/29/2026', 'month-day', '2026-11-29'],
    ['3/4/2027', 'month-day', '2027-03-04'],
    ['3/4/2027', 'day-month', '2027-04-03'],
    ['3.4.2027', 'year-month', '2027-04-03'],
    ['2026-11-29', 'month-day', '2026-11-29'],
    ['20261130', 'day-month', '2026-11-30'],
    ['29.11', 'day-month', '2026-11-29'],
    ['29.11.', 'day-month', '2026-11-29'],
    ['28.11', 'day-month', '2027-11-28'],
    ['11-28', 'year-month', '2027-11-28'],
    ['29.2', 'day-month', '2028-02-29'],
    ['29.2.2028', 'day-month', '2028-02-29'],
    ['today', 'day-month', '2026-11-29'],
    [' Tomorrow ', 'day-month', '2026-11-30'],
    ['yesterday', 'day-month', '2026-11-28'],
    ['Heute', 'day-month', '2026-11-29'],
    ['morgen', 'day-month', '2026-11-30'],
    ['gestern', 'day-month', '2026-11-28'],
    ['+3', 'day-month', '2026-12-02'],
    ['-30', 'day-month', '2026-10-30'],
    ['+2w', 'day-month', '2026-12-13'],
    ['mon', 'day-month', '2026-11-30'],
    ['Mittwoch', 'day-month', '2026-12-02'],
    ['sunday', 'day-month', '2026-12-06'],
  ] as const)('%s in %s is %s', (text, form, date) => expect(read(text, form)).toEqual({ date }));

  test.each([
    '31.4.2027',
    '29.2.2027',
    '29.2.2100',
    '30.2',
    '0.1.2027',
    '1.13.2027',
    '2027-02-30',
    '11/29/2026',
    '29.11.0206',
    '2200-01-01',
    '+9999w',
  ])('%s is no day', (text) => expect(read(text)).toEqual({ problem: 'no-such-day' }));
  test.each(['', 'x', 'soon', '29', '29.11.2', '1.2.3.4', '29/11.2026', '+', 'constructor'])('%j is no date', (text) =>
    expect(read(text)).toEqual({ problem: 'unread' }),
  );

  // Where only the past makes sense: the last such day, today counts; a day of the week is the last one before today.
  test.each([
    ['28.11', 'day-month', '2026-11-28'],
    ['29.11', 'day-month', '2026-11-29'],
    ['30.11', 'day-month', '2025-11-30'],
    ['12/31', 'month-day', '2025-12-31'],
    ['29.2', 'day-month', '2024-02-29'],
    ['30.11.2027', 'day-month', '2027-11-30'],
    ['mon', 'day-month', '2026-11-23'],
    ['saturday', 'day-month', '2026-11-28'],
    ['sunday', 'day-month', '2026-11-22'],
    ['tomorrow', 'day-month', '2026-11-30'],
  ] as const)('%s of the past in %s is %s', (text, form, date) =>
    expect(readDate(text, { today: '2026-11-29', form, weekdays, near, past: true })).toEqual({ date }),
  );

  test('29 February is looked for past a year without one', () =>
    expect(read('29.2', 'day-month', '2096-03-01')).toEqual({ date: '2104-02-29' }));
  test('and before one', () =>
    expect(readDate('29.2', { today: '2104-02-28', form: 'day-month', weekdays, near, past: true })).toEqual({
      date: '2096-02-29',
    }));

  test('what is written is read again, in every form', () => {
    const forms = fc.constantFrom<DateForm>('language', 'day-month', 'month-day', 'year-month');
    fc.assert(
      fc.property(
        fc.integer({ min: -36_000, max: 36_000 }),
        forms,
        fc.constantFrom('en', 'de'),
        (n, form, language) => {
          const date = addDays('2026-11-29', n);
          expect(read(typedDate(date, form, language), form)).toEqual({ date });
        },
      ),
    );
  });

  test('no text makes it throw', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(Object.keys(read(text))).toHaveLength(1);
      }),
    );
  });
});

test('the weeks of a month begin on Monday and hold each of its days once', () => {
  fc.assert(
    fc.property(fc.integer({ min: -36_000, max: 36_000 }), (n) => {
      const date = addDays('2026-11-29', n);
      const weeks = weeksOfMonth(date);
      expect(weeks.every((week) => week.length === 7 && weekday(week[0] ?? '') === 1)).toBe(true);
      expect(weeks.flat().filter((day) => day === date)).toEqual([date]);
      expect(weeks.flat().filter((day) => day.endsWith('-01') && day.slice(0, 7) === date.slice(0, 7))).toHaveLength(1);
    }),
  );
  expect(weeksOfMonth('2027-02-10')).toHaveLength(4);
  expect(weeksOfMonth('2026-11-29')).toHaveLength(6);
});

describe('a time as typed', () => {
  test.each([
    ['730', '07:30'],
    ['7:30', '07:30'],
    ['7.30', '07:30'],
    ['7h30', '07:30'],
    ['07 30', '07:30'],
    ['7', '07:00'],
    ['1930', '19:30'],
    ['00:00', '00:00'],
    ['7:30 pm', '19:30'],
    ['12 am', '00:00'],
    ['12pm', '12:00'],
    ['7 p.m.', '19:00'],
  ])('%s is %s', (text, time) => expect(readTime(text)).toBe(time));
  test.each(['', '24:00', '7:60', '99', '7:3', '13 pm', '0 am', 'noon', '12345'])('%s is none', (text) =>
    expect(readTime(text)).toBeNull(),
  );
});

describe('a day and a time of it as typed', () => {
  const at = (text: string, form: DateForm = 'day-month') =>
    readMoment(text, { today: '2026-11-29', form, weekdays, near });
  test.each([
    ['30.11. 730', '2026-11-30T07:30'],
    ['30/11/2026 07:30', '2026-11-30T07:30'],
    ['2026-11-30T07:30', '2026-11-30T07:30'],
    ['2026-11-30 7:30', '2026-11-30T07:30'],
    ['tomorrow, 5 pm', '2026-11-30T17:00'],
    ['Morgen 17', '2026-11-30T17:00'],
    ['mon 8', '2026-11-30T08:00'],
    ['17:30', '2026-11-29T17:30'],
    ['5:30 pm', '2026-11-29T17:30'],
  ])('%s is %s', (text, wall) => expect(at(text)).toEqual({ wall }));
  test.each([
    ['30.11.2026', 'no-time'],
    ['tomorrow ', 'no-time'],
    ['31.11. 7:30', 'no-such-day'],
    ['30.11. 24:00', 'unread'],
    ['30.11. soon', 'unread'],
    ['', 'unread'],
  ])('%j: %s', (text, problem) => expect(at(text)).toEqual({ problem }));

  test('what is written is read again', () => {
    fc.assert(
      fc.property(fc.integer({ min: -36_000, max: 36_000 }), fc.integer({ min: 0, max: 1439 }), (n, minutes) => {
        const day = addDays('2026-11-29', n);
        const time = `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
        for (const form of ['day-month', 'month-day', 'year-month'] as const)
          expect(at(`${typedDate(day, form, 'en')} ${time}`, form)).toEqual({ wall: `${day}T${time}` });
      }),
    );
  });
});
