import { expect, test } from 'vitest';
import { byDay } from '../../renderer/places/orders/by-day.ts';

const at = (wall: string) => ({ openedAt: Date.parse(`${wall}Z`) });

test('rows are parted by the shop’s own day, in their order', () => {
  const rows = [at('2026-11-25T09:00'), at('2026-11-25T07:00'), at('2026-11-24T23:30'), at('2026-11-24T10:00')];
  expect(byDay(rows, 'UTC').map(({ day, rows: of }) => [day, of.length])).toEqual([
    ['2026-11-25', 2],
    ['2026-11-24', 2],
  ]);
  // An hour east of Greenwich half past eleven at night is the next day.
  expect(byDay(rows, 'Europe/Berlin').map(({ day, rows: of }) => [day, of.length])).toEqual([
    ['2026-11-25', 3],
    ['2026-11-24', 1],
  ]);
  expect(byDay([], 'UTC')).toEqual([]);
});
