import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
});
afterEach(async () => {
  await garage.end();
});

/** One covered job of 2.0 h and a part, quoted and said yes to at 312.00; then work by two people. */
async function started() {
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    mileage: 42_180,
    here: true,
  });
  const seal = await garage.did('Desk', 'part.add', {
    number: 'OS-2214',
    words: 'Output seal',
    unit: '',
    price: 1500,
    cost: 600,
    onHand: 4000,
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Reseal' },
    lines: [
      { kind: 'labour', words: 'Fit', quantity: 2000, unit: 'h', unitPrice: 10_000 },
      { kind: 'part', words: 'Output seal', partId: seal.id, quantity: 4000, unitPrice: 1500, condition: 'new' },
    ],
  });
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    quotePaperId: quote.paperId,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 31_200 },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
  });
  garage.now = at('2026-03-10T09:00');
  await garage.did('Runa', 'clock.on', { jobId: job.id });
  await garage.did('Piet', 'clock.on', { jobId: job.id });
  garage.now = at('2026-03-10T10:00');
  await garage.did('Piet', 'clock.off', {});
  garage.now = at('2026-03-10T10:30');
  await garage.did('Runa', 'clock.off', {});
  await garage.did('Runa', 'part.issue', {
    jobId: job.id,
    lineId: job.lineIds[1] ?? '',
    partId: seal.id,
    quantity: 2000,
  });
  return { id, job, seal };
}

describe('close out: the sheet against the work done', () => {
  test('quoted, used and charged of each line; hours by person; what it made', async () => {
    const { id } = await started();
    const seen = await garage.did('Odile', 'closeOut.get', { orderId: id });
    expect(seen.jobs[0]?.lines).toMatchObject([
      {
        quoted: { quantity: 2000, total: 20_000 },
        used: { quantity: 2500 },
        charge: { quantity: 2000, total: 20_000 },
      },
      { quoted: { quantity: 4000, total: 6000 }, used: { quantity: 2000 }, charge: { quantity: 4000, total: 6000 } },
    ]);
    expect(seen.jobs[0]?.hours).toMatchObject({ quoted: 2000, charged: 2000, clocked: 2500 });
    expect(seen.hours.people.map(({ name, clocked }) => [name, clocked])).toEqual([
      ['Piet', 3_600_000],
      ['Runa', 5_400_000],
    ]);
    expect(seen.totals).toMatchObject({
      quoted: 31_200,
      net: 26_000,
      tax: 5200,
      charge: 31_200,
      excess: 0,
      toPay: 31_200,
    });
    // Two seals at 6.00; 90 minutes at 28.00 and 60 at 24.00.
    expect(seen.margin).toMatchObject({ sold: 26_000, parts: 1200, stray: 0, pay: 6600, cost: 7800, profit: 18_200 });
    expect(seen.waysOut).toEqual([]);
    expect(seen.stops.map((stop) => stop.what)).toEqual(['mileage-out-missing']);
  });

  test('a job without a yes and an excess each have their ways out, and the figures come true', async () => {
    const { id, job } = await started();
    await garage.did('Desk', 'line.add', {
      jobId: job.id,
      line: { kind: 'part', words: 'Clip', quantity: 1000, unitPrice: 1000, condition: 'new' },
    });
    const extra = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Bush' },
      lines: [{ kind: 'part', words: 'Bush', quantity: 1000, unitPrice: 5000, condition: 'new' }],
    });
    const { waysOut, totals } = await garage.did('Desk', 'closeOut.get', { orderId: id });
    expect(totals).toMatchObject({ charge: 38_400, ceiling: 31_200, excess: 1200, held: 6000 });
    expect(
      waysOut.map(({ kind, mends, words, amount, after, enough, wants }) => [
        kind,
        mends,
        words,
        amount,
        after,
        enough,
        wants,
      ]),
    ).toEqual([
      ['yes', 'all', '', 7200, 38_400, true, ''],
      ['yes', 'excess', '', 1200, 32_400, true, ''],
      ['give', 'excess', 'Clip', 1200, 37_200, true, ''],
      ['give', 'excess', 'Output seal', 7200, 31_200, true, ''],
      ['give', 'excess', 'Fit', 24_000, 14_400, true, ''],
      ['give', 'excess', 'Reseal', 32_400, 6000, true, ''],
      ['yes', 'job', 'Bush', 7200, 38_400, true, ''],
      ['give', 'job', 'Bush', 6000, 32_400, true, 'owner-yes'],
      ['move', 'job', 'Bush', 6000, 32_400, true, ''],
    ]);
    const clip = waysOut.find((way) => way.words === 'Clip');
    await garage.did('Desk', 'line.give', { id: clip?.lineId ?? '', revision: 1, given: true });
    await garage.did('Desk', 'job.moveOut', { id: extra.id, revision: 1 });
    const after = await garage.did('Desk', 'closeOut.get', { orderId: id });
    expect(after.totals).toMatchObject({ charge: 31_200, excess: 0, held: 0 });
    expect(after.waysOut).toEqual([]);
  });

  test('what was issued stands on no line; a job that was worked on is not moved', async () => {
    const { id, job, seal } = await started();
    await garage.did('Runa', 'part.issue', { jobId: job.id, lineId: null, partId: seal.id, quantity: 1000 });
    await garage.did('Desk', 'line.change', { id: job.lineIds[0] ?? '', revision: 1, change: { quantity: 3000 } });
    const seen = await garage.did('Desk', 'closeOut.get', { orderId: id });
    expect(seen.onNoLine).toMatchObject([{ words: 'Output seal', letter: 'A', quantity: 1000, worth: 1500 }]);
    expect(seen.stops.map((stop) => stop.what)).toEqual(['over-the-yes', 'part-on-no-line', 'mileage-out-missing']);
    const yes = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Look' }, lines: [] });
    await garage.did('Desk', 'decision.record', {
      orderId: id,
      jobs: [{ jobId: yes.id, answer: 'yes' }],
      upTo: { plus: 0 },
      spoken: { name: 'Ilse Vandermeer', role: 'customer' },
      way: 'person',
    });
    const moves = (await garage.did('Desk', 'closeOut.get', { orderId: id })).waysOut.filter(
      (way) => way.kind === 'move',
    );
    expect(moves.map(({ words, held }) => [words, held])).toEqual([['Reseal', 'job-worked-on']]);
    expect(seen.margin).toBeNull();
  });

  test('the most that the customer wants to spend holds the invoice, and nothing but the sheet or the customer mends it', async () => {
    const { id } = await started();
    const order = await garage.did('Desk', 'order.get', { id });
    expect(order.yes).toMatchObject({ ownMaximum: null, overMaximum: 0 });
    await garage.did('Desk', 'order.change', { id, revision: order.revision, change: { ownMaximum: 30_000 } });
    expect((await garage.did('Desk', 'order.get', { id })).yes).toMatchObject({
      ownMaximum: 30_000,
      overMaximum: 1200,
    });
    expect(await garage.refused('Desk', 'invoice.issue', { orderId: id })).toMatchObject({
      code: 'held',
      reasons: expect.arrayContaining([
        { what: 'over-own-maximum', override: 'never', with: { maximum: 30_000, excess: 1200 } },
      ]),
    });
  });

  test('a mechanic is shown quantities and hours, no sums', async () => {
    const { id, job } = await started();
    await garage.did('Desk', 'line.change', { id: job.lineIds[0] ?? '', revision: 1, change: { unitPrice: 11_000 } });
    const seen = await garage.did('Runa', 'closeOut.get', { orderId: id });
    expect(seen.totals).toBeNull();
    expect(seen.margin).toBeNull();
    expect(seen.stops[0]).toEqual({ what: 'beyond-the-yes', override: 'never', with: {} });
    expect(seen.waysOut.every((way) => way.amount === null && way.after === null)).toBe(true);
    expect(await garage.refused('Runa', 'clock.on', { jobId: job.id })).toMatchObject({
      reasons: [{ what: 'beyond-the-yes', with: {} }],
    });
    expect(seen.jobs[0]).toMatchObject({ quoted: null, charge: null });
    expect(seen.jobs[0]?.lines.every((line) => line.charge.total === null && line.quoted?.total === null)).toBe(true);
    expect(seen.jobs[0]?.hours.clocked).toBe(2500);
  });
});
