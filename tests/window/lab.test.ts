import { expect, test } from 'vitest';
import { byUnit, draftOf, inOrder, type Metal, readAnswer, type Sample } from '../../renderer/lab/lab-series.ts';

const empty = { ppm: {}, limit: {}, others: '', viscosity: '', water: '' };

const POINT = { decimal: '.', group: ',' };

test('an answer is read as it stands on the lab’s paper, and what was kept is shown as it was typed', () => {
  const draft = {
    ppm: { Fe: '140', Cu: '7,5', Si: '' },
    limit: { Fe: '400' },
    ...{ others: 'Ni 4, Pb 2.5', viscosity: '14.1', water: '.02' },
  };
  const { result, wrong } = readAnswer(draft, POINT);
  expect(wrong.size).toBe(0);
  expect(result).toEqual({
    metals: [
      { element: 'Fe', ppm: 140_000, limit: 400_000 },
      { element: 'Cu', ppm: 7500, limit: null },
      { element: 'Ni', ppm: 4000, limit: null },
      { element: 'Pb', ppm: 2500, limit: null },
    ],
    ...{ viscosity: 14_100, water: 20 },
  });
  const again = readAnswer(draftOf(result as Sample['result'], '.'), POINT);
  expect(again.result).toEqual(result);
});

test('what cannot be read is named, and nothing is kept of it', () => {
  const bad = (draft: Partial<typeof empty>) => readAnswer({ ...empty, ...draft }, POINT);
  expect([...bad({ ppm: { Fe: 'much' } }).wrong]).toEqual(['ppm-Fe']);
  expect([...bad({ limit: { Cu: '-1' } }).wrong]).toEqual(['limit-Cu']);
  expect([...bad({ water: '0.1234' }).wrong]).toEqual(['water']);
  for (const others of ['nickel 4', 'Ni', 'Ni x', 'Ni 4, Ni 5']) expect(bad({ others }).wrong).toContain('others');
  expect(bad({ ppm: { Fe: '1' }, others: 'Fe 2' }).wrong).toContain('others');
  expect(bad({ ppm: { Fe: 'much' } }).result).toBeNull();
  expect(readAnswer(empty, POINT).result).toEqual({ metals: [], viscosity: null, water: null });
});

test('samples go by the serial of their unit, without one by its name', () => {
  const row = (id: string, name: string, serial: string, answered = false) =>
    ({ id, unit: { name, serial }, result: answered ? { metals: [], viscosity: null, water: null } : null }) as Sample;
  const units = byUnit([
    row('d', 'Rear axle', 'RD-1'),
    row('c', 'gearbox', ''),
    row('b', 'Axle', 'RD-1', true),
    row('a', 'Gearbox', '', true),
  ]);
  expect(units.map(({ rows, answered }) => [rows.map(({ id }) => id).join(''), answered?.id])).toEqual([
    ['db', 'b'],
    ['ca', 'a'],
  ]);
});

test('iron comes first, what has no field of its own after, by its sign', () => {
  const metal = (element: string) => ({ element }) as Metal;
  expect(inOrder(['Zn', 'Si', 'Fe', 'Ag', 'Cu'].map(metal)).map(({ element }) => element)).toEqual([
    ...['Fe', 'Cu', 'Si', 'Ag', 'Zn'],
  ]);
});

test('an answer where decimals follow a comma', () => {
  const comma = { decimal: ',', group: '.' };
  const typed = { ppm: { Fe: '1,125', Cu: '1.125' }, limit: {}, others: 'Ni 4,125, Pb 2', viscosity: '', water: '' };
  expect([...readAnswer(typed, comma).wrong]).toEqual(['ppm-Cu']);
  const { result } = readAnswer({ ...typed, ppm: {} }, comma);
  expect(result?.metals).toEqual([
    { element: 'Ni', ppm: 4125, limit: null },
    { element: 'Pb', ppm: 2000, limit: null },
  ]);
  expect(draftOf(result as Sample['result'], ',').others).toBe('Ni 4,125, Pb 2');
});
