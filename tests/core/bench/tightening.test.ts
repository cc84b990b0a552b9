import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dueTouch,
  enteredTogether,
  type Holes,
  holeCount,
  tighteningOrder,
  touches,
} from '../../../core/bench/tightening.ts';

const ring = (count: number) => tighteningOrder({ layout: 'ring', count });
const upTo = (n: number) => Array.from({ length: n }, (_, k) => k + 1);
const everyRing = Array.from({ length: 30 }, (_, k) => k + 3);

/** How far the tight bolts pull to one side: the length of the mean of their directions, 0 to 1. */
function lopsided(order: readonly number[], tight: number, count: number): number {
  const taken = order.slice(0, tight).map((hole) => (2 * Math.PI * (hole - 1)) / count);
  const x = taken.reduce((all, angle) => all + Math.cos(angle), 0);
  const y = taken.reduce((all, angle) => all + Math.sin(angle), 0);
  return Math.hypot(x, y) / tight;
}

describe('a ring', () => {
  test.each(everyRing)('of %i: every hole once', (count) => {
    expect([...ring(count)].sort((a, b) => a - b)).toEqual(upTo(count));
  });

  test.each(everyRing.filter((count) => count % 2 === 0))('of %i: each pair is opposite', (count) => {
    const order = ring(count);
    for (let k = 0; k < count; k += 2) {
      expect(Math.abs((order[k + 1] ?? 0) - (order[k] ?? 0))).toBe(count / 2);
    }
  });

  test.each(everyRing.filter((count) => count % 2 === 1))('of %i: each step goes nearly half way round', (count) => {
    const order = ring(count);
    for (let k = 1; k < count; k++) {
      const step = ((((order[k] ?? 0) - (order[k - 1] ?? 0)) % count) + count) % count;
      expect([(count - 1) / 2, (count + 1) / 2]).toContain(step);
    }
  });

  test('of five is the star of a wheel', () => {
    expect(ring(5)).toEqual([1, 3, 5, 2, 4]);
  });

  test.each(everyRing.filter((count) => count >= 6))('of %i is drawn up more evenly than going round', (count) => {
    const pull = (order: readonly number[]) =>
      upTo(count - 1).reduce((all, tight) => all + (tight < 2 ? 0 : lopsided(order, tight, count)), 0);
    expect(pull(ring(count))).toBeLessThan(pull(upTo(count)) / 2);
  });
});

describe('other layouts', () => {
  const layouts: fc.Arbitrary<Holes> = fc.oneof(
    fc.integer({ min: 1, max: 64 }).map((count): Holes => ({ layout: 'ring', count })),
    fc.integer({ min: 1, max: 64 }).map((count): Holes => ({ layout: 'free', count })),
    fc.integer({ min: 1, max: 32 }).map((pairs): Holes => ({ layout: 'pairs', pairs })),
    fc
      .array(fc.integer({ min: 1, max: 8 }), { minLength: 1, maxLength: 6 })
      .map((rows): Holes => ({ layout: 'rows', rows })),
    fc
      .array(fc.double({ min: 0, max: 359, noNaN: true }), { minLength: 1, maxLength: 32 })
      .map((degrees): Holes => ({ layout: 'angles', degrees })),
  );

  test('every hole once, whatever the layout', () => {
    fc.assert(
      fc.property(layouts, (holes) => {
        expect([...tighteningOrder(holes)].sort((a, b) => a - b)).toEqual(upTo(holeCount(holes)));
      }),
    );
  });

  test('a pair with its clip is done before the wrench crosses over', () => {
    expect(tighteningOrder({ layout: 'pairs', pairs: 6 })).toEqual([1, 2, 7, 8, 3, 4, 9, 10, 5, 6, 11, 12]);
  });

  test('rows begin in the middle and each hole is followed by its mirror', () => {
    expect(tighteningOrder({ layout: 'rows', rows: [5, 5] })).toEqual([3, 8, 2, 9, 4, 7, 1, 10, 5, 6]);
  });

  test('uneven holes: the second is the one nearest to opposite', () => {
    expect(tighteningOrder({ layout: 'angles', degrees: [0, 40, 100, 170, 220, 300] }).slice(0, 2)).toEqual([1, 4]);
  });

  test('uneven holes: each pair begins with the one furthest from all that are tight', () => {
    // By hand: 100 is 70 from the nearest of 0 and 170, and 300 lies across from it; then 220 is 50 away and 40 only 40.
    const degrees = [0, 40, 100, 170, 220, 300];
    expect(tighteningOrder({ layout: 'angles', degrees })).toEqual([1, 4, 3, 6, 5, 2]);
  });

  test('even holes by their angles make pairs that are opposite', () => {
    const degrees = Array.from({ length: 12 }, (_, k) => k * 30);
    const order = tighteningOrder({ layout: 'angles', degrees });
    for (let k = 0; k < 12; k += 2) expect(Math.abs((order[k + 1] ?? 0) - (order[k] ?? 0))).toBe(6);
  });

  test('none, or more than 64, is refused', () => {
    expect(() => tighteningOrder({ layout: 'ring', count: 0 })).toThrow(RangeError);
    expect(() => tighteningOrder({ layout: 'ring', count: 65 })).toThrow(RangeError);
    expect(() => tighteningOrder({ layout: 'rows', rows: [40, 40] })).toThrow(RangeError);
  });
});

describe('stages', () => {
  test('8 bolts in 3 stages are 24 touches, and a check round 8 more, in a circle', () => {
    const all = touches({ layout: 'ring', count: 8 }, 3, true);
    expect(all).toHaveLength(32);
    expect(all.slice(24).map(({ hole }) => hole)).toEqual(upTo(8));
    expect(all.slice(24).every(({ stage, check }) => stage === 2 && check)).toBe(true);
  });

  test('a stage is gone over whole before the next begins', () => {
    const all = touches({ layout: 'ring', count: 7 }, 4, false);
    expect(all.map(({ stage }) => stage)).toEqual([...all.map(({ stage }) => stage)].sort((a, b) => a - b));
  });

  test('what is due walks through all touches, one for one, and then nothing is', () => {
    const all = touches({ layout: 'ring', count: 5 }, 2, false);
    expect(all.map((_, k) => dueTouch(all, k))).toEqual(all);
    expect(dueTouch(all, all.length)).toBeNull();
  });

  test('no stage is refused', () => {
    expect(() => touches({ layout: 'ring', count: 5 }, 0, false)).toThrow(RangeError);
  });

  test('records of one minute are told apart from those with a minute of their own', () => {
    expect(enteredTogether([0, 59_999, 60_000, 180_000])).toEqual([true, true, false, false]);
  });
});
