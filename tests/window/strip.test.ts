import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitting, hoursShown, layRows, minutesOf } from '../../renderer/places/today/strip/lay-out.ts';

const x = (minutes: number) => minutes * 2;

test('the strip shows the shop’s hours, and as much more as is booked or promised', () => {
  expect(hoursShown(minutesOf('08:00'), minutesOf('17:30'), [])).toEqual({ from: 480, to: 1080 });
  expect(hoursShown(480, 1080, [minutesOf('06:45'), minutesOf('19:10')])).toEqual({ from: 360, to: 1200 });
  expect(hoursShown(480, 1080, [2000])).toEqual({ from: 480, to: 1440 });
});

test('two cars in one bay at one time stand under each other, one after the other in a line', () => {
  const block = (id: string, from: number, to: number) => ({ id, bayId: 'b1', from, to });
  const [row] = layRows(['b1'], [block('late', 600, 700), block('early', 480, 600), block('clash', 500, 560)], [], x);
  expect(row?.blocks.map(({ id, lane }) => [id, lane])).toEqual([
    ['early', 0],
    ['clash', 1],
    ['late', 0],
  ]);
  expect(row?.lanes).toEqual(['cars', 'cars']);
});

test('a pennant that is past flies left of its pole; one without a bay has a row of its own', () => {
  const rows = layRows(['b1'], [], [{ id: 'p', bayId: '', at: 600, past: true, wide: 70 }], x);
  expect(rows.map((row) => row.bayId)).toEqual(['b1', '']);
  expect(rows[1]?.pennants[0]).toMatchObject({ x: 1130, wide: 70 });
});

test('what flies over a bay’s name, early in the morning, hangs in the lane under it', () => {
  const flag = { id: 'p', bayId: 'b1', at: 485, past: true, wide: 70 };
  const [row, none] = layRows(['b1'], [], [flag, { ...flag, id: 'q', bayId: '' }], x, x(480));
  expect(row?.pennants[0]).toMatchObject({ lane: 1 });
  expect(none?.pennants[0]).toMatchObject({ lane: 1 });
  expect(none?.lanes).toEqual(['cars', 'pennants']);
  const [later] = layRows(['b1'], [], [{ ...flag, at: 600 }], x, x(480));
  expect(later?.pennants[0]).toMatchObject({ lane: 0 });
});

test('nothing in a row ever covers anything else of it', () => {
  const span = fc.record({ from: fc.integer({ min: 0, max: 1300 }), long: fc.integer({ min: 1, max: 200 }) });
  const flag = fc.record({
    at: fc.integer({ min: 0, max: 1440 }),
    past: fc.boolean(),
    wide: fc.integer({ min: 1, max: 90 }),
  });
  fc.assert(
    fc.property(fc.array(span, { maxLength: 12 }), fc.array(flag, { maxLength: 12 }), (spans, flags) => {
      const [row] = layRows(
        ['b1'],
        spans.map(({ from, long }, i) => ({ id: `b${i}`, bayId: 'b1', from, to: from + long })),
        flags.map((one, i) => ({ ...one, id: `p${i}`, bayId: 'b1' })),
        x,
      );
      const all = [...(row?.blocks ?? []), ...(row?.pennants ?? [])];
      expect(all).toHaveLength(spans.length + flags.length);
      for (const one of all)
        for (const other of all)
          if (one.id !== other.id && one.lane === other.lane)
            expect(one.x + one.wide <= other.x || other.x + other.wide <= one.x).toBe(true);
    }),
  );
});

test('words are cut between words, so that what is shown begins what is said', () => {
  expect(fitting('Corvane S4, knocks', 40)).toBe('Corvane S4, knocks');
  expect(fitting('Corvane S4, knocks', 14)).toBe('Corvane S4');
  expect(fitting('Corvane', 3)).toBe('');
});
