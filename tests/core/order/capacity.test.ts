import { expect, test } from 'vitest';
import { fits, hoursFree } from '../../../core/order/capacity.ts';

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
