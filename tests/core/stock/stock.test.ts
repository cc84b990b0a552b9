import fc from 'fast-check';
import { expect, test } from 'vitest';
import { money, ZERO } from '../../../core/money/money.ts';
import { average, EMPTY, issue, issueCost, takeIn } from '../../../core/stock/average.ts';
import { countDrum } from '../../../core/stock/drum.ts';
import { reorder } from '../../../core/stock/reorder.ts';

test('what is issued in any steps takes the whole value with it', () => {
  const pieces = fc.array(fc.integer({ min: 1, max: 50_000 }), { minLength: 1, maxLength: 10 });
  fc.assert(
    fc.property(pieces, fc.integer({ min: 0, max: 100_000 }), (steps, cost) => {
      const all = steps.reduce((a, b) => a + b, 0);
      const empty = steps.reduce((stock, step) => issue(stock, step, ZERO), takeIn(EMPTY, all, money(cost)));
      expect(empty).toEqual(EMPTY);
    }),
  );
});

test('more than is there goes out at the average; from nothing at the last cost', () => {
  const two = takeIn(EMPTY, 2_000, money(500));
  expect(issue(two, 3_000, ZERO)).toEqual({ quantity: -1_000, value: -500 });
  expect(issueCost(EMPTY, 3_000, money(500))).toBe(1_500);
  expect(average(EMPTY)).toBeNull();
});

test('a drum that holds more than the book says', () => {
  const counted = countDrum({ quantity: 10_000, value: money(7_000) }, 0, 10_500, ZERO);
  expect(counted).toEqual({
    variance: 500,
    varianceValue: 350,
    varianceX10: null,
    after: { quantity: 10_500, value: 7_350 },
  });
});

test('reorder goes up to whole packs and counts what is coming', () => {
  const level = { onHand: 3, reserved: 2, onOrder: 0, keepAtLeast: 2, keepAtMost: 6, pack: 4 };
  expect(reorder(level)).toEqual({ free: 1, order: 8 });
  expect(reorder({ ...level, onOrder: 1 })).toEqual({ free: 1, order: 0 });
});
