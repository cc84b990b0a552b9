import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DecimalMark, guessDecimal, readSum, unclearSum } from '../../../core/bring-in/sum.ts';
import { formatMoney } from '../../../core/money/currency.ts';
import { money } from '../../../core/money/money.ts';

describe('what parts the decimals is told from the whole column', () => {
  test.each([
    [['1.234,50', '1.234'], ','],
    [['1,5', '1.234'], ','],
    [["1'234.50", '1,234'], '.'],
    [['1 234,50', '84'], ','],
    [['1.234.567'], ','],
    [['0.350'], '.'],
    [['84.5', '1.234'], '.'],
    // One alone has two readings, none says nothing, and two that disagree leave each to itself.
    [['1.234'], null],
    [['84', '1200', ''], null],
    [['1,50', '1.50'], null],
    [['by hand', '84,50 €'], ','],
    [[], null],
  ] as const)('%j: %s', (cells, mark) => expect(guessDecimal(cells, 2)).toBe(mark));
});

describe('one sum, where its column writes decimals with this mark', () => {
  test.each([
    ['1.234', ',', 123_400],
    ['1.234', '.', null],
    ['84.500', '.', 8450],
    ['84.500', ',', 8_450_000],
    ['1,5', ',', 150],
    ['1,5', '.', null],
    ['1.234,50', ',', 123_450],
    ["1'234.50", '.', 123_450],
    ['1’234.50', '.', 123_450],
    ['1 234,50', ',', 123_450],
    ['1\u202f234,50 €', ',', 123_450],
    ['EUR 84,50', ',', 8450],
    ['$1,234.50', '.', 123_450],
    ['-84,50', ',', -8450],
    ['84,50-', ',', -8450],
    ['€ −84,50', ',', -8450],
    ['(84.50)', '.', -8450],
    ['84,-', ',', 8400],
    ['.5', '.', 50],
    ['12,34.50', '.', null],
    ['1.234 567,00', ',', null],
    ['84,505', ',', null],
    ['a lot', ',', null],
    ['12 to 15', ',', null],
    ['', ',', null],
  ] as const)('%s with %s is %s', (text, mark, minor) => expect(readSum(text, 2, mark)).toBe(minor));
});

describe('one sum by itself', () => {
  test.each([
    ['1.234', 2, 'two-readings'],
    ['1,234', 3, 'two-readings'],
    ['1.234', 0, 1234],
    ['84,50', 2, 8450],
    ['84', 2, 8400],
    ['1.234,50', 2, 123_450],
    ['0,350', 3, 350],
  ] as const)('%s in a currency with %i decimals', (text, digits, read) =>
    expect(readSum(text, digits, null)).toBe(read),
  );

  test('the first that has two readings is named', () => {
    expect(unclearSum(['84,50', '1.50', '1.234', '2.345'], 2, null)).toBe('1.234');
    expect(unclearSum(['84,50', '1.234'], 2, ',')).toBeNull();
  });
});

test('what any shop writes is read as it was, however it parts its thousands', () => {
  const styles: readonly (readonly [DecimalMark, string])[] = [
    ...([
      ['.', ','],
      ['.', "'"],
      ['.', ''],
      [',', '.'],
      [',', ' '],
      [',', '\u202f'],
    ] as const),
  ];
  fc.assert(
    fc.property(
      fc.integer({ min: -1e11, max: 1e11 }),
      fc.constantFrom(...styles),
      fc.constantFrom(0, 2, 3),
      (sum, style, digits) => {
        const [decimal, group] = style;
        expect(readSum(formatMoney(money(sum), digits, { decimal, group }), digits, decimal)).toBe(sum + 0);
      },
    ),
  );
});

test('no text makes it throw', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), fc.constantFrom('.', ',', null), (text, mark) => {
      const read = readSum(text, 2, mark as DecimalMark | null);
      expect(read === null || read === 'two-readings' || Number.isSafeInteger(read)).toBe(true);
    }),
  );
});
