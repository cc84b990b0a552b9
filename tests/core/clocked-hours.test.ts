import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clockedHours } from '../../core/order/labour.ts';

test('76 minutes: 1.3 h to the tenth, 1.25 h to the nearest quarter, 1.5 h up to the next', () => {
  expect(clockedHours(76, { step: 100, way: 'nearest' })).toBe(1300);
  expect(clockedHours(76, { step: 250, way: 'nearest' })).toBe(1250);
  expect(clockedHours(76, { step: 250, way: 'up' })).toBe(1500);
  expect(clockedHours(75, { step: 250, way: 'up' })).toBe(1250);
  expect(clockedHours(0, { step: 250, way: 'up' })).toBe(0);
  expect(() => clockedHours(10, { step: 0, way: 'up' })).toThrow(RangeError);
});

test('any time and step, as decimal.js has it', () => {
  const minutes = fc.nat({ max: 100_000 });
  fc.assert(
    fc.property(minutes, fc.integer({ min: 10, max: 1000 }), fc.constantFrom('nearest', 'up'), (time, step, way) => {
      const steps = new Decimal(time).times(1000).div(60).div(step);
      const whole = steps.toDecimalPlaces(0, way === 'up' ? Decimal.ROUND_CEIL : Decimal.ROUND_HALF_UP);
      // A division that does not end is cut by decimal.js: whole steps are told apart exactly.
      const exact = (time * 1000) % (60 * step) === 0;
      expect(clockedHours(time, { step, way })).toBe(
        exact ? ((time * 1000) / (60 * step)) * step : whole.times(step).toNumber(),
      );
    }),
  );
});

test('to the tenth is what shops from before the setting had', () => {
  for (let minutes = 0; minutes < 3000; minutes++)
    expect(clockedHours(minutes, { step: 100, way: 'nearest' })).toBe(Math.round((minutes * 10) / 60) * 100);
});
