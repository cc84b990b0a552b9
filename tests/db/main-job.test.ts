import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.end();
});

const book = () =>
  garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer', phone: '555-0142', address: ['8 Tollgate Lane', 'Port Ansel'] } },
    car: { add: { plate: 'KTB 4471', vin: 'CRWNWHEE8L0000417', words: 'Corvane R', year: 2016, unit: 'km' } },
    complaint: 'It whines from the back over fifty.',
    mileage: 42_180,
    here: true,
  });

const SWAP = [
  { kind: 'labour', words: 'Remove and fit', quantity: 4500, unit: 'h', unitPrice: 9600 },
  {
    kind: 'part',
    words: 'Rebuilt differential, exchange',
    condition: 'rebuilt',
    quantity: 1000,
    unitPrice: 145_000,
    unitCost: 115_000,
  },
  { kind: 'part', words: 'Axle nut, used once', condition: 'new', quantity: 2000, unitPrice: 1450 },
  { kind: 'part', words: 'Flange bolt, used once', condition: 'new', quantity: 8000, unitPrice: 320 },
  { kind: 'fluid', words: 'Gear oil', quantity: 1350, unit: 'L', unitPrice: 2400 },
  { kind: 'part', words: 'Output seal', condition: 'new', quantity: 2000, unitPrice: 1875 },
  { kind: 'outside', words: 'Fluid lab', quantity: 1000, unitPrice: 3500, unitCost: 2800 },
  { kind: 'fee', words: 'Used oil', quantity: 1000, unitPrice: 400 },
  { kind: 'core', words: 'Core deposit', quantity: 1000, unitPrice: 35_000 },
] as const;

describe('a car comes in and leaves paid', () => {
  // Figures: scenarios T01, T11, T15 and T45's deposit (tests/trade/scenarios.json).
  test('from the intake to the paid invoice, held where there is no yes', async () => {
    const { id, number } = await book();
    expect(number).toBe(1187);
    const swap = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Swap the differential' },
      lines: [...SWAP],
    });
    let order = await garage.did('Desk', 'order.get', { id });
    expect(order.sums).toMatchObject({ net: 241_710, tax: 48_342, gross: 290_052, supplies: 2160 });
    expect(order.yes).toMatchObject({ ceiling: 0, onSheet: 290_052, inside: false });
    expect(order.next.what).toBe('write-up-quote');

    expect(await garage.refused('Runa', 'clock.on', { jobId: swap.id })).toMatchObject({
      code: 'held',
      reasons: [{ what: 'job-without-yes' }],
    });
    const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
    expect(quote).toMatchObject({ number: 300, version: 1, gross: 290_052 });
    await garage.did('Desk', 'decision.record', {
      orderId: id,
      quotePaperId: quote.paperId,
      jobs: [{ jobId: swap.id, answer: 'yes' }],
      upTo: { total: 290_052 },
      spoken: { name: 'Ilse Vandermeer', role: 'customer' },
      way: 'message',
      reached: 'ilse@example.invalid',
      words: 'Yes, go ahead.',
    });
    await garage.did('Desk', 'payment.take', { orderId: id, kind: 'deposit', way: 'card', amount: 50_000 });

    garage.now = at('2026-03-10T08:40');
    await garage.did('Runa', 'clock.on', { jobId: swap.id });
    await garage.did('Piet', 'clock.on', { jobId: swap.id });
    await garage.did('Runa', 'finding.add', { orderId: id, text: 'Front mount bush torn.', urgency: 'soon' });
    const bush = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Front mount bush' },
      lines: [
        {
          kind: 'labour',
          words: 'Fit',
          quantity: 0,
          unit: 'h',
          unitPrice: 9600,
          billing: 'book',
          book: 800,
          overlap: 300,
          overlapJobId: swap.id,
        },
        { kind: 'part', words: 'Bush', condition: 'new', quantity: 1000, unitPrice: 6400, unitCost: 3600 },
      ],
    });
    order = await garage.did('Desk', 'order.get', { id });
    expect(order.sums?.gross).toBe(303_780);
    expect(order.yes).toMatchObject({ ceiling: 290_052, heldSum: 13_728, inside: false });
    expect(await garage.refused('Runa', 'clock.on', { jobId: bush.id })).toMatchObject({ code: 'held' });
    expect(await garage.refused('Desk', 'invoice.issue', { orderId: id })).toMatchObject({ code: 'held' });
    const yes = await garage.did('Desk', 'decision.record', {
      orderId: id,
      jobs: [{ jobId: bush.id, answer: 'yes' }],
      upTo: { plus: 13_728 },
      spoken: { name: 'Ilse Vandermeer', role: 'customer' },
      way: 'phone',
      reached: '555-0142',
    });
    expect(yes.ceiling).toBe(303_780);

    garage.now = at('2026-03-10T10:30');
    await garage.did('Piet', 'clock.off', {});
    garage.now = at('2026-03-10T10:50');
    await garage.did('Runa', 'clock.on', { jobId: bush.id });
    expect(await garage.refused('Desk', 'invoice.issue', { orderId: id })).toMatchObject({
      reasons: expect.arrayContaining([expect.objectContaining({ what: 'clock-open' })]),
    });
    garage.now = at('2026-03-10T11:25');
    await garage.did('Runa', 'clock.off', {});
    order = await garage.did('Desk', 'order.get', { id });
    expect(order.jobs.map((job) => job.clockedMinutes)).toEqual([240, 35]);
    await garage.did('Desk', 'order.mileageOut', { id, revision: order.revision, mileage: 42_196 });
    const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id });
    expect(invoice).toMatchObject({ number: 1045, gross: 303_780, toPay: 253_780 });
    expect(await garage.refused('Desk', 'line.add', { jobId: swap.id, line: SWAP[0] })).toMatchObject({
      reasons: [{ what: 'invoiced' }],
    });

    const part = await garage.did('Desk', 'payment.take', {
      orderId: id,
      kind: 'payment',
      way: 'card',
      amount: 100_000,
    });
    expect(part.balance).toBe(153_780);
    const rest = await garage.did('Desk', 'payment.take', {
      orderId: id,
      kind: 'payment',
      way: 'cash',
      amount: 153_780,
    });
    expect(rest).toMatchObject({ balance: 0, handed: 153_780 });
    const pdf = await garage.did('Desk', 'paper.read', { id: invoice.paperId });
    expect(Buffer.from(pdf.base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-');

    await garage.reopen();
    const verified = await garage.did('Odile', 'care.verify', {});
    expect(verified.faults).toEqual([]);
    expect((await garage.did('Desk', 'order.get', { id })).balance).toBe(0);
  });

  test('T16: a credit note for oil that was not used leaves the invoice as issued', async () => {
    const { id } = await book();
    const job = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Oil' },
      lines: [{ kind: 'fluid', words: 'Gear oil', quantity: 2000, unit: 'L', unitPrice: 2400 }],
    });
    await garage.did('Desk', 'decision.record', {
      orderId: id,
      jobs: [{ jobId: job.id, answer: 'yes' }],
      upTo: { total: 5760 },
      spoken: { name: 'Ilse Vandermeer', role: 'customer' },
      way: 'person',
    });
    const order = await garage.did('Desk', 'order.get', { id });
    await garage.did('Desk', 'order.mileageOut', { id, revision: order.revision, mileage: 42_180 });
    const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id });
    expect(invoice.gross).toBe(5760);
    const credit = await garage.did('Desk', 'creditNote.issue', {
      invoicePaperId: invoice.paperId,
      reason: '1.350 L was used',
      lines: [{ lineId: job.lineIds[0] ?? '', quantity: 650 }],
    });
    expect(credit).toMatchObject({ net: 1560, tax: 312, gross: 1872 });
    expect((await garage.did('Desk', 'order.get', { id })).balance).toBe(3888);
  });

  test('T41: the second save from an old revision is refused, both values come back, a fresh one is taken', async () => {
    const { id } = await book();
    const job = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Look' },
      lines: [{ kind: 'labour', words: 'Look', quantity: 800, unitPrice: 12_800 }],
    });
    const lineId = job.lineIds[0] ?? '';
    await garage.did('Odile', 'line.change', { id: lineId, revision: 1, change: { quantity: 900 } });
    const refused = await garage.refused('Desk', 'line.change', {
      id: lineId,
      revision: 1,
      change: { quantity: 1000 },
    });
    expect(refused).toMatchObject({
      code: 'changed-meanwhile',
      revision: 2,
      now: { quantity: 900 },
      yours: { quantity: 1000 },
    });
    expect(await garage.did('Desk', 'line.change', { id: lineId, revision: 2, change: { quantity: 1000 } })).toEqual({
      id: lineId,
      revision: 3,
    });
  });

  test('the same request twice is applied once and answers the same', async () => {
    const { id } = await book();
    const request = '01900000-0000-7000-8000-000000000001';
    const once = await garage.did('Runa', 'finding.add', { orderId: id, text: 'Leak' }, request);
    expect(await garage.did('Runa', 'finding.add', { orderId: id, text: 'Leak' }, request)).toEqual(once);
    expect((await garage.did('Desk', 'order.get', { id })).findings).toHaveLength(1);
  });

  test('a mechanic is shown no prices', async () => {
    const { id } = await book();
    await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Swap' }, lines: [...SWAP] });
    const seen = await garage.did('Runa', 'order.get', { id });
    expect(seen.sums).toBeNull();
    expect(
      seen.jobs[0]?.lines.every((line) => line.unitPrice === null && line.amount === null && line.unitCost === null),
    ).toBe(true);
    expect(seen.yes).toEqual({
      unwritten: null,
      inside: false,
      held: [{ jobId: seen.jobs[0]?.id, letter: 'A', title: 'Swap' }],
    });
  });

  test('a change leaves alone what it does not name', async () => {
    const { id, customerId, carId } = await book();
    const job = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Menu service', fixedPrice: 5000, note: 'as agreed' },
      lines: [
        {
          kind: 'labour',
          words: 'Fit',
          quantity: 100,
          unitPrice: 9600,
          discount: { bp: 1000 },
          billing: 'book',
          book: 800,
        },
      ],
    });
    await garage.did('Desk', 'job.change', { id: job.id, revision: 1, change: { note: 'again' } });
    await garage.did('Desk', 'line.change', { id: job.lineIds[0] ?? '', revision: 1, change: { unitPrice: 9000 } });
    const order = await garage.did('Desk', 'order.get', { id });
    expect(order.jobs[0]).toMatchObject({ fixedPrice: 5000, note: 'again', title: 'Menu service' });
    expect(order.jobs[0]?.lines[0]).toMatchObject({
      discount: { bp: 1000 },
      billing: 'book',
      book: 800,
      unitPrice: 9000,
    });
    await garage.did('Desk', 'customer.change', { id: customerId, revision: 1, change: { note: 'rings back' } });
    expect((await garage.did('Desk', 'customer.get', { id: customerId })).fields).toMatchObject({
      phone: '555-0142',
      address: ['8 Tollgate Lane', 'Port Ansel'],
      note: 'rings back',
    });
    await garage.did('Desk', 'car.change', { id: carId, revision: 1, change: { axleCode: 'R7' } });
    expect((await garage.did('Desk', 'car.get', { id: carId })).fields).toMatchObject({
      plate: 'KTB 4471',
      year: 2016,
      axleCode: 'R7',
    });
  });
});
