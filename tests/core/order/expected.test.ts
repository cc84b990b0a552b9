import { expect, test } from 'vitest';
import { minutesLeft, type WorkingHours, workEnds } from '../../../core/order/expected.ts';

const hours: WorkingHours = { opens: '08:00', closes: '17:30', weekdays: [1, 2, 3, 4, 5], zone: 'UTC' };
const at = (wall: string) => Date.parse(`${wall}:00Z`);

// Common practice, no source: 4.50 h sold, 3 h 10 clocked at 11:15 leave 1 h 20, done at 12:35; the promise was 12:30.
test('sold less clocked is left, job by job; over one job the others owe nothing', () => {
  expect(minutesLeft([{ sold: 4500, clocked: 190 }])).toBe(80);
  expect(workEnds(at('2026-03-10T11:15'), 80, hours)).toBe(at('2026-03-10T12:35'));
  const two = [
    { sold: 1000, clocked: 90 },
    { sold: 500, clocked: 0 },
  ];
  expect(minutesLeft(two)).toBe(30);
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
