import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readingsOf } from '../../renderer/bench/work/Readings.tsx';
import { readHours, readMileageText } from '../../renderer/places/book-in/draft.ts';
import { readPercent } from '../../renderer/places/set-up/percent.ts';
import { guessKind, readQuantity, splitWords } from '../../renderer/sheet/read-line.ts';
import { readReduction } from '../../renderer/sheet/reduction.ts';
import { PLAIN_WRITING, quantityText, readAmount } from '../../renderer/words/figures.ts';
import { unreadWords } from '../../renderer/words/unread.ts';

describe('a sum as typed in a shop whose own marks are known', () => {
  const german = { ...PLAIN_WRITING, currency: 'EUR', decimal: ',', group: '.' };
  test.each([
    ['210.005', PLAIN_WRITING, null],
    ['1,250', PLAIN_WRITING, 125_000],
    ['1,25', PLAIN_WRITING, 125],
    ['1,250', german, null],
    ['1.250', german, 125_000],
    ['1.250', { ...PLAIN_WRITING, currency: 'KWD' }, 1250],
  ])('%s: their mark for decimals never parts thousands', (text, writing, minor) =>
    expect(readAmount(text, writing)).toBe(minor),
  );
});

describe('a quantity as typed on the sheet', () => {
  test.each([
    ['6.2 h', 6_200, 'h'],
    ['6,2h', 6_200, 'h'],
    ['1.1 L', 1_100, 'L'],
    ['1.1 l', 1_100, 'L'],
    ['12', 12_000, ''],
    [' 2 pcs ', 2_000, 'pcs'],
    ['.5 qt', 500, 'qt'],
    ['0', 0, ''],
    ['3 m²', null, ''],
    ['2 Stück', 2_000, 'Stück'],
  ] as const)('%s', (text, quantity, unit) =>
    expect(readQuantity(text, PLAIN_WRITING)).toEqual(quantity === null ? null : { quantity, unit }),
  );

  test.each(['', 'h', '-1 h', '6.2.1', '1,000.5', '1.2345', '6 h 30', '2 kilometres', '1e3', '٣ h', '1/2 h'])(
    '%s is no quantity',
    (text) => expect(readQuantity(text, PLAIN_WRITING)).toBeNull(),
  );

  test.each([
    ['1,000 h', 'Type 1000 or 1 instead: 1,000 could be either.'],
    ['1,350', 'Type 1350 or 1.35 instead: 1,350 could be either.'],
    ['1,35', 'a figure'],
    ['six', 'a figure'],
  ])('%s in a shop with a decimal point: what would be right', (text, words) =>
    expect(unreadWords(text, PLAIN_WRITING, 'a figure')).toBe(words),
  );
  test('and with a decimal comma', () =>
    expect(unreadWords('2.125 L', { ...PLAIN_WRITING, decimal: ',', group: '.' }, '')).toBe(
      'Type 2125 or 2,125 instead: 2.125 could be either.',
    ));

  test('what the sheet writes it can read again', () => {
    const units = fc.constantFrom('', 'h', 'L', 'qt', 'pcs');
    fc.assert(
      fc.property(fc.nat({ max: 1_000_000_000 }), units, fc.constantFrom('.', ','), (quantity, unit, decimal) => {
        const writing = { ...PLAIN_WRITING, decimal, group: decimal === '.' ? ',' : '.' };
        expect(readQuantity(quantityText(quantity, unit, writing), writing)).toEqual({ quantity, unit });
      }),
    );
  });

  test('no text makes it throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: 'grapheme' })), (text) => {
        const read = readQuantity(text, PLAIN_WRITING);
        expect(read === null || (Number.isSafeInteger(read.quantity) && read.quantity >= 0)).toBe(true);
        const split = splitWords(text);
        if (split !== null) expect(split.words.trim()).toBe(split.words);
      }),
    );
  });
});

test('a reading at the bench: a thousand is not taken for one', () => {
  const measure = { what: 'pressure', unit: 'kPa', least: 1, most: 2000, places: 2 };
  expect(readingsOf(measure, ['1.250', '0,0015'], PLAIN_WRITING)).toEqual([1.25, 0.0015]);
  expect(readingsOf(measure, ['1,250', '1'], PLAIN_WRITING)).toBeNull();
});

test.each([
  ['h', 'labour'],
  ['H', 'labour'],
  ['L', 'fluid'],
  ['qt', 'fluid'],
  ['', 'part'],
  ['pcs', 'part'],
] as const)('a line in %s is probably %s', (unit, kind) => expect(guessKind(unit)).toBe(kind));

describe('words with a quantity behind them', () => {
  test.each([
    ['Remove and fit 6.2 h', 'Remove and fit', '6.2 h'],
    ['Gear oil 75W-90 1,35L', 'Gear oil 75W-90', '1,35L'],
    ['  Fit   0.5 H ', 'Fit', '0.5 H'],
  ])('%s', (text, words, typed) => expect(splitWords(text)).toEqual({ words, typed }));

  test.each(['Remove and fit', 'Oil filter 12', 'Gear oil 75W-90', '6.2 h', 'Fit 6.2 hours', 'Bolt M10', ''])(
    '%s stays whole',
    (text) => expect(splitWords(text)).toBeNull(),
  );
});

describe('a discount as typed', () => {
  const read = (text: string) => readReduction(text, PLAIN_WRITING);

  test.each([
    ['5 %', { bp: 500 }],
    ['5%', { bp: 500 }],
    ['12.25 %', { bp: 1_225 }],
    ['12,5%', { bp: 1_250 }],
    ['100 %', { bp: 10_000 }],
    ['20.00', { sum: 2_000 }],
    ['1,250', { sum: 125_000 }],
    [' 7.5 ', { sum: 750 }],
  ])('%s', (text, reduction) => expect(read(text)).toEqual(reduction));

  test.each([
    '',
    '%',
    '0',
    '0.00',
    '0 %',
    '-5',
    '-5 %',
    '100.01 %',
    '101 %',
    '5.125 %',
    '1,000 %',
    '12,000 %',
    '5 h %',
    'five',
    '5 % off',
    '1.234.5',
  ])('%s is no discount', (text) => expect(read(text)).toBeNull());
});

describe('a percentage as typed', () => {
  test.each([
    ['20', 2, 2_000],
    ['6.25', 2, 625],
    ['6,25 %', 2, 625],
    ['8.875', 4, 88_750],
    ['9.975%', 4, 99_750],
    ['100', 4, 1_000_000],
    ['0', 4, 0],
    ['7.', 2, 700],
  ] as const)('%s with %i decimals', (text, decimals, figure) => expect(readPercent(text, decimals)).toBe(figure));

  test.each(['', '%', '6.255', '100.01', '1000', '-1', '6.2.5', 'six', '6 5'])('%s is none', (text) =>
    expect(readPercent(text, 2)).toBeNull(),
  );
});

describe('a mileage as typed', () => {
  test.each([
    ['61480', 61_480],
    ['61,480', 61_480],
    ['61.480', 61_480],
    ['61 480', 61_480],
    ['61\u00a0480', 61_480],
    ["1'061'480", 1_061_480],
    ['0', 0],
    [' 007 ', 7],
  ])('%s', (text, mileage) => expect(readMileageText(text)).toBe(mileage));

  test.each(['', 'km', '61480 km', '-5', '61480.5', '61,48', '6,1480', '12345678', '1,2,3', '61k'])(
    '%s is no mileage',
    (text) => expect(readMileageText(text)).toBeNull(),
  );
});

describe('hours of a booking as typed', () => {
  test.each([
    ['1', 1_000],
    ['2.5', 2_500],
    ['0,25', 250],
    ['0.1', 100],
    ['100', 100_000],
  ])('%s', (text, hours) => expect(readHours(text)).toBe(hours));

  test.each(['', '0', '0.05', '100.1', '-1', '1:30', '2 h', '1.2345', '1,000.5'])('%s is none', (text) =>
    expect(readHours(text)).toBeNull(),
  );
});
