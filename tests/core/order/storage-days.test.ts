import fc from 'fast-check';
import { expect, test } from 'vitest';
import { daysAfter, lastCharged, storageDays } from '../../../core/order/storage.ts';
import { addDays } from '../../../core/time/civil.ts';

const rule = (collectionDayCharged: boolean, freeWorkingDays = 3) => ({
  ...{ freeWorkingDays, workingWeekdays: [1, 2, 3, 4, 5], collectionDayCharged },
});

// T39 with the first two of its five days on an invoice: three are left, and together they are the same.
test('what an invoice charges already is not charged again', () => {
  const all = storageDays('2026-03-10', '2026-03-18', rule(true));
  expect(all).toEqual({ firstCharged: '2026-03-14', days: 5 });
  const first = storageDays('2026-03-10', '2026-03-15', rule(true));
  expect(lastCharged(first)).toBe('2026-03-15');
  expect(daysAfter(all, lastCharged(first))).toEqual({ firstCharged: '2026-03-16', days: 3 });
  expect(daysAfter(all, null)).toEqual(all);
  expect(daysAfter(all, '2026-03-18').days).toBe(0);
  expect(daysAfter(all, '2026-03-25').days).toBe(0);
});

test('a charge of days before the price was agreed anew takes none of those that count from then', () => {
  const later = storageDays('2026-04-01', '2026-04-10', rule(true, 0));
  expect(daysAfter(later, '2026-03-20')).toEqual(later);
});

test('charged in two parts it comes to the same days, whatever the days between, the last one charged or not', () => {
  const day = fc.integer({ min: 0, max: 60 }).map((n) => addDays('2026-03-10', n));
  fc.assert(
    fc.property(day, day, fc.boolean(), fc.integer({ min: 0, max: 5 }), (one, other, last, free) => {
      const [first = '', second = ''] = [one, other].toSorted();
      const all = storageDays('2026-03-10', second, rule(last, free));
      const part = storageDays('2026-03-10', first, rule(last, free));
      expect(part.days + daysAfter(all, lastCharged(part)).days).toBe(all.days);
    }),
  );
});
