import { describe, expect, test } from 'vitest';
import { guessDateOrder, guessMapping } from '../../../core/bring-in/fields.ts';
import { readDay, readRow, valueShown } from '../../../core/bring-in/row.ts';

test('columns are guessed by their names, each field once, whatever the order and the language', () => {
  const guess = (...names: string[]) => guessMapping(names, [], 2).columns;
  expect(guess('Kd-Nr', 'Vorname', 'Nachname', 'Telefon', 'Mobil', 'E-Mail', 'Straße', 'PLZ', 'Ort')).toEqual([
    ...['customer-key', 'customer-first-name', 'customer-name', 'customer-phone', 'customer-phone2', 'customer-email'],
    ...['customer-street', 'customer-postcode', 'customer-town'],
  ]);
  expect(guess('Odometer', 'Licence plate', 'VIN', 'Make', 'Model', 'Year', 'Visit date', 'Work', 'Total')).toEqual([
    ...['visit-mileage', 'car-plate', 'car-vin', 'car-make', 'car-model', 'car-year', 'visit-on', 'visit-words'],
    'visit-amount',
  ]);
  expect(guess('Name', 'Name', 'Shoe size')).toEqual(['customer-name', null, null]);
});

test('what no name tells is guessed by what stands there', () => {
  const rows = [{ cells: ['per@example.test', 'WBA3A5C50DF123456'] }];
  expect(guessMapping(['1', '2'], rows, 2).columns).toEqual(['customer-email', 'car-vin']);
});

describe('days', () => {
  test.each([
    [['2024-03-01'], 'ymd'],
    [['01/02/2024', '13/02/2024'], 'dmy'],
    [['01/02/2024', '02/13/2024'], 'mdy'],
    [['01.02.2024'], 'dmy'],
    [['01/02/2024'], 'mdy'],
    [[], 'ymd'],
  ] as const)('%j are written %s', (cells, order) => {
    expect(guessDateOrder(cells)).toBe(order);
  });
  test.each([
    ['2024-02-29', 'mdy', '2024-02-29'],
    ['29.2.24', 'dmy', '2024-02-29'],
    ['12/31/1999 14:05', 'mdy', '1999-12-31'],
    ['29.02.2023', 'dmy', null],
    ['31/12/1999', 'mdy', null],
    ['soon', 'dmy', null],
  ] as const)('%s as %s is %s', (text, order, day) => {
    expect(readDay(text, order)).toBe(day);
  });
});

test('a row gives what it names and says what cannot be read', () => {
  const columns = ['customer-name', 'car-plate', 'visit-on', 'visit-mileage', 'visit-amount', 'car-year'] as const;
  const read = (...cells: string[]) => readRow(cells, { columns, dates: 'dmy', decimal: null }, 2);
  expect(read('Per  Halloran', 'OYB 902', '3.4.2019', '123.456 km', '1.234,50 €', 'EZ 03/2011')).toMatchObject({
    customer: { name: 'Per Halloran' },
    car: { plate: 'OYB 902', year: 2011 },
    visit: { on: '2019-04-03', mileage: 123_456, amount: 123_450 },
    problems: [],
  });
  expect(read('Per', 'OYB 902', '31.4.2019', 'lots', '1,2,3', '').problems).toEqual([
    { field: 'visit-on', problem: 'not-a-date' },
    { field: 'visit-mileage', problem: 'not-a-number' },
    { field: 'visit-amount', problem: 'not-a-number' },
  ]);
  expect(read('Per', 'OYB 902', '3.4.2019', '', '1.234', '').problems).toEqual([
    { field: 'visit-amount', problem: 'two-readings' },
  ]);
  expect(read('', '', '3.4.2019', '', '', '').problems).toEqual([
    { field: 'car-plate', problem: 'missing' },
    { field: 'customer-name', problem: 'missing' },
  ]);
});

test('the value that is named in a sentence is what stands in the row, joined and not too long', () => {
  const mapping = { columns: ['customer-name', null, 'customer-name', 'customer-note'] } as const;
  const cells = [' Ansel ', 'left out', 'Élise', 'n'.repeat(61)];
  expect(valueShown(cells, mapping, 'customer-name')).toBe('Ansel Élise');
  expect(valueShown(cells, mapping, 'customer-note')).toBe(`${'n'.repeat(60)}…`);
  expect(valueShown(cells, mapping, 'car-plate')).toBe('');
  expect(valueShown([], mapping, 'customer-name')).toBe('');
});
