import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cashRounding } from '../../../core/money/cash.ts';
import { formatMoney, parseMoney } from '../../../core/money/currency.ts';
import { balancesAfter, percentX10, profitOf } from '../../../core/money/margin.ts';
import { money } from '../../../core/money/money.ts';
import { markedUp } from '../../../core/money/pricing.ts';

describe('typed sums', () => {
  test.each([
    ['1234', 2, 123_400],
    ['1234.5', 2, 123_450],
    ['1,234.56', 2, 123_456],
    ['1.234,56', 2, 123_456],
    ['1 234,56', 2, 123_456],
    ['1\u202f234,56', 2, 123_456],
    ["1'234.50", 2, 123_450],
    ['1,234,567', 2, 123_456_700],
    ['1.234', 2, 123_400],
    ['1.234', 3, 1_234],
    ['0,5', 2, 50],
    ['.5', 2, 50],
    ['-20', 2, -2_000],
    ['\u221220', 2, -2_000],
    ['1,234', 0, 1_234],
  ])('%s with %i digits', (text, digits, minor) => expect(parseMoney(text, digits)).toBe(minor));

  test.each([
    '',
    'abc',
    '12a',
    '1,23,456',
    '12.345,6,7',
    '0.123',
    '1,234.567',
    '1.',
    '--1',
    '1 23',
    '1e5',
    '99999999999999999',
  ])('%s is refused', (text) => expect(parseMoney(text, 2)).toBeNull());

  test('what is written can be read again', () => {
    const formats = fc.constantFrom(
      { group: ',', decimal: '.' },
      { group: '.', decimal: ',' },
      { group: ' ', decimal: ',' },
    );
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), fc.constantFrom(0, 2, 3), formats, (minor, digits, format) => {
        expect(parseMoney(formatMoney(money(minor), digits, format), digits)).toBe(minor + 0);
      }),
    );
  });

  test('written sums', () => {
    const english = { group: ',', decimal: '.' };
    expect(formatMoney(money(-123_456_789), 2, english)).toBe('-1,234,567.89');
    expect(formatMoney(money(5), 2, english)).toBe('0.05');
    expect(formatMoney(money(1_234), 0, english)).toBe('1,234');
  });
});

test('cash halves go away from zero, and a coin is at least one unit', () => {
  expect(cashRounding(money(25), 50)).toEqual({ payable: 50, difference: 25 });
  expect(cashRounding(money(-25), 50)).toEqual({ payable: -50, difference: -25 });
  expect(() => cashRounding(money(25), 0)).toThrow(RangeError);
});

test('margin and markup are two figures', () => {
  expect(profitOf(money(17_000), money(10_000))).toEqual({ profit: 7_000, marginX10: 412, markupX10: 700 });
  expect(profitOf(money(0), money(100)).marginX10).toBeNull();
  expect(percentX10(3, 120)).toBe(25);
});

test('an overpayment stands as the customer’s credit', () => {
  expect(balancesAfter(money(1_000), [money(400), money(700)])).toEqual([600, -100]);
});

test('a cost above every band is told, not guessed', () => {
  expect(() => markedUp(money(200), [{ upTo: money(100), bp: 1000 }])).toThrow(RangeError);
});
