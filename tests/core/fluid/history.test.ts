import fc from 'fast-check';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { type LabSample, metalHistories } from '../../../core/fluid/history.ts';

const sample = (id: string, km: number | null, metals: Record<string, number> | null): LabSample => ({
  id,
  km,
  metals: metals && Object.entries(metals).map(([element, ppm]) => ({ element, ppm, limit: null })),
});

test('each metal has a history of its own, of the samples that name it', () => {
  const found = metalHistories([
    sample('a', 5000, { Fe: 50_000, Cu: 5000 }),
    sample('b', 4000, { Fe: 60_000 }),
    sample('c', 2000, { Fe: 40_000, Si: 1000 }),
  ]);
  expect(found.map(({ element, points, count, because }) => [element, points.length, count, because])).toEqual([
    ['Cu', 1, 1, 'no-result'],
    ['Fe', 3, 2, 'few-samples'],
    ['Si', 1, 0, 'few-samples'],
  ]);
});

test('mean and deviation are those of simple-statistics, and exactly at a limit is inside it', () => {
  const one = fc.record({ km: fc.integer({ min: 1000, max: 40_000 }), ppm: fc.integer({ min: 0, max: 900_000 }) });
  fc.assert(
    fc.property(fc.array(one, { minLength: 4, maxLength: 12 }), one, (earlier, latest) => {
      const all = [...earlier, latest].map(({ km, ppm }, n) => sample(String(n), km, { Fe: ppm }));
      const [iron] = metalHistories(all);
      const rates = earlier.map(({ km, ppm }) => ppm / km);
      const limit = (times: number) => mean(rates) + times * sampleStandardDeviation(rates);
      expect(Math.abs((iron?.mean ?? -9) - mean(rates) * 1000)).toBeLessThan(0.51);
      expect(Math.abs((iron?.deviation ?? -9) - sampleStandardDeviation(rates) * 1000)).toBeLessThan(0.51);
      const rate = latest.ppm / latest.km;
      fc.pre([2, 3].every((times) => Math.abs(rate - limit(times)) > 1e-9));
      expect(iron?.says).toBe(rate > limit(3) ? 'alarm' : rate > limit(2) ? 'alert' : 'normal');
    }),
  );
});

test('the lab’s own limit is the one that it named last', () => {
  const named = (id: string, limit: number | null): LabSample => ({
    ...{ id, km: 5000, metals: [{ element: 'Fe', ppm: 90_000, limit }] },
  });
  expect(metalHistories([named('a', 400_000), named('b', 350_000), named('c', null)])).toMatchObject([
    { limit: 350_000 },
  ]);
  expect(metalHistories([named('a', null)])).toMatchObject([{ limit: null }]);
});

test('no sample, no history', () => expect(metalHistories([])).toEqual([]));
