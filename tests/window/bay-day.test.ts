import fc from 'fast-check';
import { expect, test } from 'vitest';
import { freeFrom, takenMinutes, wallTime } from '../../renderer/places/book-in/bay-day.ts';

const open = { from: 480, to: 1050 };

test('a bay is free from its first gap that is long enough', () => {
  expect(freeFrom([], open, 60)).toBe(480);
  expect(freeFrom([{ from: 480, to: 600 }], open, 60)).toBe(600);
  expect(freeFrom([{ from: 540, to: 600 }], open, 60)).toBe(480);
  expect(freeFrom([{ from: 520, to: 600 }], open, 60)).toBe(600);
  expect(freeFrom([{ from: 480, to: 1000 }], open, 60)).toBeNull();
  expect(freeFrom([], open, 60, 1020)).toBeNull();
  expect(freeFrom([], open, 60, 700)).toBe(700);
});

test('two cars in one bay take a minute once', () => {
  expect(
    takenMinutes(
      [
        { from: 500, to: 600 },
        { from: 550, to: 650 },
      ],
      open,
    ),
  ).toBe(150);
  expect(
    takenMinutes(
      [
        { from: 400, to: 500 },
        { from: 1000, to: 1200 },
      ],
      open,
    ),
  ).toBe(70);
});

test('what is offered is free, and counting minute by minute agrees', () => {
  const stretch = fc
    .record({ from: fc.integer({ min: 300, max: 1200 }), long: fc.integer({ min: 1, max: 300 }) })
    .map(({ from, long }) => ({ from, to: from + long }));
  fc.assert(
    fc.property(fc.array(stretch, { maxLength: 8 }), fc.integer({ min: 15, max: 240 }), (taken, need) => {
      const at = freeFrom(taken, open, need);
      if (at !== null) {
        expect(at).toBeGreaterThanOrEqual(open.from);
        expect(at + need).toBeLessThanOrEqual(open.to);
        expect(taken.every(({ from, to }) => to <= at || from >= at + need)).toBe(true);
      }
      let minutes = 0;
      for (let m = open.from; m < open.to; m++) if (taken.some(({ from, to }) => from <= m && m < to)) minutes++;
      expect(takenMinutes(taken, open)).toBe(minutes);
    }),
  );
});

test('minutes are written as a wall clock shows them', () => {
  expect([wallTime(485), wallTime(1020)]).toEqual(['08:05', '17:00']);
});
