import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { celsius, convert, type Measure, UNITS } from '../../core/measure/unit.ts';
import { checkFile } from './check-file.ts';

const number = z.union([z.number(), z.string()]).transform(Number);
const file = checkFile(
  '02_units.json',
  z.object({
    factors: z
      .array(z.object({ quantity: z.string(), from_: z.string(), to: z.string(), factor: number, tolRel: z.number() }))
      .min(1),
    temperature: z.array(z.object({ F: z.number(), C: number, tolAbs: z.number().optional() })),
    garageCases: z.array(z.object({ input: z.string(), to: z.string(), expect: number, tolAbs: z.number() })),
  }),
);

/** Names that the file uses for the program's units. */
const NAMES: Readonly<Record<string, string>> = {
  'lbf ft': 'lbf·ft',
  'lbf in': 'lbf·in',
  'lbf inch': 'lbf·in',
  'kgf m': 'kgf·m',
  'kgf cm': 'kgf·cm',
  'N m': 'N·m',
  gallon: 'US gal',
  quart: 'US qt',
  usquart: 'US qt',
  pint: 'US pt',
  usfloz: 'US fl oz',
  brgallon: 'imp gal',
  brquart: 'imp qt',
  brfloz: 'imp fl oz',
  liter: 'L',
  milliliter: 'mL',
  mile: 'mi',
  inch: 'in',
  horsepower: 'hp',
  metrichorsepower: 'PS',
};

function measureOf(unit: string): Measure {
  const found = (Object.keys(UNITS) as Measure[]).find((measure) => unit in UNITS[measure]);
  if (found === undefined) throw new Error(`The program does not know the unit ${unit}`);
  return found;
}

function converted(value: number, from: string, to: string): number {
  const [own, other] = [NAMES[from] ?? from, NAMES[to] ?? to];
  return convert(measureOf(own), value, own as never, other as never);
}

/** A factor that is exact may still be one last binary digit off: sixteen figures are compared. */
const LAST_DIGIT = 2 ** -51;

describe.skipIf(file === null)('units: NIST SP 811 and exact definitions', () => {
  for (const { from_, to, factor, tolRel } of file?.factors ?? []) {
    test(`1 ${from_} in ${to}`, () => {
      expect(Math.abs(converted(1, from_, to) / factor - 1)).toBeLessThanOrEqual(Math.max(tolRel, LAST_DIGIT));
    });
  }
  for (const { F, C, tolAbs } of file?.temperature ?? []) {
    test(`${F} °F`, () => expect(Math.abs(celsius(F) - C)).toBeLessThanOrEqual(tolAbs ?? 1e-12));
  }
  for (const { input, to, expect: wanted, tolAbs } of file?.garageCases ?? []) {
    test(`${input} in ${to}`, () => {
      const [, value = '', unit = ''] = /^(\S+) (.+)$/.exec(input) ?? [];
      expect(Math.abs(converted(Number(value), unit, to) - wanted)).toBeLessThanOrEqual(Math.max(tolAbs, 1e-9));
    });
  }
});
