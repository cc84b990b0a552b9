import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inKilometres, inMiles } from '../../../core/measure/distance.ts';
import { formatQuantity, parseQuantity, twoWays } from '../../../core/measure/quantity.ts';
import { wrenchSetting } from '../../../core/measure/torque-wrench.ts';
import { convert } from '../../../core/measure/unit.ts';

const POINT = { decimal: '.', group: ',' };
const COMMA = { decimal: ',', group: '.' };
const SPACED = { decimal: ',', group: ' ' };
const PLAIN = { decimal: '.', group: '' };

describe('typed quantities', () => {
  test.each([
    ['1.350', 1350],
    ['1,35', 1350],
    ['2', 2000],
    ['.5', 500],
    ['-1', -1000],
    ['0', 0],
  ])('%s', (text, thousandths) => expect(parseQuantity(text, POINT)).toBe(thousandths));

  test.each(['', '-', '.', '1.2345', '1.2.3', '1,000,000', '2h', '1e3'])('%s is refused', (text) =>
    expect(parseQuantity(text, POINT)).toBeNull(),
  );

  test.each([
    ['1,000', POINT, null],
    ['1.000', POINT, 1000],
    ['999,125', POINT, null],
    ['-1,000', POINT, null],
    ['1,00', POINT, 1000],
    ['0,350', POINT, 350],
    [',350', POINT, 350],
    ['1350,125', POINT, 1_350_125],
    ['1.000', COMMA, null],
    ['1,000', COMMA, 1000],
    ['0.350', COMMA, 350],
    ['1.000', SPACED, null],
    ['1,000', SPACED, 1000],
    ['1,000', PLAIN, null],
  ])('%s with %o: a thousand is not taken for one', (text, marks, thousandths) =>
    expect(parseQuantity(text, marks)).toBe(thousandths),
  );

  test('both readings of a figure that has two', () => {
    expect(twoWays('1,350', POINT)).toEqual({ parted: 1_350_000, decimals: 1350 });
    expect(twoWays('1,350', COMMA)).toBeNull();
    expect(twoWays('0,350', POINT)).toBeNull();
  });

  test('what is written can be read again', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.constantFrom('.', ','), (thousandths, decimal) => {
        const marks = decimal === '.' ? POINT : COMMA;
        expect(parseQuantity(formatQuantity(thousandths, decimal), marks)).toBe(thousandths + 0);
      }),
    );
  });
});

describe('torque', () => {
  // Pairs as workshop tables print them: common practice, no source.
  test.each([
    [150, 203.4],
    [67, 90.8],
    [33, 44.7],
    [19, 25.8],
    [18, 24.4],
  ])('%d lbf·ft is %d N·m', (pounds, newtons) => {
    expect(Math.round(convert('torque', pounds, 'lbf·ft', 'N·m') * 10) / 10).toBe(newtons);
  });

  test('there and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), (value) => {
        const back = convert('torque', convert('torque', value, 'lbf·in', 'N·m'), 'N·m', 'lbf·in');
        expect(Math.abs(back / value - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  test('an extension that leaves no lever is refused', () => {
    expect(() => wrenchSetting(120, 400, 400, 180)).toThrow(RangeError);
  });
});

test('a clock’s own distance in the other unit', () => {
  expect(inKilometres(75_000, 'mi')).toBe(120_701);
  expect(inMiles(120_701, 'km')).toBe(75_000);
  expect(inMiles(5, 'mi')).toBe(5);
});
