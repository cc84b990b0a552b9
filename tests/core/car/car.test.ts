import { describe, expect, test } from 'vitest';
import { dueOn, expectedDistance } from '../../../core/car/due.ts';
import { checkReading, MOST_KM_A_DAY, perDayX100, trueDistance } from '../../../core/car/odometer.ts';
import { foldPlate } from '../../../core/car/plate.ts';
import { readVin } from '../../../core/car/vin.ts';
import { covered } from '../../../core/car/warranty.ts';

describe('VIN', () => {
  test('is kept in capitals, without spaces and dashes', () => {
    expect(readVin(' crwnwhee-8l00 00417 ')).toMatchObject({ vin: 'CRWNWHEE8L0000417', verdict: 'ok' });
  });

  test.each([
    ['CRWNWHEE3L0000417', 'warn_check_digit'],
    ['CRWNWHEEAL0000417', 'warn_check_digit'],
    ['CRWNWHEE8L000041', 'warn_length'],
    ['O1234', 'warn_length'],
    ['CRWNWHEE8L00004177', 'refuse_length'],
    ['', 'refuse_length'],
    ['CRWNWHEE8LO000417', 'refuse_character'],
    ['CRWNWHEE8LÖ000417', 'refuse_character'],
    ['AB*12', 'refuse_character'],
  ])('%s: %s', (vin, verdict) => expect(readVin(vin).verdict).toBe(verdict));

  test('position 10 that is no year letter says nothing', () => {
    expect(readVin('1111111111'.padEnd(17, '1')).modelYears).toEqual([2001, 2031]);
    expect(readVin('11111111101111111').modelYears).toEqual([]);
  });
});

test('plates are found however they were typed', () => {
  expect(foldPlate('ab-O1 cdi')).toBe(foldPlate('AB 01 CD1'));
  expect(foldPlate('ab·12')).toBe('AB12');
  expect(foldPlate('äb 12')).not.toBe(foldPlate('ab 12'));
});

describe('odometer', () => {
  const last = { on: '2026-03-10', distance: 42_180 };

  test('kilometres typed for miles on a car that counts miles', () => {
    const miles = { on: '2026-03-10', distance: 26_209 };
    const check = checkReading(miles, { on: '2026-06-18', distance: 42_500 }, 'mi');
    expect(check).toEqual({ lower: false, tooFar: false, otherUnit: 26_408, fitsAsOtherUnit: false });
    expect(checkReading(miles, { on: '2026-03-12', distance: 42_500 }, 'mi')).toMatchObject({
      tooFar: true,
      fitsAsOtherUnit: true,
    });
  });

  test('lower in both units is not offered', () => {
    const check = checkReading(last, { on: '2026-06-18', distance: 2_000 }, 'km');
    expect(check).toMatchObject({ lower: true, fitsAsOtherUnit: false });
  });

  test('as far as a car goes in the days between, and one more', () => {
    const on = '2026-03-12';
    expect(checkReading(last, { on, distance: 42_180 + 2 * MOST_KM_A_DAY }, 'km').tooFar).toBe(false);
    expect(checkReading(last, { on, distance: 42_181 + 2 * MOST_KM_A_DAY }, 'km').tooFar).toBe(true);
  });

  test('a clock replaced twice, and one replaced later', () => {
    const replaced = [
      { on: '2025-07-01', oldFinal: 95_000, newStart: 0 },
      { on: '2024-01-01', oldFinal: 50_000, newStart: 100 },
      { on: '2027-01-01', oldFinal: 10_000, newStart: 0 },
    ];
    expect(trueDistance({ on: '2025-12-28', distance: 3_600 }, replaced)).toBe(148_500);
  });

  test('no pace within one day', () => expect(perDayX100(last, { ...last, distance: 43_000 })).toBeNull());
});

describe('due', () => {
  const rule = { atDistance: 48_000, onDate: '2027-03-10' };
  const last = { on: '2026-03-10', distance: 42_180 };

  test('readings under 30 days apart give no pace: the date counts', () => {
    const due = dueOn({ on: '2026-02-20', distance: 40_000 }, last, rule, MOST_KM_A_DAY);
    expect(due).toMatchObject({ perDayX100: null, daysToDue: null, on: '2027-03-10', guessed: false });
  });

  test('more than a car goes gives no pace', () => {
    const due = dueOn({ on: '2026-02-01', distance: 0 }, last, { ...rule, onDate: null }, MOST_KM_A_DAY);
    expect(due).toMatchObject({ perDayX100: null, on: null });
  });

  test('past the distance it is due at the last reading', () => {
    const due = dueOn({ on: '2025-09-01', distance: 38_000 }, { ...last, distance: 48_100 }, rule, MOST_KM_A_DAY);
    expect(due).toMatchObject({ daysToDue: 0, on: '2026-03-10', guessed: true });
  });

  test('the day of the last reading expects that reading', () => {
    expect(expectedDistance({ on: '2025-09-01', distance: 38_000 }, last, last.on)).toBe(42_180);
  });
});

test('warranty without its edges ends a day and a unit earlier', () => {
  const repair = { on: '2026-03-10', distance: 1_000 };
  const terms = { months: 12, distance: 20_000, edgesIncluded: false };
  expect(covered(repair, terms, { on: '2027-03-09', distance: 20_999 })).toBe(true);
  expect(covered(repair, terms, { on: '2027-03-10', distance: 2_000 })).toBe(false);
  expect(covered(repair, terms, { on: '2026-04-10', distance: 21_000 })).toBe(false);
});
