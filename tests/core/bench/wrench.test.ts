import { expect, test } from 'vitest';
import { reckonStage } from '../../../core/bench/wrench.ts';

const wrench = { least: 40_000, most: 200_000, lever: 400_000, dueOn: null };
const bare = { extension: null, thread: null };
const outside = (Nm: number) => reckonStage({ Nm }, bare, wrench).outsideWrench;

test('a wrench reaches from its least to its most, both in it; without one in hand nothing is outside', () => {
  expect([39.9, 40, 200, 200.1].map(outside)).toEqual([true, false, false, true]);
  expect(reckonStage({ Nm: 5 }, bare, null).outsideWrench).toBe(false);
});

test('what is to be set counts, not what the bolt gets: an extension may bring a figure into reach or out of it', () => {
  const work = { extension: { length: 100, angle: 0, lever: null }, thread: null };
  // 220 x 400 / 500 = 176; 45 x 400 / 500 = 36.
  expect(reckonStage({ Nm: 220 }, work, wrench)).toMatchObject({ setting: { Nm: 176 }, outsideWrench: false });
  expect(reckonStage({ Nm: 45 }, work, wrench)).toMatchObject({ setting: { Nm: 36 }, outsideWrench: true });
});

test('an extension folded back as far as the hand leaves no lever, so there is nothing to set', () => {
  const work = { extension: { length: 400, angle: 180, lever: null }, thread: null };
  expect(reckonStage({ Nm: 100 }, work, wrench).setting).toBeNull();
});
