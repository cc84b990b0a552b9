import { afterEach, expect, test } from 'vitest';
import { readPages, textOf } from '../paper/read-back.ts';
import { BenchJob } from './bench-job.ts';
import { at } from './practice-shop.ts';

let bench: BenchJob | null = null;
afterEach(async () => {
  await bench?.garage.end();
  bench = null;
});

const flange = {
  what: 'Flange bolts',
  pattern: 'ring' as const,
  count: 8,
  stages: [{ Nm: 40 }, { Nm: 80 }, { degrees: 90 }],
};
const MINUTE = 60_000;

// T28 of the shop's scenarios, through the operations; its figures are invented.
test('23 of 24 entries: the step is not done, the invoice is held, the owner lets it pass with a reason that is printed', async () => {
  bench = await BenchJob.begun([{ do: 'Flange bolts, crosswise', torque: flange }]);
  const { garage, orderId, jobId } = bench;
  expect(await bench.make(1, 23)).toEqual({ made: 23, due: 23, warning: '' });
  const missing = { what: 'torque-missing', with: { letter: 'A', step: 1, missing: 1 } };
  expect(await garage.refused('Runa', 'step.tick', { jobId, n: 1, state: 'done' })).toEqual({
    code: 'held',
    reasons: [missing],
  });
  const { revision, stops } = await bench.order();
  expect(stops).toContainEqual({ ...missing, override: 'owner' });
  await garage.did('Runa', 'order.mileageOut', { id: orderId, revision, mileage: 42_190 });
  expect(await garage.refused('Odile', 'invoice.issue', { orderId })).toMatchObject({
    code: 'held',
    reasons: [missing],
  });
  const overrides = [{ what: 'torque-missing', reason: 'The last bolt is behind the tank strap' }];
  expect(await garage.refused('Desk', 'invoice.issue', { orderId, overrides })).toMatchObject({ code: 'not-allowed' });
  const { paperId } = await garage.did('Odile', 'invoice.issue', { orderId, overrides });
  const { base64 } = await garage.did('Odile', 'paper.read', { id: paperId });
  const text = (await readPages(new Uint8Array(Buffer.from(base64, 'base64')))).map(textOf).join(' ');
  expect(text.replace(/\s+/g, ' ')).toContain(
    'Torque entries missing, A, step 1: The last bolt is behind the tank strap (Odile)',
  );
});

test('the 24th makes it whole, and then it is done', async () => {
  bench = await BenchJob.begun([{ do: 'Flange bolts', torque: flange }]);
  await bench.make(1, 23);
  expect(await bench.make(1, 1)).toEqual({ made: 24, due: null, warning: '' });
  await bench.tick(1);
  const { stops, jobs } = await bench.order();
  expect(jobs[0]?.steps).toMatchObject([{ state: 'done', entered: 24, by: 'Runa' }]);
  expect(stops.map((stop) => stop.what)).toEqual(['mileage-out-missing']);
});

// T27 of the shop's scenarios and the published sum that it names (tests/outside/torque.test.ts), through the operation.
test.each([
  [0, 106.7],
  [90, 120],
  [45, 110.3],
  [180, 137.1],
])('an extension of 50 mm at %i degrees on a wrench of 400 mm: 120 N·m are set as %f', async (angle, set) => {
  const torque = {
    pattern: 'free' as const,
    count: 1,
    stages: [{ Nm: 120 }],
    extension: { length: 50, angle },
  };
  bench = await BenchJob.begun([{ do: 'Bolt', torque }]);
  const { garage, jobId } = bench;
  const { id: wrenchId } = await garage.did('Desk', 'wrench.add', { name: 'T2', most: 130_000, lever: 400_000 });
  const bare = await garage.did('Runa', 'torque.get', { jobId, step: 1 });
  expect(bare.stages[0]).toMatchObject({ setting: null, outsideWrench: false });
  const { stages } = await garage.did('Runa', 'torque.get', { jobId, step: 1, wrenchId });
  expect(stages[0]?.setting?.Nm).toBeCloseTo(set, 1);
  expect(stages[0]?.torque?.lbfft).toBeCloseTo(88.5, 1);
  expect(stages[0]?.outsideWrench).toBe(set > 130);
});

test('a pair printed in both units stays as printed; an angle has no torque; a thread gives a clamp load with its span', async () => {
  const torque = {
    ...{ pattern: 'ring' as const, count: 4 },
    stages: [{ Nm: 25, lbfft: 18 }, { lbfft: 30 }, { degrees: 60 }],
    thread: { words: 'M10 x 1.5', diameter: 10, nut: 'dry' as const },
  };
  bench = await BenchJob.begun([{ do: 'Caps', torque, source: 'invented, page 3' }]);
  const { stages, source } = await bench.garage.did('Runa', 'torque.get', { jobId: bench.jobId, step: 1 });
  expect(source).toBe('invented, page 3');
  expect(stages[0]).toMatchObject({
    torque: { Nm: 25, lbfft: 18 },
    clampLoad: { load: 12.5, least: 9.375, most: 15.625 },
  });
  expect(stages[1]?.torque?.Nm).toBeCloseTo(40.67, 2);
  expect(stages[2]).toMatchObject({ torque: null, degrees: 60, setting: null, clampLoad: null });
});

test('no bolt is missed and none made twice: only the touch that is due is taken', async () => {
  bench = await BenchJob.begun([{ do: 'Flange bolts', torque: flange }]);
  const { garage, jobId } = bench;
  await bench.make(1, 14);
  const wrong = (touch: number, count = 1) =>
    garage.refused('Runa', 'torque.make', { ...{ jobId, step: 1, touch, count } });
  const due = (touch: number) => ({ code: 'held', reasons: [{ what: 'torque-not-due', with: { touch, due: 15 } }] });
  expect(await wrong(13)).toEqual(due(14));
  expect(await wrong(15)).toEqual(due(16));
  expect(await wrong(14, 11)).toEqual({ code: 'held', reasons: [{ what: 'torque-too-many', with: { left: 10 } }] });
  const { touches } = await garage.did('Runa', 'torque.get', { jobId, step: 1 });
  expect(touches.filter(({ made }) => made !== null).map(({ touch }) => touch)).toEqual([...Array(14).keys()]);
  // Stage two, the seventh touch of the cross pattern over eight.
  expect(touches[14]).toMatchObject({ stage: 1, hole: touches[6]?.hole, made: null });
});

test('the last touch is taken back, not one before it; of nothing there is nothing to take back', async () => {
  bench = await BenchJob.begun([{ do: 'Flange bolts', torque: flange }]);
  const { garage, jobId } = bench;
  const back = { jobId, step: 1 };
  expect(await garage.refused('Runa', 'torque.back', back)).toMatchObject({ reasons: [{ what: 'torque-none-made' }] });
  await bench.make(1, 3);
  expect(await garage.did('Runa', 'torque.back', back)).toEqual({ made: 2, due: 2 });
  expect(await garage.did('Runa', 'torque.back', back)).toEqual({ made: 1, due: 1 });
  await bench.make(1);
  expect((await garage.did('Runa', 'torque.get', back)).made).toBe(24);
});

test('taps of one minute are marked; so is what was keyed in later from paper, and by whom', async () => {
  bench = await BenchJob.begun([{ do: 'Flange bolts', torque: flange }]);
  const { garage, jobId } = bench;
  garage.now = at('2026-03-10T09:00');
  await bench.make(1, 1);
  garage.now = at('2026-03-10T09:05');
  await bench.make(1, 2);
  await garage.did('Piet', 'torque.make', { jobId, step: 1, touch: 3, at: at('2026-03-10T09:02') });
  const { touches } = await garage.did('Runa', 'torque.get', { jobId, step: 1 });
  expect(touches.slice(0, 4).map(({ made }) => [made?.together, made?.lateBy])).toEqual([
    [false, ''],
    [true, ''],
    [true, ''],
    [false, 'Piet'],
  ]);
  // A tablet's clock may go a little ahead; an hour to come is none.
  await garage.did('Runa', 'torque.make', { jobId, step: 1, touch: 4, at: garage.now + MINUTE });
  const now = await garage.did('Runa', 'torque.get', { jobId, step: 1 });
  expect(now.touches[4]?.made).toMatchObject({ at: garage.now, lateBy: '' });
  const ahead = { jobId, step: 1, touch: 5, at: garage.now + 10 * MINUTE };
  expect(await garage.refused('Runa', 'torque.make', ahead)).toMatchObject({ code: 'bad-input' });
});

test('an overdue wrench warns and stands in the record; on its last day it is in date', async () => {
  bench = await BenchJob.begun([{ do: 'Flange bolts', torque: flange }]);
  const { garage, jobId } = bench;
  const wrench = await garage.did('Desk', 'wrench.add', {
    name: 'T1',
    least: 20_000,
    most: 200_000,
    dueOn: '2026-03-09',
  });
  const make = (touch: number) => ({ jobId, step: 1, touch, wrenchId: wrench.id });
  expect(await garage.did('Runa', 'torque.make', make(0))).toMatchObject({ warning: 'wrench-overdue' });
  await garage.did('Desk', 'wrench.change', { ...wrench, change: { dueOn: '2026-03-10' } });
  expect(await garage.did('Runa', 'torque.make', make(1))).toMatchObject({ warning: '' });
  const { touches } = await garage.did('Runa', 'torque.get', { jobId, step: 1 });
  expect(touches.slice(0, 3).map(({ made }) => made && [made.wrench, made.overdue])).toEqual([
    ['T1', true],
    ['T1', false],
    null,
  ]);
  expect((await bench.order()).jobs[0]?.steps[0]).toMatchObject({ entered: 2, wrench: 'T1' });
});

test('a wrench has a span and a name of its own; one taken out leaves the list', async () => {
  bench = await BenchJob.begun([{ do: 'Look' }]);
  const { garage } = bench;
  const one = await garage.did('Desk', 'wrench.add', { name: 'T1', least: 5000, most: 60_000 });
  const fields = (error: unknown) => (error as { fields: { path: string }[] }).fields.map(({ path }) => path);
  expect(fields(await garage.refused('Desk', 'wrench.add', { name: 'T1', most: 9000 }))).toEqual(['name']);
  expect(fields(await garage.refused('Desk', 'wrench.add', { name: 'T3', least: 9000, most: 9000 }))).toEqual(['most']);
  expect(await garage.refused('Runa', 'wrench.add', { name: 'T3', most: 9000 })).toMatchObject({ code: 'not-allowed' });
  const stale = { id: one.id, revision: 7, change: { most: 70_000 } };
  expect(await garage.refused('Desk', 'wrench.change', stale)).toMatchObject({ code: 'changed-meanwhile' });
  expect((await garage.did('Runa', 'wrench.list', {})).rows).toMatchObject([
    { name: 'T1', overdue: false, dueOn: null },
  ]);
  await garage.did('Desk', 'wrench.change', { ...one, change: { takenOut: true } });
  expect((await garage.did('Runa', 'wrench.list', {})).rows).toEqual([]);
});

test('going back voids the touches of the step and of those after it', async () => {
  bench = await BenchJob.begun([
    { do: 'Flange bolts', torque: flange },
    { do: 'Caps', torque: { pattern: 'rows', count: 4, rows: [2, 2], stages: [{ Nm: 40 }] } },
    { do: 'Look' },
  ]);
  const { garage, jobId } = bench;
  await bench.make(1);
  await bench.tick(1);
  await bench.make(2, 3);
  expect(await bench.tick(1, { state: 'open' })).toEqual({ reopened: [2] });
  for (const step of [1, 2]) {
    const { made, due } = await garage.did('Runa', 'torque.get', { jobId, step });
    expect([made, due]).toEqual([0, 0]);
  }
  expect(await garage.refused('Runa', 'step.tick', { jobId, n: 1, state: 'done' })).toMatchObject({
    reasons: [{ what: 'torque-missing', with: { missing: 24 } }],
  });
});

test('a step may name what opens again with it', async () => {
  bench = await BenchJob.begun([{ do: 'One', reopens: [3] }, { do: 'Two' }, { do: 'Three' }]);
  for (const n of [1, 2, 3]) await bench.tick(n);
  expect(await bench.tick(1, { state: 'failed', why: 'seal cut; new one' })).toEqual({ reopened: [3] });
  expect((await bench.order()).jobs[0]?.steps.map(({ state }) => state)).toEqual(['failed', 'done', 'open']);
});

test('a step that is done or not needed is opened before its bolts are touched again', async () => {
  bench = await BenchJob.begun([{ do: 'Flange bolts', torque: flange }]);
  const { garage, jobId } = bench;
  await bench.tick(1, { state: 'not-needed', why: 'the flange stayed on' });
  const touch = { jobId, step: 1, touch: 0 };
  expect(await garage.refused('Runa', 'torque.make', touch)).toMatchObject({ reasons: [{ what: 'step-settled' }] });
  await bench.tick(1, { state: 'open' });
  await bench.make(1);
  await bench.tick(1);
  expect(await garage.refused('Runa', 'torque.back', touch)).toMatchObject({ code: 'bad-input' });
  expect(await garage.refused('Runa', 'torque.back', { jobId, step: 1 })).toMatchObject({
    reasons: [{ what: 'step-settled', with: { letter: 'A', step: 1 } }],
  });
});

test('a hold point stops the wrench, and a job without a yes', async () => {
  bench = await BenchJob.begun([
    { do: 'Compare', hold: 'mismatch: stop' },
    { do: 'Flange bolts', torque: flange },
  ]);
  const { garage, jobId } = bench;
  expect(await garage.refused('Runa', 'torque.make', { jobId, step: 2, touch: 0 })).toMatchObject({
    reasons: [{ what: 'hold-point', with: { step: 1 } }],
  });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId: bench.orderId, jobs: [{ jobId, answer: 'no' }], upTo: null },
    ...{ spoken: { name: 'Ilse Vandermeer', role: 'customer' }, way: 'person' },
  });
  expect(await garage.refused('Runa', 'torque.make', { jobId, step: 2, touch: 0 })).toMatchObject({
    reasons: [{ what: 'job-without-yes' }],
  });
});

test('a procedure whose holes do not add up is not taken', async () => {
  bench = await BenchJob.begun([{ do: 'Look' }]);
  const { garage } = bench;
  const save = (torque: object) =>
    garage.refused('Desk', 'jobBook.save', {
      ...{ id: null, basedOn: 0 },
      content: {
        ...{ title: 'x', bookHours: 0, sourceOfFigures: 'invented', lines: [], cautions: [] },
        steps: [{ n: 1, do: 'Bolts', torque: { stages: [{ Nm: 10 }], count: 5, ...torque } }],
      },
    });
  const problem = (problem: string) => ({ code: 'bad-input', fields: [{ problem }] });
  expect(await save({ pattern: 'pairs' })).toMatchObject(problem('even-for-pairs'));
  expect(await save({ pattern: 'rows', rows: [2, 2] })).toMatchObject(problem('rows-make-count'));
  expect(await save({ pattern: 'angles', degrees: [0, 90] })).toMatchObject(problem('angle-for-each-hole'));
  expect(await save({ pattern: 'angles', degrees: [0, 90, 90, 180, 270] })).toMatchObject(problem('same-row-twice'));
});
