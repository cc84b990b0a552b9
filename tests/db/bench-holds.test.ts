import { afterEach, expect, test } from 'vitest';
import { whenDone } from '../../db/operations/step.ts';
import { BenchJob } from './bench-job.ts';

let bench: BenchJob | null = null;
afterEach(async () => {
  await bench?.garage.end();
  bench = null;
});

const HOUR = 3_600_000;
const MINUTE = 60_000;
const problem = (path: string, problem: string) => ({ code: 'bad-input', fields: [{ path, problem }] });

test('a step that measures is done with a figure for each of its places, and no other step has one', async () => {
  const measure = { what: 'backlash', unit: 'mm', least: 0.1, most: 0.2, places: 4 };
  bench = await BenchJob.begun([{ do: 'Backlash', measure, hold: 'outside: stop' }, { do: 'Look' }]);
  const { garage, jobId } = bench;
  const tick = (n: number, reading: readonly number[]) =>
    garage.refused('Runa', 'step.tick', { jobId, n, state: 'done', reading });
  expect(await tick(1, [])).toMatchObject(problem('reading', 'too-few'));
  expect(await tick(1, [0.15, 0.15, 0.15])).toMatchObject(problem('reading', 'too-few'));
  expect(await tick(1, [0.15, 0.15, 0.15, 0.15, 0.15])).toMatchObject(problem('reading', 'too-many'));
  expect(await tick(1, [0.15, 0.15, 0.3, 0.15])).toMatchObject({ reasons: [{ what: 'measure-outside' }] });
  await bench.tick(1, { reading: [0.1, 0.2, 0.15, 0.15] });
  expect(await tick(2, [5])).toMatchObject(problem('reading', 'not-measured-here'));
  // What failed may have been read in one place only.
  await bench.tick(1, { state: 'failed', why: 'one more shim', reading: [0.3] });
});

test('bolts that were begun are not said to be not needed: they are made, or taken back', async () => {
  const torque = { pattern: 'ring' as const, count: 8, stages: [{ Nm: 40 }, { Nm: 80 }] };
  bench = await BenchJob.begun([{ do: 'Flange bolts', torque }]);
  const { garage, jobId } = bench;
  await bench.make(1, 15);
  const skip = { jobId, n: 1, state: 'not-needed' as const, why: 'the last one is hard to reach' };
  expect(await garage.refused('Runa', 'step.tick', skip)).toEqual({
    code: 'held',
    reasons: [{ what: 'torque-missing', with: { letter: 'A', step: 1, missing: 1 } }],
  });
  for (let made = 15; made > 0; made -= 1) await garage.did('Runa', 'torque.back', { jobId, step: 1 });
  await garage.did('Runa', 'step.tick', skip);
});

test('a clock that is put right lies over no other time of the same person: one job at a time', async () => {
  bench = await BenchJob.begun([{ do: 'Look' }]);
  const { garage, jobId } = bench;
  const start = garage.now;
  await garage.did('Runa', 'clock.on', { jobId });
  garage.now += HOUR;
  const { id: forgotten } = await garage.did('Odile', 'clock.forgotten', {
    personId: garage.people.get('Runa') ?? '',
  });
  await garage.did('Runa', 'clock.on', { jobId });
  garage.now += HOUR;
  const correct = (off: number) => ({ entryId: forgotten, on: start, off, jobId, why: 'Forgot to clock off.' });
  // The clock that runs began an hour after the forgotten one.
  expect(await garage.refused('Odile', 'clock.correct', correct(start + HOUR + 1))).toMatchObject(
    problem('off', 'over-another'),
  );
  await garage.did('Runa', 'clock.off', {});
  expect(await garage.refused('Odile', 'clock.correct', correct(start + HOUR + 1))).toMatchObject(
    problem('on', 'over-another'),
  );
  const ahead = correct(garage.now + 1);
  expect(await garage.refused('Odile', 'clock.correct', ahead)).toMatchObject(problem('off', 'in-the-future'));
  const first = await garage.did('Odile', 'clock.correct', correct(start + HOUR));
  // Once it was put right, the correction is what is put right next.
  const again = await garage.refused('Odile', 'clock.correct', correct(start + HOUR / 2));
  expect(again).toMatchObject(problem('entryId', 'corrected-already'));
  // What it takes the place of does not stand in its own way, nor does somebody else's time.
  await garage.did('Piet', 'clock.on', { jobId });
  const shorter = { ...correct(start + HOUR / 2), entryId: first.id };
  await garage.did('Odile', 'clock.correct', shorter);
  expect((await bench.order()).jobs[0]?.clockedMinutes).toBe(90);
});

test('what is keyed in more than a minute later is late; a clock a little ahead is now', () => {
  const now = Date.parse('2026-03-10T09:00Z');
  expect(whenDone({ now }, null)).toEqual({ at: now, late: false });
  expect(whenDone({ now }, now - MINUTE)).toEqual({ at: now - MINUTE, late: false });
  expect(whenDone({ now }, now - MINUTE - 1)).toEqual({ at: now - MINUTE - 1, late: true });
  expect(whenDone({ now }, now + 5 * MINUTE)).toEqual({ at: now, late: false });
  expect(() => whenDone({ now }, now + 5 * MINUTE + 1)).toThrow();
});

test('bolts that failed hold the invoice until the step is ticked, however many were made anew', async () => {
  const torque = { pattern: 'ring' as const, count: 4, stages: [{ Nm: 40 }] };
  bench = await BenchJob.begun([{ do: 'Flange bolts', torque }]);
  await bench.make(1);
  await bench.tick(1, { state: 'failed', why: 'a thread pulled; insert' });
  await bench.make(1);
  const missing = async () => (await bench?.order())?.stops.filter(({ what }) => what === 'torque-missing');
  expect(await missing()).toMatchObject([{ with: { step: 1, missing: 4 } }]);
  await bench.tick(1);
  expect(await missing()).toEqual([]);
});
