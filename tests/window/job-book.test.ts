import { expect, test } from 'vitest';
import { touchesOf } from '../../core/bench/torque-group.ts';
import { torque as torqueShape } from '../../core/contract/procedure.ts';
import { moved, newStep, newTorque, numbered } from '../../renderer/places/job-book/draft.ts';
import { afterText, readAfter } from '../../renderer/places/job-book/read-after.ts';
import {
  fluidInText,
  fluidText,
  measureText,
  oneTimeText,
  readFluid,
  readFluidIn,
  readMeasure,
  readOneTime,
  readReopens,
  readSample,
  reopensText,
  sampleText,
} from '../../renderer/places/job-book/read-step.ts';
import {
  extensionText,
  inPattern,
  readExtension,
  readStages,
  readThread,
  roundText,
  threadText,
  withCount,
  withDegrees,
  withRound,
  withRows,
} from '../../renderer/places/job-book/read-torque.ts';
import { newtonMetres, otherUnit } from '../../renderer/places/job-book/torque-words.ts';
import { reckonJob } from '../../renderer/places/job-book/totals.ts';
import { SETTINGS } from '../db/practice-shop.ts';

const steps = numbered(['lift', 'drain', 'fill plug'].map(newStep));
const words = (all: readonly { readonly n: number; readonly do: string }[]) => all.map((one) => `${one.n} ${one.do}`);

const POINT = { decimal: '.', group: ',' };
const COMMA = { decimal: ',', group: '.' };

test('a step is moved and all are numbered anew; out of the list nothing moves', () => {
  expect(words(moved(steps, 2, 1))).toEqual(['1 lift', '2 fill plug', '3 drain']);
  expect(words(moved(steps, 0, 2))).toEqual(['1 drain', '2 fill plug', '3 lift']);
  expect(moved(steps, 0, -1)).toEqual(steps);
  expect(moved(steps, 2, 3)).toEqual(steps);
});

test('a step that opens others again keeps them when steps move, and forgets those that now stand before it', () => {
  const linked = numbered(steps.map((step) => (step.n === 1 ? { ...step, reopens: [2, 3] } : step)));
  expect(moved(linked, 1, 2)[0]?.reopens).toEqual([2, 3]);
  expect(moved(linked, 1, 2).map((step) => step.do)).toEqual(['lift', 'fill plug', 'drain']);
  // The lift goes last: what it opened stands before it now.
  expect(moved(linked, 0, 2)[2]?.reopens).toEqual([]);
  expect(numbered(linked.filter((step) => step.n !== 2))[0]?.reopens).toEqual([2]);
  expect(numbered(steps)[0]?.reopens).toBeNull();
});

test('rounds are read in N·m and degrees and come back the same', () => {
  const stages = readStages('30, 60; 90°');
  expect(stages).toEqual([{ Nm: 30 }, { Nm: 60 }, { degrees: 90 }]);
  expect(newtonMetres(stages ?? [])).toBe('30, 60\u00a0N·m, 90°');
  expect(stages?.map(otherUnit)).toEqual(['22\u00a0lbf·ft', '44\u00a0lbf·ft', '']);
  const both = readStages('40 N·m (30 lbf·ft); 22 lbf·ft; 90°') ?? [];
  expect(both).toEqual([{ Nm: 40, lbfft: 30 }, { lbfft: 22 }, { degrees: 90 }]);
  // A pair that is printed in both has no other unit to reckon.
  expect(both.map(otherUnit)).toEqual(['', '29.8\u00a0N·m', '']);
  expect(both.map(roundText).map((text) => readStages(text)?.[0])).toEqual(both);
  for (const wrong of ['', 'tight', '30, tight', '0', '6000', '800°', '1, 2, 3, 4, 5, 6, 7'])
    expect(readStages(wrong), wrong).toBeNull();
});

test('one round is typed over, taken out, or the rest is typed in one go', () => {
  const stages = [{ Nm: 30 }, { Nm: 60 }, { Nm: 85 }];
  expect(withRound(stages, 1, '65')).toEqual([{ Nm: 30 }, { Nm: 65 }, { Nm: 85 }]);
  expect(withRound(stages, 1, '')).toEqual([{ Nm: 30 }, { Nm: 85 }]);
  expect(withRound(stages, 0, '20, 40, 90°')).toEqual([{ Nm: 20 }, { Nm: 40 }, { degrees: 90 }]);
  expect(withRound([{ Nm: 30 }], 0, '')).toBeNull();
  expect(withRound(stages, 2, 'tight')).toBeNull();
});

test('whatever pattern is chosen and however the holes are typed, the shop takes it and the bench has its touches', () => {
  const six = { ...newTorque(), count: 6 };
  const made = [
    inPattern(six, 'angles'),
    inPattern({ ...six, count: 7 }, 'pairs'),
    inPattern(six, 'rows'),
    inPattern(withDegrees(six, '0, 55, 130') ?? six, 'ring'),
    withDegrees(inPattern(six, 'angles'), '0 55 130, 200°'),
    withRows(inPattern(six, 'rows'), '4, 4, 2'),
    withCount(inPattern(six, 'pairs'), '10'),
  ];
  const counts = [6, 8, 6, 3, 4, 10, 10];
  expect(made.map((torque) => torqueShape.parse(torque).count)).toEqual(counts);
  expect(made.map((torque) => touchesOf(torqueShape.parse(torque)).length)).toEqual(counts);
  for (const wrong of ['', '0, 0', '360', 'top']) expect(withDegrees(six, wrong), wrong).toBeNull();
  for (const wrong of ['', '4, 0', '60, 60', 'two']) expect(withRows(six, wrong), wrong).toBeNull();
  expect(withCount(inPattern(six, 'pairs'), '9')).toBeNull();
  for (const wrong of ['0', '65', 'six']) expect(withCount(six, wrong), wrong).toBeNull();
});

test('threads and extensions are read as they are shown', () => {
  expect(readThread('M12 x 1.75, oiled')).toEqual({ words: 'M12 x 1.75', diameter: 12, nut: 'lubricated' });
  expect(readThread('M10')).toEqual({ words: 'M10', diameter: 10, nut: 'dry' });
  expect(readThread('1/2 UNF, 12.7 mm, dry')).toEqual({ words: '1/2 UNF', diameter: 12.7, nut: 'dry' });
  for (const text of ['M12 x 1.75, oiled', 'M10, dry', '1/2 UNF, 12.7 mm, dry'])
    expect(threadText(readThread(text))).toBe(text);
  for (const wrong of ['', '1/2 UNF', '1/2, 0 mm']) expect(readThread(wrong), wrong).toBeNull();
  expect(readExtension('150 mm at 90°, lever 400 mm')).toEqual({ length: 150, angle: 90, lever: 400 });
  expect(readExtension('150mm')).toEqual({ length: 150, angle: 0, lever: null });
  for (const text of ['150 mm', '150 mm at 90°', '150 mm at 90°, lever 400 mm', '80 mm, lever 300 mm'])
    expect(extensionText(readExtension(text))).toBe(text);
  for (const wrong of ['', 'long', '150', '0 mm', '150 mm at 200°']) expect(readExtension(wrong), wrong).toBeNull();
});

test('what is due after a job: days, a distance, or both', () => {
  expect(readAfter('Tighten the wheels again after 10 days or 50 km')).toEqual({
    ...{ words: 'Tighten the wheels again', days: 10, distance: 50 },
  });
  expect(readAfter('Run-in oil after 1000')).toEqual({ words: 'Run-in oil', days: null, distance: 1000 });
  for (const text of ['Oil after 30 days', 'Oil after 1000', 'Oil after 30 days or 1000'])
    expect(afterText(readAfter(text) ?? { words: '', days: null, distance: null })).toBe(text);
  for (const wrong of ['', 'Oil', 'Oil after', 'Oil after 0 days', 'after 30 days'])
    expect(readAfter(wrong), wrong).toBeNull();
});

test('strokes, samples, places to measure, and what opens again', () => {
  expect(readFluidIn('1.1 L gear oil, 53 strokes', true, POINT)).toEqual({
    ...{ what: 'gear oil', quantity: 1100, strokes: 53, lastTime: true },
  });
  expect(fluidInText(readFluidIn('1.1 L gear oil, 53 strokes', true, POINT), POINT)).toBe('1.1 L gear oil, 53 strokes');
  expect(readFluidIn('1.1 L gear oil', false, POINT)).toMatchObject({ strokes: null, lastTime: false });
  expect(readSample('100 ml mid-stream')).toEqual({ millilitres: 100, words: 'mid-stream' });
  expect(sampleText(readSample('100 ml mid-stream'))).toBe('100 ml mid-stream');
  expect(readSample('some')).toBeNull();
  const measure = readMeasure('backlash 0.13 to 0.18 mm at 4 places', POINT);
  expect(measure).toEqual({ what: 'backlash', least: 0.13, most: 0.18, unit: 'mm', places: 4 });
  expect(measureText(measure)).toBe('backlash 0.13 to 0.18 mm at 4 places');
  expect([readReopens('', 2, 9), readReopens('none', 2, 9), readReopens('7, 5', 2, 9)]).toEqual([null, [], [5, 7]]);
  for (const wrong of ['2', '10', 'later']) expect(readReopens(wrong, 2, 9), wrong).toBeUndefined();
  expect(reopensText([5, 7])).toBe('5, 7');
});

test('one-time parts, fluids and measures are read as they are shown', () => {
  expect(readOneTime('2 plug washer, O-ring')).toEqual([
    { part: 'plug washer', count: 2 },
    { part: 'O-ring', count: 1 },
  ]);
  expect(oneTimeText(readOneTime('2 plug washer, O-ring') ?? [])).toBe('2 plug washer, 1 O-ring');
  expect(readOneTime('0 washers')).toBeNull();
  expect(readFluid('1.1 L gear oil', POINT)).toEqual({ what: 'gear oil', quantity: 1100 });
  expect(fluidText(readFluid('1,35 gear oil', POINT), POINT)).toBe('1.35 L gear oil');
  for (const wrong of ['gear oil', '0 L oil', '1.1 L', '1,000 L oil'])
    expect(readFluid(wrong, POINT), wrong).toBeNull();
  const measure = readMeasure('backlash 0.13 to 0.18 mm', POINT);
  expect(measure).toEqual({ what: 'backlash', least: 0.13, most: 0.18, unit: 'mm', places: 1 });
  expect(measureText(measure)).toBe('backlash 0.13 to 0.18 mm');
  expect(readMeasure('backlash 0.2 to 0.1 mm', POINT)).toBeNull();
  expect(readMeasure('pressure 1,000 to 1,500 kPa', POINT)).toBeNull();
  expect(readMeasure('pressure 1,000 to 1,500 kPa', COMMA)).toMatchObject({ least: 1, most: 1.5 });
  const eighth = readFluid('1,125 L oil', COMMA);
  expect(readFluid(fluidText(eighth, COMMA), COMMA)).toEqual({ what: 'oil', quantity: 1125 });
});

test('what a job comes to: hours at the rate, a price of its own, a price from stock, none', () => {
  const line = { condition: null, unitCost: null, supplier: '', unit: '' };
  const content = {
    ...{ title: 'x', car: '', people: 1, sourceOfFigures: '', steps: [], cautions: [] },
    bookHours: 2500,
    fixedPrice: null,
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
  // At a fixed price that is what it comes to, at whatever rate an hour.
  for (const rate of [9600, 12_000])
    expect(reckonJob({ ...content, fixedPrice: 69_000 }, rate, stock, settings)).toMatchObject({
      ...{ net: 69_000, gross: 82_800 },
    });
});
