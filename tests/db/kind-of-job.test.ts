import { afterEach, beforeEach, expect, test } from 'vitest';
import { BenchJob } from './bench-job.ts';

// Warranty, goodwill and internal work is the owner's to say yes to; charged work is the customer's. A yes of the one
// does not carry over when the job becomes the other.
let bench: BenchJob;
beforeEach(async () => {
  bench = await BenchJob.begun([{ do: 'Fit' }]);
});
afterEach(() => bench.garage.end());

const become = async (kind: 'charged' | 'warranty' | 'goodwill' | 'internal') => {
  const { jobs } = await bench.order();
  const revision = jobs[0]?.revision ?? 0;
  await bench.garage.did('Desk', 'job.change', { id: bench.jobId, revision, change: { kind } });
};
const ownersYes = () =>
  bench.garage.did('Odile', 'decision.record', {
    ...{ orderId: bench.orderId, jobs: [{ jobId: bench.jobId, answer: 'yes' }], upTo: { total: 0 } },
    ...{ spoken: { name: 'Odile', role: 'owner' }, way: 'person' },
  });
const held = { what: 'job-without-yes', with: { letter: 'A' } };

test.each(['warranty', 'goodwill', 'internal'] as const)(
  'a job that a customer said yes to waits for the owner once it is %s',
  async (kind) => {
    const { garage, jobId, orderId } = bench;
    await become(kind);
    const { yes, jobs, stops } = await bench.order();
    expect(yes.held.map((one) => one.letter)).toEqual(['A']);
    expect(jobs[0]).toMatchObject({ kind, covered: false, amount: 0 });
    expect(stops).toContainEqual({ ...held, override: 'never' });
    for (const [operation, input] of [
      ['clock.on', { jobId }],
      ['step.tick', { jobId, n: 1, state: 'done' }],
      ['invoice.issue', { orderId, overrides: [{ what: 'job-without-yes', reason: 'He said so' }] }],
    ] as const)
      expect(await garage.refused('Odile', operation, input)).toMatchObject({
        code: 'held',
        reasons: expect.arrayContaining([expect.objectContaining(held)]),
      });
    await ownersYes();
    expect((await bench.order()).jobs[0]?.covered).toBe(true);
    await garage.did('Runa', 'clock.on', { jobId });
  },
);

test('back to charged, the customer’s own yes is wanted again', async () => {
  await become('warranty');
  await ownersYes();
  await become('charged');
  expect((await bench.order()).jobs[0]?.covered).toBe(false);
  await bench.yes(bench.jobId);
  expect((await bench.order()).jobs[0]?.covered).toBe(true);
});

test('a job that is changed and changed back before anybody answered keeps its yes', async () => {
  await become('goodwill');
  await become('charged');
  expect((await bench.order()).jobs[0]?.covered).toBe(true);
});

test('charged work that is given keeps the customer’s yes', async () => {
  const { jobs } = await bench.order();
  await bench.garage.did('Desk', 'job.give', { id: bench.jobId, revision: jobs[0]?.revision ?? 0, given: true });
  expect((await bench.order()).jobs[0]?.covered).toBe(true);
});

test('a finding made at work that is no job yet is the next thing, until it is one or only wants watching', async () => {
  const { garage, orderId, jobId } = bench;
  await garage.did('Desk', 'finding.add', { orderId, text: 'Rusty clip' });
  garage.now += 60_000;
  await garage.did('Runa', 'clock.on', { jobId });
  garage.now += 60_000;
  expect((await bench.order()).next.what).toBe('work-goes-on');
  await garage.did('Runa', 'finding.add', { orderId, text: 'Hose rubs', urgency: 'watch' });
  expect((await bench.order()).next.what).toBe('work-goes-on');
  const { id: findingId } = await garage.did('Runa', 'finding.add', { orderId, text: 'Torn bush' });
  expect((await bench.order()).next).toMatchObject({ whose: 'ours', what: 'price-finding', with: { findings: 1 } });
  await garage.did('Desk', 'job.add', { orderId, job: { title: 'Fit a bush' }, findingId });
  expect((await bench.order()).next.what).toBe('work-goes-on');
});
