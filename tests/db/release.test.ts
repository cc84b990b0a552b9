import { afterEach, describe, expect, test } from 'vitest';
import type { InputOf } from '../../core/contract/index.ts';
import { BenchJob, type BookStep } from './bench-job.ts';

let bench: BenchJob | null = null;
afterEach(async () => {
  await bench?.garage.end();
  bench = null;
});
const begun = async (steps: readonly Omit<BookStep, 'n'>[]) => {
  bench = await BenchJob.begun(steps);
  return bench;
};
const heldBy = (what: string) => ({ code: 'held', reasons: [{ what }] });
const bolts = { pattern: 'free' as const, count: 2, stages: [{ Nm: 90 }] };

describe('the second person is another person', () => {
  test('who signs has a code of their own and neither did the step nor tightened it', async () => {
    const here = await begun([{ do: 'Mount bolts', second: 'signs', torque: bolts }]);
    const { garage, jobId } = here;
    await garage.did('Runa', 'torque.make', { jobId, step: 1, touch: 0, count: 2 });
    const done = { jobId, n: 1, state: 'done' };
    const runa = { personId: garage.people.get('Runa'), code: 'runa-code' };
    expect(await garage.refused('Runa', 'step.tick', done)).toMatchObject(heldBy('second-missing'));
    expect(await garage.refused('Runa', 'step.tick', { ...done, second: runa })).toMatchObject(
      heldBy('second-is-first'),
    );
    // Piet ticks, and lets her who tightened the bolts sign.
    expect(await garage.refused('Piet', 'step.tick', { ...done, second: runa })).toMatchObject(
      heldBy('second-is-first'),
    );
    const wrong = { ...here.piet, code: 'runa-code' };
    expect(await garage.refused('Runa', 'step.tick', { ...done, second: wrong })).toMatchObject({
      code: 'not-allowed',
    });
  });

  test('a signature that is missing holds the invoice until somebody else has signed', async () => {
    const here = await begun([{ do: 'Caliper bolts', second: 'signs' }]);
    const missing = { what: 'second-missing', override: 'owner', with: { letter: 'A', step: 1 } };
    expect((await here.order()).stops).toContainEqual(missing);
    await here.tick(1, { second: here.piet });
    const { stops, jobs } = await here.order();
    expect(stops.map((stop) => stop.what)).toEqual(['mileage-out-missing']);
    expect(jobs[0]?.steps[0]).toMatchObject({ by: 'Runa', secondBy: 'Piet' });
    await here.tick(1, { state: 'open' });
    expect((await here.order()).stops).toContainEqual(missing);
  });

  test('what somebody else does is not done by who did the work, not even with another state before it', async () => {
    const here = await begun([{ do: 'Fit' }, { do: 'Drive it', second: 'does it' }]);
    const { garage, jobId } = here;
    await here.tick(1);
    const drive = { jobId, n: 2, state: 'done' };
    expect(await garage.refused('Runa', 'step.tick', drive)).toMatchObject(heldBy('other-does-it'));
    expect((await here.order()).stops).toContainEqual({
      ...{ what: 'second-missing', override: 'owner', with: { letter: 'A', step: 2 } },
    });
    await garage.did('Piet', 'step.tick', { jobId, n: 2, state: 'done' });
    expect((await here.order()).stops.map((stop) => stop.what)).toEqual(['mileage-out-missing']);
  });
});

describe('done, not needed, failed', () => {
  test('a measure outside its limits is no done step; what failed at a hold point holds the invoice', async () => {
    const measure = { what: 'backlash', unit: 'mm', least: 0.13, most: 0.18, places: 4 };
    const here = await begun([{ do: 'Backlash at four places', hold: 'outside: stop', measure }]);
    const { garage, jobId } = here;
    const outside = { jobId, n: 1, state: 'done', reading: [0.14, 0.15, 0.19, 0.14] };
    expect(await garage.refused('Runa', 'step.tick', outside)).toEqual({
      code: 'held',
      reasons: [{ what: 'measure-outside', with: { what: 'backlash', least: 0.13, most: 0.18 } }],
    });
    expect(await garage.refused('Runa', 'step.tick', { ...outside, state: 'failed' })).toMatchObject({
      code: 'bad-input',
      fields: [{ path: 'why', problem: 'needed' }],
    });
    await here.tick(1, { state: 'failed', why: 'shim on the left', reading: outside.reading });
    expect((await here.order()).stops).toContainEqual({
      ...{ what: 'step-failed', override: 'owner', with: { letter: 'A', step: 1 } },
    });
    await here.tick(1, { reading: [0.14, 0.15, 0.18, 0.13] });
    const { stops, jobs } = await here.order();
    expect(stops.map((stop) => stop.what)).toEqual(['mileage-out-missing']);
    expect(jobs[0]?.steps[0]?.reading).toEqual([0.14, 0.15, 0.18, 0.13]);
  });

  test('bolts or a signature that a mechanic leaves out hold the invoice until the owner says so; a washer does not', async () => {
    const here = await begun([
      { do: 'Mount bolts', torque: bolts },
      { do: 'Caliper', second: 'signs' },
      { do: 'Wipe' },
    ]);
    const none = { state: 'not-needed', why: 'not taken off' } as const;
    await here.tick(1, none);
    await here.tick(2, none);
    await here.tick(3, none);
    const leftOut = (step: number) => ({ what: 'step-not-needed', override: 'owner', with: { letter: 'A', step } });
    expect((await here.order()).stops).toEqual(expect.arrayContaining([leftOut(1), leftOut(2)]));
    expect((await here.order()).stops).toHaveLength(3);
    for (const n of [1, 2]) await here.garage.did('Odile', 'step.tick', { jobId: here.jobId, n, ...none });
    expect((await here.order()).stops.map((stop) => stop.what)).toEqual(['mileage-out-missing']);
  });

  test('a tick keyed in later from paper says so, with who keyed it in; none is of an hour to come', async () => {
    const here = await begun([{ do: 'Fit' }]);
    const hour = 3_600_000;
    const ahead = { jobId: here.jobId, n: 1, state: 'done', at: here.garage.now + hour };
    expect(await here.garage.refused('Runa', 'step.tick', ahead)).toMatchObject({ code: 'bad-input' });
    await here.garage.did('Desk', 'step.tick', { jobId: here.jobId, n: 1, state: 'done', at: here.garage.now - hour });
    expect((await here.order()).jobs[0]?.steps[0]).toMatchObject({
      lateBy: 'Desk',
      at: here.garage.now - hour,
    });
  });
});

describe('do not release', () => {
  test('a car in quarantine is neither handed over nor billed until the owner lifts it with a reason', async () => {
    const here = await begun([{ do: 'Fit' }]);
    const { garage, orderId } = here;
    await garage.did('Runa', 'order.mileageOut', { id: orderId, revision: 1, mileage: 42_190 });
    await here.tick(1);
    const set = await garage.did('Runa', 'quarantine.set', { orderId, what: 'car', words: 'Hub hot after the drive' });
    const stop = { what: 'quarantine', with: { words: 'Hub hot after the drive' } };
    const { revision, stops } = await here.order();
    expect(stops).toEqual([{ ...stop, override: 'owner' }]);
    const away = { id: orderId, revision, to: 'Ilse Vandermeer' };
    for (const who of ['Desk', 'Odile'])
      expect(await garage.refused(who, 'order.handOver', away)).toEqual({ code: 'held', reasons: [stop] });
    expect(await garage.refused('Odile', 'invoice.issue', { orderId })).toMatchObject({ reasons: [stop] });
    const lift = { ...set, why: 'Bearing changed, driven again' };
    expect(await garage.refused('Desk', 'quarantine.lift', lift)).toMatchObject({ code: 'not-allowed' });
    expect(await garage.refused('Odile', 'quarantine.lift', { ...lift, why: '' })).toMatchObject({ code: 'bad-input' });
    await garage.did('Odile', 'quarantine.lift', lift);
    expect(await garage.refused('Odile', 'quarantine.lift', lift)).toMatchObject({ code: 'bad-input' });
    const { quarantines } = await garage.did('Runa', 'release.get', { orderId });
    expect(quarantines).toMatchObject([{ by: 'Runa', lifted: { by: 'Odile', why: 'Bearing changed, driven again' } }]);
    await garage.did('Desk', 'order.handOver', away);
  });

  test('a part in quarantine goes into no job until it is lifted; into the waste it goes', async () => {
    const { garage, jobId, orderId } = await begun([{ do: 'Fit' }]);
    const part = await garage.did('Desk', 'part.add', {
      ...{ number: 'HB-7', words: 'Hub', unit: '', price: 9000, cost: 4000, onHand: 3000 },
    });
    const set = await garage.did('Runa', 'quarantine.set', {
      ...{ orderId, what: 'part', partId: part.id, words: 'Cracked in its box' },
    });
    const drawn = { jobId, lineId: null, partId: part.id, quantity: 1000 };
    expect(await garage.refused('Runa', 'part.issue', drawn)).toMatchObject({
      code: 'held',
      reasons: [{ what: 'quarantine', with: { words: 'Cracked in its box' } }],
    });
    await garage.did('Runa', 'part.issue', { ...drawn, waste: true });
    await garage.did('Odile', 'quarantine.lift', { id: set.id, revision: set.revision, why: 'The others are sound' });
    await garage.did('Runa', 'part.issue', drawn);
  });

  test('a part in quarantine holds the invoice and not the car; the owner’s reason is printed', async () => {
    const here = await begun([{ do: 'Fit' }]);
    const { garage, orderId } = here;
    await garage.did('Runa', 'order.mileageOut', { id: orderId, revision: 1, mileage: 42_190 });
    await garage.did('Runa', 'quarantine.set', { orderId, what: 'part', words: 'Wrong ratio' });
    const overrides = [{ what: 'quarantine', reason: 'Goes back to the supplier' }];
    expect(await garage.refused('Desk', 'invoice.issue', { orderId, overrides })).toMatchObject({
      code: 'not-allowed',
    });
    await garage.did('Odile', 'invoice.issue', { orderId, overrides });
    const { revision } = await here.order();
    await garage.did('Desk', 'order.handOver', { id: orderId, revision, to: 'Ilse Vandermeer' });
  });
});

describe('the test drive', () => {
  const drive = (orderId: string, more: Partial<InputOf<'testDrive.record'>> = {}) => ({
    ...{ orderId, out: 42_184, in: 42_196, outcome: 'fine' as const, ...more },
  });

  test('is somebody else’s, by the odometer out and in, which only goes up', async () => {
    const here = await begun([{ do: 'Fit' }]);
    const { garage, orderId, jobId } = here;
    await garage.did('Runa', 'testDrive.record', drive(orderId, { purpose: 'confirm', out: 42_180, in: 42_184 }));
    await here.tick(1);
    expect(await garage.refused('Runa', 'testDrive.record', drive(orderId, { jobId }))).toMatchObject(
      heldBy('by-other'),
    );
    expect(await garage.refused('Piet', 'testDrive.record', drive(orderId, { in: 42_183 }))).toMatchObject({
      fields: [{ path: 'in', problem: 'too-little', with: { least: 42_184 } }],
    });
    expect(await garage.refused('Piet', 'testDrive.record', drive(orderId, { out: 42_182 }))).toMatchObject(
      heldBy('mileage-lower'),
    );
    await garage.did('Piet', 'testDrive.record', drive(orderId));
    const { drives, doers } = await garage.did('Desk', 'release.get', { orderId });
    expect(drives.map((one) => [one.purpose, one.by, one.out, one.in])).toEqual([
      ['confirm', 'Runa', 42_180, 42_184],
      ['check', 'Piet', 42_184, 42_196],
    ]);
    expect(doers.map(({ name }) => name)).toEqual(['Runa']);
    expect((await here.order()).lastMileage).toBe(42_196);
  });

  test('without a procedure it is for whoever did not clock on', async () => {
    const { garage, orderId, jobId } = await begun([]);
    await garage.did('Runa', 'clock.on', { jobId });
    expect(await garage.refused('Runa', 'testDrive.record', drive(orderId))).toMatchObject(heldBy('by-other'));
    await garage.did('Desk', 'testDrive.record', drive(orderId));
  });

  test('what is found becomes a finding that Today wants priced; what is not released, a quarantine', async () => {
    const here = await begun([{ do: 'Fit' }]);
    const { garage, orderId, jobId } = here;
    await garage.did('Runa', 'clock.on', { jobId });
    await here.tick(1);
    await garage.did('Runa', 'clock.off', {});
    expect(await garage.refused('Piet', 'testDrive.record', drive(orderId, { outcome: 'found' }))).toMatchObject({
      fields: [{ path: 'words', problem: 'needed' }],
    });
    expect((await here.order()).next.what).toBe('close-out');
    await garage.did('Piet', 'testDrive.record', drive(orderId, { outcome: 'found', words: 'Mount knocks' }));
    const { findings, next } = await here.order();
    expect(findings).toMatchObject([{ text: 'Mount knocks', urgency: 'soon', by: 'Piet' }]);
    expect(next).toMatchObject({ whose: 'ours', what: 'price-finding', with: { findings: 1 } });
    const last = drive(orderId, { out: 42_196, in: 42_197, outcome: 'not-released', words: 'Howls and gets hot' });
    const { quarantineId } = await garage.did('Piet', 'testDrive.record', last);
    expect((await garage.did('Desk', 'release.get', { orderId })).quarantines).toMatchObject([
      { id: quarantineId, what: 'car', words: 'Howls and gets hot', lifted: null },
    ]);
  });
});

test('a final list that the job wants is gone through by somebody else before the invoice', async () => {
  const here = await begun([{ do: 'Fit' }]);
  const { garage, orderId } = here;
  const list = await garage.did('Desk', 'checkList.add', {
    ...{ title: 'Before it leaves', kind: 'final', items: [{ words: 'Lamps' }, { words: 'No leaks' }] },
  });
  const { rows } = await garage.did('Desk', 'jobBook.list', {});
  const book = rows.find((row) => row.title === 'Invented job');
  const { content, version } = await garage.did('Desk', 'jobBook.get', { id: book?.id ?? '' });
  await garage.did('Desk', 'jobBook.save', {
    ...{ id: book?.id ?? '', basedOn: version, content: { ...content, finalCheckId: list.id } },
  });
  const job = await garage.did('Desk', 'job.fromBook', { orderId, bookJobId: book?.id ?? '' });
  await here.yes(job.id);
  await garage.did('Runa', 'step.tick', { jobId: job.id, n: 1, state: 'done' });
  const wanted = { what: 'final-check-missing', override: 'owner', with: { letter: 'B' } };
  expect((await here.order()).stops).toContainEqual(wanted);
  const answers = [0, 1].map((item) => ({ item, seen: 'fine' as const }));
  const done = { orderId, checkListId: list.id, answers };
  expect(await garage.refused('Runa', 'check.record', done)).toMatchObject(heldBy('by-other'));
  await garage.did('Piet', 'check.record', done);
  expect((await here.order()).stops).not.toContainEqual(wanted);
  expect((await garage.did('Desk', 'release.get', { orderId })).finalChecks).toMatchObject([
    { letter: 'B', title: 'Before it leaves', done: { by: 'Piet' } },
  ]);
});
