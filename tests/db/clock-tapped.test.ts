import { afterEach, describe, expect, test } from 'vitest';
import { BenchJob } from './bench-job.ts';

const MINUTE = 60_000;

let job: BenchJob | undefined;
afterEach(() => job?.garage.end());

async function begun() {
  job = await BenchJob.begun([{ do: 'Lift' }]);
  return job;
}

describe('a clock that was tapped while the shop was out of reach', () => {
  test('runs from when it was tapped, and ends when it was tapped', async () => {
    const { garage, jobId, orderId } = await begun();
    const tapped = garage.now;
    garage.now += 30 * MINUTE;
    await garage.did('Runa', 'clock.on', { jobId, at: tapped });
    const off = tapped + 20 * MINUTE;
    await garage.did('Runa', 'clock.off', { at: off });
    const { clocks } = await garage.did('Desk', 'order.get', { id: orderId });
    expect(clocks.map((entry) => [entry.on, entry.off])).toEqual([[tapped, off]]);
  });

  test('is never of a time to come, before it began, or before the last one ended', async () => {
    const { garage, jobId } = await begun();
    const start = garage.now;
    await garage.did('Runa', 'clock.on', { jobId });
    garage.now += 10 * MINUTE;
    expect(await garage.refused('Runa', 'clock.off', { at: garage.now + 1 })).toMatchObject({ code: 'bad-input' });
    expect(await garage.refused('Runa', 'clock.off', { at: start - 1 })).toMatchObject({
      code: 'held',
      reasons: [{ what: 'clock-before-last' }],
    });
    await garage.did('Runa', 'clock.off', {});
    expect(await garage.refused('Runa', 'clock.on', { jobId, at: garage.now - 1 })).toMatchObject({
      code: 'held',
      reasons: [{ what: 'clock-before-last' }],
    });
    await garage.did('Runa', 'clock.on', { jobId, at: garage.now });
  });
});
