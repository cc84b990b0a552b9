import { expect, test } from 'vitest';
import { clashesWith, fits, hoursFree } from '../../../core/order/capacity.ts';

// Common practice, no source: two mechanics x 8 h x 0.85 = 13.6 h; 11.2 h are booked; 2.4 h are free.
const day = { present: [8000, 8000], shareBp: 8500, booked: [4500, 6700] };

test('present hours x planned share, less what is booked', () => {
  expect(hoursFree(day)).toBe(2400);
});

test('a swap of 4.5 h does not slip into 2.4 h; exactly 2.4 h does', () => {
  expect(fits(day, 4500)).toBe(false);
  expect(fits(day, 2400)).toBe(true);
  expect(fits(day, 2401)).toBe(false);
});

test('a mechanic ill: the day is over-booked', () => {
  expect(hoursFree({ ...day, present: [8000] })).toBe(-4400);
});

test('a clash is the same bay at the same time; ending as another begins is none', () => {
  const slot = (id: string, bay: string, from: number, to: number, day = '2026-11-25') => ({ id, bay, day, from, to });
  const others = [
    slot('a', 'one', 480, 600),
    slot('b', 'one', 660, 720),
    slot('c', 'two', 480, 900),
    slot('d', 'one', 480, 900, '2026-11-26'),
  ];
  expect(clashesWith(slot('n', 'one', 600, 660), others)).toEqual([]);
  expect(clashesWith(slot('n', 'one', 599, 661), others)).toEqual(['a', 'b']);
  expect(clashesWith(slot('a', 'one', 480, 500), others)).toEqual([]);
});
