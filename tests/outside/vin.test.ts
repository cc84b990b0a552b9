import { validate } from 'vin-validator';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { readVin } from '../../core/car/vin.ts';
import { checkFile } from './check-file.ts';

const file = checkFile(
  '01_vin.json',
  z.object({
    cases: z
      .array(
        z.object({
          vin: z.string(),
          valid: z.boolean(),
          checkDigit: z.string().optional(),
          expectedCheckDigit: z.string().optional(),
          source: z.string().optional(),
        }),
      )
      .min(1),
    modelYearTable: z.array(z.object({ code: z.string(), years: z.array(z.int()) })),
    modelYearCases: z.array(z.object({ vin: z.string(), year: z.int() })),
  }),
);

describe.skipIf(file === null)('VIN: 49 CFR 565', () => {
  for (const { vin, valid, checkDigit, expectedCheckDigit } of file?.cases ?? []) {
    test(`${vin} ${valid ? 'passes' : 'does not pass'}`, () => {
      const read = readVin(vin);
      expect(read.verdict === 'ok').toBe(valid);
      const digit = checkDigit ?? expectedCheckDigit;
      if (digit !== undefined) expect(read.expectedCheckDigit).toBe(digit);
      expect(validate(vin)).toBe(valid);
    });
  }
  for (const { code, years } of file?.modelYearTable ?? []) {
    test(`year code ${code}`, () => {
      const vin = (seventh: string) => `111111${seventh}11${code}1111111`;
      expect(readVin(vin('1')).modelYears).toEqual(years);
      expect(readVin(vin('A')).modelYears).toEqual(years.toReversed());
    });
  }
  for (const { vin, year } of file?.modelYearCases ?? []) {
    test(`${vin} is of ${year}`, () => expect(readVin(vin).modelYears[0]).toBe(year));
  }
});
