import { expect, test } from 'vitest';
import { aheadPoints, carriedOf, distanceOn, lifeEvents } from '../../renderer/places/cars/life-events.ts';

/** A car with one clock replaced at 90,000, the new one from 10; straight sums by hand. */
const readings = [
  { reading: 80_000, on: '2024-01-01', event: 'read' as const, newStart: null, trueDistance: 80_000 },
  { reading: 90_000, on: '2024-04-10', event: 'replaced' as const, newStart: 10, trueDistance: 90_000 },
  { reading: 5010, on: '2024-07-19', event: 'read' as const, newStart: null, trueDistance: 95_000 },
];
const car = {
  readings,
  owners: [
    { name: 'Bram Oduya', from: '2024-02-20', to: null },
    { name: 'Ilse Vandermeer', from: '2020-05-01', to: '2024-02-20' },
  ],
  plates: [{ plate: 'KTB 4471', from: '2020-05-01', to: null }],
};

test('what the present clock lacks is what the old one had gone, less where the new one began', () => {
  expect(carriedOf(car)).toBe(89_990);
  expect(carriedOf({ readings: readings.slice(0, 2) })).toBe(89_990);
  expect(carriedOf({ readings: [] })).toBe(0);
});

test('between two readings a day has its share of the way; after the last it stays; before the first nobody knows', () => {
  // 100 days for 10,000: on the 50th day half of it.
  expect(distanceOn(car, '2024-02-20')).toBe(85_000);
  expect(distanceOn(car, '2025-01-01')).toBe(95_000);
  expect(distanceOn(car, '2023-12-31')).toBeNull();
});

test('the first owner and plate are no event; a later owner and a clock are', () => {
  expect(lifeEvents(car).map(({ what, distance, words }) => [what, distance, words])).toEqual([
    ['clock', 90_000, ''],
    ['owner', 85_000, 'Bram Oduya'],
  ]);
});

test('a reminder stands at its distance in truth, or where the pace will have the car on its day', () => {
  const none = { plate: '', car: '', unit: 'km' as const, customer: null, dueOn: null, guessed: false, days: null };
  const rest = { revision: 1, expected: null, due: false, askOn: null, noes: 0, tries: [], amount: null, closeWhy: '' };
  const at = { ...none, ...rest, carId: 'c', source: 'own' as const, closedAt: null };
  const points = aheadPoints(car, [
    { ...at, id: 'a', words: 'oil', dueMileage: 10_010, on: null, perDayX100: null },
    { ...at, id: 'b', words: 'brakes', dueMileage: null, on: '2024-07-29', perDayX100: 5000 },
    { ...at, id: 'c', words: 'no pace', dueMileage: null, on: '2024-07-29', perDayX100: null },
    { ...at, id: 'd', words: 'ended', dueMileage: 9000, on: null, perDayX100: null, closedAt: 1 },
  ]);
  expect(points.map(({ id, distance }) => [id, distance])).toEqual([
    ['a', 100_000],
    ['b', 95_500],
  ]);
});
