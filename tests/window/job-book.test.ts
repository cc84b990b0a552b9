import { expect, test } from 'vitest';
import { moved, newStep, numbered } from '../../renderer/places/job-book/draft.ts';
import {
  fluidText,
  measureText,
  oneTimeText,
  readFluid,
  readMeasure,
  readOneTime,
  readStages,
  stagesText,
} from '../../renderer/places/job-book/read-step.ts';
import { newtonMetres, poundFeet } from '../../renderer/places/job-book/torque-words.ts';
import { reckonJob } from '../../renderer/places/job-book/totals.ts';
import { SETTINGS } from '../db/practice-shop.ts';

const steps = numbered(['lift', 'drain', 'fill plug'].map(newStep));
const words = (all: readonly { readonly n: number; readonly do: string }[]) => all.map((one) => `${one.n} ${one.do}`);

test('a step is moved and all are numbered anew; out of the list nothing moves', () => {
  expect(words(moved(steps, 2, 1))).toEqual(['1 lift', '2 fill plug', '3 drain']);
  expect(words(moved(steps, 0, 2))).toEqual(['1 drain', '2 fill plug', '3 lift']);
  expect(moved(steps, 0, -1)).toEqual(steps);
  expect(moved(steps, 2, 3)).toEqual(steps);
});

test('rounds are read in N·m and degrees and come back the same', () => {
  const stages = readStages('30, 60; 90°');
  expect(stages).toEqual([{ Nm: 30 }, { Nm: 60 }, { degrees: 90 }]);
  expect(stagesText(stages ?? [])).toBe('30, 60, 90°');
  expect(newtonMetres(stages ?? [])).toBe('30, 60\u00a0N·m, 90°');
  expect(poundFeet(stages ?? [])).toBe('22, 44, 90°\u00a0lbf·ft');
  const both = readStages('40 N·m (30 lbf·ft); 22 lbf·ft; 90°');
  expect(both).toEqual([{ Nm: 40, lbfft: 30 }, { lbfft: 22 }, { degrees: 90 }]);
  expect(readStages(stagesText(both ?? []))).toEqual(both);
  for (const wrong of ['', 'tight', '30, tight', '0', '6000', '800°', '1, 2, 3, 4, 5, 6, 7'])
    expect(readStages(wrong), wrong).toBeNull();
});

test('one-time parts, fluids and measures are read as they are shown', () => {
  expect(readOneTime('2 plug washer, O-ring')).toEqual([
    { part: 'plug washer', count: 2 },
    { part: 'O-ring', count: 1 },
  ]);
  expect(oneTimeText(readOneTime('2 plug washer, O-ring') ?? [])).toBe('2 plug washer, 1 O-ring');
  expect(readOneTime('0 washers')).toBeNull();
  expect(readFluid('1.1 L gear oil')).toEqual({ what: 'gear oil', quantity: 1100 });
  expect(fluidText(readFluid('1,35 gear oil'))).toBe('1.35 L gear oil');
  for (const wrong of ['gear oil', '0 L oil', '1.1 L']) expect(readFluid(wrong), wrong).toBeNull();
  const measure = readMeasure('backlash 0.13 to 0.18 mm');
  expect(measure).toEqual({ what: 'backlash', least: 0.13, most: 0.18, unit: 'mm', places: 1 });
  expect(measureText(measure)).toBe('backlash 0.13 to 0.18 mm');
  expect(readMeasure('backlash 0.2 to 0.1 mm')).toBeNull();
});

test('what a job comes to: hours at the rate, a price of its own, a price from stock, none', () => {
  const line = { condition: null, unitCost: null, supplier: '', unit: '' };
  const content = {
    ...{ title: 'x', car: '', people: 1, sourceOfFigures: '', steps: [], cautions: [] },
    bookHours: 2500,
    finalCheckId: null,
    after: [],
    goesWith: [],
    lines: [
      { ...line, kind: 'part' as const, words: 'own', partNumber: '', quantity: 2000, unitPrice: 1000 },
      { ...line, kind: 'part' as const, words: 'stock', partNumber: 'OR-1', quantity: 3000, unitPrice: null },
      { ...line, kind: 'part' as const, words: 'none', partNumber: '', quantity: 1000, unitPrice: null },
    ],
  };
  const part = { id: 'p', revision: 1, number: 'OR-1', words: '', unit: '', price: 640, bin: '', onHand: 0 };
  const stock = [{ ...part, value: null, keepAtLeast: 0, oneTime: false }];
  const settings = { ...SETTINGS, supplies: { mode: 'itemise' as const } };
  const total = reckonJob(content, 9600, stock, settings);
  expect([total.labour, total.line(0), total.line(1), total.line(2)]).toEqual([24_000, 2000, 1920, 0]);
  expect(total.net).toBe(27_920);
  // 20 % on everything in these settings.
  expect(total.gross).toBe(33_504);
});
