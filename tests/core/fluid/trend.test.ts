import { expect, test } from 'vitest';
import { trend } from '../../../core/fluid/trend.ts';

const RULE = { alertSd: 2, alarmSd: 3, sd: 'population', fewestSamples: 4, fewestKm: 1000 } as const;
/** 10, 10, 20 and 20 a thousand kilometres: mean 15, deviation 5, so limits of 25 and 30. */
const HISTORY = [10, 10, 20, 20].map((ppm) => ({ ppm, km: 1000 }));
const says = (ppm: number, km = 1000, history = HISTORY) => trend(history, { ppm, km }, RULE).says;

test('exactly at a limit is inside it', () => {
  expect(trend(HISTORY, { ppm: 15, km: 1000 }, RULE)).toMatchObject({ mean: 15, deviation: 5, alert: 25, alarm: 30 });
  expect([25, 25.1, 30, 30.1].map((ppm) => says(ppm))).toEqual(['normal', 'alert', 'alert', 'alarm']);
});

test('four samples and a thousand kilometres are enough, one less of either is not', () => {
  expect(says(100)).toBe('alarm');
  expect(says(100, 999)).toBe('none');
  expect(says(100, 1000, HISTORY.slice(1))).toBe('none');
});
