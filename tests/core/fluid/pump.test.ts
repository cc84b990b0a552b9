import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantityOf, strokesFor } from '../../../core/fluid/pump.ts';

test('a pump measured at 1.060 L in 53 strokes gives 20 mL a stroke', () => {
  // 53 strokes for one unit: common practice of one shop, no source; the litres are invented.
  const pump = { strokes: 53, quantity: 1060 };
  expect(quantityOf(53, pump)).toBe(1060);
  expect(quantityOf(10, pump)).toBe(200);
  expect(strokesFor(1060, pump)).toBe(53);
  expect(strokesFor(1061, pump)).toBe(54);
});

test('strokes for a quantity give at least that, and one fewer gives less', () => {
  const some = fc.integer({ min: 1, max: 5000 });
  fc.assert(
    fc.property(some, some, fc.integer({ min: 1, max: 100_000 }), (strokes, given, wanted) => {
      const pump = { strokes, quantity: given };
      const needed = strokesFor(wanted, pump);
      expect((needed * given) / strokes).toBeGreaterThanOrEqual(wanted - 1e-6);
      expect(((needed - 1) * given) / strokes).toBeLessThan(wanted);
    }),
  );
});

test('a quantity that so many strokes give exactly needs not one more, whatever the figures', () => {
  const some = fc.integer({ min: 1, max: 5000 });
  fc.assert(
    fc.property(some, some, some, (each, strokes, wanted) => {
      expect(strokesFor(each * wanted, { strokes, quantity: each * strokes })).toBe(wanted);
      expect(quantityOf(wanted, { strokes, quantity: each * strokes })).toBe(each * wanted);
    }),
  );
});

test('a pump that was never measured says so', () => {
  expect(() => quantityOf(5, { strokes: 0, quantity: 100 })).toThrow(RangeError);
  expect(() => strokesFor(5, { strokes: 10, quantity: 0 })).toThrow(RangeError);
});
