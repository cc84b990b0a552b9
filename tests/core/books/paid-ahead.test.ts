import fc from 'fast-check';
import { expect, test } from 'vitest';
import { paidAhead } from '../../../core/books/paid-ahead.ts';

test('what was paid back is no longer there, and what came after the invoice is no deposit', () => {
  const money = [
    { amount: 15_000, at: 1 },
    { amount: -5000, at: 2 },
    { amount: 90_000, at: 9 },
  ];
  expect(paidAhead(money, null)).toBe(100_000);
  expect(paidAhead(money, 5)).toBe(10_000);
  expect(paidAhead([], null)).toBe(0);
});

test('all that was given back leaves nothing, whatever the sums', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 1e9 })), (sums) => {
      const money = [...sums, ...sums.map((amount) => -amount)].map((amount, at) => ({ amount, at }));
      expect(paidAhead(money, null)).toBe(0);
    }),
  );
});
