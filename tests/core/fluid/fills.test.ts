import { expect, test } from 'vitest';
import { byVisit, type Fill, standing } from '../../../core/fluid/fills.ts';

const fill = (id: string, quantity: number, more: Partial<Fill> = {}): Fill => ({
  ...{ id, undoes: null, visit: 'v1', unit: 'Rear axle', serial: '', fluid: 'oil', quantity, strokes: null, pump: '' },
  ...more,
});

test('filled, rested and topped up is one sum of the visit; another visit, unit or fluid is another', () => {
  const pumped = { strokes: 20, pump: 'blue' };
  const fills = byVisit([
    fill('a', 400, pumped),
    fill('b', 100, { ...pumped, strokes: 5 }),
    fill('c', 90, { visit: 'v2' }),
    fill('d', 80, { unit: 'Gearbox' }),
    fill('e', 70, { fluid: 'additive' }),
  ]);
  expect(fills.map(({ quantity, strokes }) => [quantity, strokes])).toEqual([
    [500, 25],
    [90, null],
    [80, null],
    [70, null],
  ]);
});

test('strokes are told only where all of it went through one pump', () => {
  const blue = { strokes: 20, pump: 'blue' };
  expect(byVisit([fill('a', 400, blue), fill('b', 100)])).toMatchObject([{ quantity: 500, strokes: null }]);
  const red = { strokes: 4, pump: 'red' };
  expect(byVisit([fill('a', 400, blue), fill('b', 100, red)])).toMatchObject([{ quantity: 500, strokes: null }]);
});

test('what was taken back counts nothing, nor does the taking back', () => {
  const entries = [fill('a', 400), fill('b', 300), fill('c', 300, { undoes: 'b' })];
  expect(standing(entries).map(({ id }) => id)).toEqual(['a']);
  expect(byVisit(entries)).toMatchObject([{ quantity: 400 }]);
  expect(byVisit([fill('b', 300), fill('c', 300, { undoes: 'b' })])).toEqual([]);
});
