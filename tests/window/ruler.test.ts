import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isStruck, placeLabels, rulerSpan, shortened, stepFor } from '../../renderer/places/cars/ruler.ts';

test('a step is 1, 2 or 5 times a power of ten', () => {
  expect([stepFor(61_492, 10), stepFor(7, 10), stepFor(120, 6), stepFor(0, 5)]).toEqual([10_000, 1, 20, 1]);
});

test('a car known from its first miles begins at nought; one that came late begins just before its visits', () => {
  expect(rulerSpan(9000, 61_492)).toEqual({ from: 0, to: 70_000 });
  const late = rulerSpan(120_044, 120_551);
  expect(late.from).toBeGreaterThan(115_000);
  expect(late.to).toBeGreaterThan(120_551);
  expect(rulerSpan(61_492, 61_492).from).toBe(0);
});

test('every reading lies on the ruler', () => {
  fc.assert(
    fc.property(fc.nat(2_000_000), fc.nat(2_000_000), (a, b) => {
      const [least, most] = [Math.min(a, b), Math.max(a, b)];
      const { from, to } = rulerSpan(least, most);
      expect(from).toBeLessThanOrEqual(least);
      expect(to).toBeGreaterThanOrEqual(most);
      expect(to).toBeGreaterThan(from);
    }),
  );
});

test('no label covers another, leaves the ruler, or is crossed by a stem', () => {
  const point = fc.record({ x: fc.integer({ min: 0, max: 1000 }), wide: fc.integer({ min: 10, max: 300 }) });
  fc.assert(
    fc.property(fc.array(point, { maxLength: 14 }), fc.integer({ min: 1, max: 4 }), (points, lanes) => {
      const all = points.map((one, i) => ({ ...one, id: `${i}` }));
      const places = placeLabels(all, 1000, lanes).map((place) => {
        const { x, wide } = all[Number(place.id)] ?? { x: 0, wide: 0 };
        return { ...place, x, right: place.left + wide };
      });
      for (const one of places) {
        expect(one.left).toBeGreaterThanOrEqual(0);
        expect(one.right).toBeLessThanOrEqual(1000);
        for (const other of places) {
          if (other.id === one.id) continue;
          if (other.lane === one.lane) expect(one.right <= other.left || other.right <= one.left).toBe(true);
          if (other.lane < one.lane) expect(one.x <= other.left || other.right <= one.x).toBe(true);
        }
      }
    }),
  );
});

test('with room for all, all are labelled; the one handed in first keeps its place', () => {
  const far = [1, 2, 3].map((i) => ({ id: `${i}`, x: i * 250, wide: 100 }));
  expect(placeLabels(far, 1000, 1)).toHaveLength(3);
  const near = ['new', 'old'].map((id) => ({ id, x: 500, wide: 100 }));
  expect(placeLabels(near, 1000, 1).map((place) => place.id)).toEqual(['new']);
});

test('two that are due one right after the other at the end of the ruler both get their label', () => {
  const points = [
    { id: 'far', x: 1212, wide: 187 },
    { id: 'near', x: 1197, wide: 187 },
  ];
  expect(placeLabels(points, 1226, 3)).toHaveLength(2);
});

test('a label that is shortened says so, and ends with a whole word where it can', () => {
  expect(shortened('Front discs and pads', 20)).toBe('Front discs and pads');
  expect(shortened('Swap the differential for a rebuilt unit', 26)).toBe('Swap the differential for…');
  expect(shortened('Getriebesteuergerätewechsel', 26)).toBe('Getriebesteuergerätewechs…');
});

test('a figure of the ruler through which a stem would run is left out, its neighbours stay', () => {
  expect([60, 100, 140].map((x) => isStruck(x, 40, [118]))).toEqual([false, true, true]);
  expect(isStruck(100, 40, [])).toBe(false);
  expect(isStruck(100, 40, [125])).toBe(false);
});
