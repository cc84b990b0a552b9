import { expect, test } from 'vitest';
import { manMinutesLeft, minutesByTheClock, type WorkingHours, workEnds } from '../../../core/order/expected.ts';

const hours: WorkingHours = { opens: '08:00', closes: '17:30', weekdays: [1, 2, 3, 4, 5], zone: 'UTC' };
const at = (wall: string) => Date.parse(`${wall}:00Z`);

// Common practice, no source: 4.50 h sold, 3 h 10 clocked at 11:15 leave 1 h 20, done at 12:35; the promise was 12:30.
test('sold less clocked is left; a job that took longer owes nothing back', () => {
  expect(manMinutesLeft({ sold: 4500, clocked: 190 })).toBe(80);
  expect(workEnds(at('2026-03-10T11:15'), 80, hours)).toBe(at('2026-03-10T12:35'));
  expect(manMinutesLeft({ sold: 1000, clocked: 90 })).toBe(0);
});

// T22: man-minutes add, the time of the bay does not.
test('two on one job halve it; whoever has most to do says when it ends; what is nobody’s falls to whoever is free', () => {
  const of = (minutes: number, ...people: string[]) => ({ minutes, people });
  expect(minutesByTheClock([of(80)])).toBe(80);
  expect(minutesByTheClock([of(80), of(40)])).toBe(120);
  expect(minutesByTheClock([of(80, 'A', 'B')])).toBe(40);
  expect(minutesByTheClock([of(165, 'A', 'B'), of(45, 'A')])).toBe(128);
  expect(minutesByTheClock([of(60, 'A'), of(60, 'B')])).toBe(60);
  expect(minutesByTheClock([of(60, 'A'), of(60)])).toBe(120);
  expect(minutesByTheClock([of(60, 'A'), of(10, 'B'), of(50)])).toBe(60);
  expect(minutesByTheClock([of(60, 'A'), of(10, 'B'), of(80)])).toBe(75);
  expect(minutesByTheClock([])).toBe(0);
});

test('what does not fit before the garage closes goes on when it opens, past a weekend', () => {
  expect(workEnds(at('2026-03-10T17:00'), 120, hours)).toBe(at('2026-03-11T09:30'));
  // 2026-03-13 is a Friday.
  expect(workEnds(at('2026-03-13T17:00'), 60, hours)).toBe(at('2026-03-16T08:30'));
  expect(workEnds(at('2026-03-10T06:00'), 60, hours)).toBe(at('2026-03-10T09:00'));
  expect(workEnds(at('2026-03-10T19:00'), 60, hours)).toBe(at('2026-03-11T09:00'));
});

test('ends to the minute at closing; a clock put forward takes no minute of work', () => {
  expect(workEnds(at('2026-03-10T16:30'), 60, hours)).toBe(at('2026-03-10T17:30'));
  // London, 2026-03-29: at 01:00 the clock goes to 02:00 (Directive 2000/84/EC).
  const night = { ...hours, opens: '00:00', closes: '06:00', weekdays: [7], zone: 'Europe/London' };
  expect(workEnds(at('2026-03-29T00:30'), 60, night)).toBe(at('2026-03-29T01:30'));
});

test('without a day to work on the minutes are added as they are', () => {
  expect(workEnds(at('2026-03-10T11:00'), 60, { ...hours, weekdays: [] })).toBe(at('2026-03-10T12:00'));
});
