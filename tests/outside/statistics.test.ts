import * as reference from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { deviation, line, mean } from '../../core/fluid/statistics.ts';
import { trend } from '../../core/fluid/trend.ts';
import { checkFile } from './check-file.ts';

const figure = z.union([z.number(), z.string()]);
const certified = checkFile(
  '05a_strd_statistics.json',
  z.object({
    linear: z.array(
      z.object({
        name: z.string(),
        model: z.string(),
        x: z.array(z.number()),
        y: z.array(z.number()),
        certified: z
          .object({ intercept: z.number().optional(), slope: z.number().optional(), residSD: z.number().optional() })
          .loose(),
      }),
    ),
    univariate: z.array(
      z.object({
        name: z.string(),
        data: z.union([z.array(z.number()), z.string()]),
        mean: figure,
        sd: figure,
        tol: z.string().optional(),
      }),
    ),
  }),
);

const oil = checkFile(
  '05b_oil_analysis.json',
  z.object({
    trendCases: z.array(
      z.object({
        table: z.string(),
        ppm: z.array(z.number()).length(2),
        hours: z.array(z.number()).length(2),
        trendPer10h: z.number(),
      }),
    ),
    normalisation: z.array(
      z
        .object({
          ppm: z.number(),
          miles: z.number(),
          km: z.number(),
          ppmPer1000mi: z.number(),
          ppmPer1000km: z.number(),
        })
        .partial(),
    ),
    statisticalLimits: z.array(
      z.object({ mean: z.number(), sd: z.number(), k: z.array(z.number()), limits: z.array(z.number()) }).partial(),
    ),
  }),
);

/** "a then (b, c) x n", as the file writes the long sets. */
function spelled(data: readonly number[] | string): number[] {
  if (typeof data !== 'string') return [...data];
  const found = /^([\d.]+) then \(([\d.]+), ([\d.]+)\) x (\d+)$/.exec(data);
  if (!found) throw new Error(`Not understood: ${data}`);
  const [, first, a, b, times] = found.map(Number);
  return [first ?? 0, ...Array.from({ length: times ?? 0 }, () => [a ?? 0, b ?? 0]).flat()];
}

const near = (ours: number, theirs: number, relative: number) =>
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(relative * Math.max(Math.abs(theirs), Number.MIN_VALUE));

describe.skipIf(certified === null)('statistics: NIST StRD certified values, and simple-statistics', () => {
  for (const { name, data, mean: theirMean, sd, tol } of certified?.univariate ?? []) {
    test(`${name}: mean and deviation`, () => {
      const figures = spelled(data);
      near(mean(figures), Number(theirMean), 1e-12);
      near(deviation(figures, 'sample') ?? Number.NaN, Number(sd), tol === undefined ? 1e-12 : 1e-8);
      near(mean(figures), reference.mean(figures), 1e-12);
      near(deviation(figures, 'population') ?? Number.NaN, reference.standardDeviation(figures), 1e-8);
    });
  }
  for (const { name, x, y, certified: theirs } of (certified?.linear ?? []).filter(
    ({ model }) => model === 'y = b0 + b1 x',
  )) {
    test(`${name}: straight line`, () => {
      const ours = line(x.map((each, k) => ({ x: each, y: y[k] ?? Number.NaN })));
      near(ours?.slope ?? Number.NaN, theirs.slope ?? Number.NaN, 1e-12);
      near(ours?.intercept ?? Number.NaN, theirs.intercept ?? Number.NaN, 1e-10);
      near(ours?.residual ?? Number.NaN, theirs.residSD ?? Number.NaN, 1e-12);
      const { m, b } = reference.linearRegression(x.map((each, k) => [each, y[k] ?? Number.NaN]));
      near(ours?.slope ?? Number.NaN, m, 1e-9);
      near(ours?.intercept ?? Number.NaN, b, 1e-6);
    });
  }
});

describe.skipIf(oil === null)('used oil: the published arithmetic, never its limits', () => {
  for (const { table, ppm, hours, trendPer10h } of oil?.trendCases ?? []) {
    test(`${table}: ${ppm.join(' to ')} ppm in ${(hours[1] ?? 0) - (hours[0] ?? 0)} hours`, () => {
      // The program's rate is for each 1000 of a distance; with 100 for an hour that is the published one for 10 hours.
      const { newRate } = trend([], {
        ppm: (ppm[1] ?? 0) - (ppm[0] ?? 0),
        km: ((hours[1] ?? 0) - (hours[0] ?? 0)) * 100,
      });
      expect(newRate).toBeCloseTo(trendPer10h, 9);
    });
  }
  for (const { ppm, miles, km, ppmPer1000mi, ppmPer1000km } of oil?.normalisation ?? []) {
    if (ppm === undefined) continue;
    test(`${ppm} ppm on ${miles ?? km}`, () => {
      const rate = trend([], { ppm, km: miles ?? km ?? 0 }).newRate;
      expect(rate).toBeCloseTo((miles === undefined ? ppmPer1000km : ppmPer1000mi) ?? Number.NaN, 6);
    });
  }
  for (const limits of oil?.statisticalLimits ?? []) {
    const { mean: middle, sd, k, limits: theirs } = limits;
    if (middle === undefined || sd === undefined || k === undefined) continue;
    test(`mean ${middle}, deviation ${sd}: limits at ${k.join(', ')}`, () => {
      // Two figures with that mean and that sample deviation, twice: the population deviation is exactly sd.
      const history = [middle - sd, middle + sd, middle - sd, middle + sd].map((ppm) => ({ ppm, km: 1000 }));
      const found = k.map(
        (alertSd) =>
          trend(
            history,
            { ppm: middle, km: 1000 },
            { alertSd, alarmSd: 9, sd: 'population', fewestSamples: 2, fewestKm: 1 },
          ).alert,
      );
      expect(found).toEqual(theirs);
    });
  }
});
