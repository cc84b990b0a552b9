import { expect, test } from 'vitest';
import { monthsOf } from '../../renderer/places/orders/months.ts';

const WEEK = 7 * 86_400_000;
const week = (day: string, n: number) => ({ from: Date.parse(day), to: Date.parse(day) + WEEK, n });

test('weeks counted into months, the newest first, empty months with the older week to go to', () => {
  const weeks = [week('2025-02-10', 4), week('2025-02-03', 1), week('2025-01-27', 2), week('2024-11-11', 7)];
  expect(
    monthsOf(weeks, 'UTC').map(({ month, n, week: to }) => [month, n, new Date(to).toISOString().slice(0, 10)]),
  ).toEqual([
    // The week of the 27th has its middle on the 30th.
    ['2025-02', 5, '2025-02-10'],
    ['2025-01', 2, '2025-01-27'],
    ['2024-12', 0, '2024-11-11'],
    ['2024-11', 7, '2024-11-11'],
  ]);
  expect(monthsOf([], 'UTC')).toEqual([]);
});
