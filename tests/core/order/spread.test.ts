import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type OpenHours, reachBack, spreadOver } from '../../../core/order/spread.ts';
import { daysBetween, weekday } from '../../../core/time/civil.ts';

const open: OpenHours = { opens: '08:00', closes: '17:30', weekdays: [1, 2, 3, 4, 5] };
const parts = (day: string, from: string, hours: number) =>
  spreadOver({ day, from, hours }, open).map((part) => `${part.day} ${part.from} ${part.hours}`);

test('twenty hours from Thursday noon: until closing, the Friday, the rest on Monday', () => {
  // 2026-03-12 is a Thursday: 5.5 h, then 9.5 h, then the 5 h that are left.
  expect(parts('2026-03-12', '12:00', 20_000)).toEqual([
    '2026-03-12 12:00 5500',
    '2026-03-13 08:00 9500',
    '2026-03-16 08:00 5000',
  ]);
});

test('what is no longer than a day stands as it was booked, also past closing; a thousandth more is spread', () => {
  expect(parts('2026-03-12', '14:00', 9500)).toEqual(['2026-03-12 14:00 9500']);
  expect(parts('2026-03-12', '08:00', 9500)).toEqual(['2026-03-12 08:00 9500']);
  expect(parts('2026-03-12', '08:00', 9501)).toEqual(['2026-03-12 08:00 9500', '2026-03-13 08:00 1']);
});

test('begun on a day off it goes on when the garage works; begun after closing, or without hours, it stands', () => {
  expect(parts('2026-03-14', '15:30', 10_000)).toEqual(['2026-03-14 15:30 2000', '2026-03-16 08:00 8000']);
  expect(parts('2026-03-12', '18:00', 12_000)).toEqual(['2026-03-12 18:00 12000']);
  for (const none of [
    { ...open, weekdays: [] },
    { ...open, closes: '08:00' },
  ])
    expect(spreadOver({ day: '2026-03-12', from: '08:00', hours: 30_000 }, none)).toHaveLength(1);
});

test('any booking: nothing is lost, no day twice, no day too long, none further than is looked back', () => {
  const day = fc.integer({ min: 0, max: 27 }).map((n) => `2026-03-${String(n + 1).padStart(2, '0')}`);
  const wall = (least: number, most: number) =>
    fc.integer({ min: least, max: most }).map((h) => `${String(h).padStart(2, '0')}:00`);
  const any = fc.record({
    ...{ day, from: wall(0, 23), hours: fc.integer({ min: 100, max: 100_000 }) },
    open: fc.record({
      ...{ opens: wall(6, 10), closes: wall(11, 20) },
      weekdays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 7 }),
    }),
  });
  fc.assert(
    fc.property(any, ({ open: hours, ...one }) => {
      const all = spreadOver(one, hours);
      expect(all.reduce((sum, part) => sum + part.hours, 0)).toBe(one.hours);
      expect(new Set(all.map((part) => part.day)).size).toBe(all.length);
      for (const part of all.slice(1)) {
        expect(hours.weekdays).toContain(weekday(part.day));
        expect(part.from).toBe(hours.opens);
        expect(part.hours).toBeLessThanOrEqual(
          (Number(hours.closes.slice(0, 2)) - Number(hours.opens.slice(0, 2))) * 1000,
        );
      }
      expect(daysBetween(one.day, all.at(-1)?.day ?? '')).toBeLessThanOrEqual(reachBack(hours));
    }),
  );
});
