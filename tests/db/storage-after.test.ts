import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
});
afterEach(async () => {
  await garage.end();
});

/** T39: told ready on 10 March, three free working days, 15.00 a day, tax 20 %; its invoice is made on 15 March. */
async function invoiced(more: { ownMaximum?: number; chargeFirst?: boolean } = {}) {
  garage.now = at('2026-03-09T08:00');
  const { id, customerId, number } = await garage.did('Desk', 'order.book', {
    ...{ customer: { add: { name: 'Ansel Pell' } }, car: { add: { plate: 'A 1', words: 'Corvane R', unit: 'km' } } },
    ...{ complaint: 'It whines.', here: true, ownMaximum: more.ownMaximum ?? null },
    door: { storageTold: true, storage: { perDay: 1500, freeWorkingDays: 3 } },
  });
  const work = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Whine' },
    lines: [{ kind: 'labour', words: 'Mend', quantity: 1000, unitPrice: 10_000 }],
  });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId: id, jobs: [{ jobId: work.id, answer: 'yes' }], upTo: { total: 12_000 } },
    ...{ spoken: { name: 'Ansel Pell', role: 'customer' }, way: 'person' },
  });
  garage.now = at('2026-03-10T16:00');
  await garage.did('Desk', 'message.record', {
    ...{ customerId, orderId: id, about: 'ready', way: 'mail', reached: true, words: 'Ready' },
  });
  garage.now = at('2026-03-15T10:00');
  if (more.chargeFirst ?? true) await garage.did('Desk', 'storage.charge', { orderId: id });
  await garage.did('Desk', 'invoice.issue', { orderId: id });
  return { id, customerId, number };
}
const order = (id: string) => garage.did('Desk', 'order.get', { id });
const storage = (orderId: string) => garage.did('Desk', 'storage.get', { orderId });

describe('a car that is left standing after its invoice', () => {
  test('no day after it was fetched is charged, none that is to come, and a fee is not moved to another visit', async () => {
    const { id } = await invoiced();
    garage.now = at('2026-03-18T09:00');
    const ahead = { orderId: id, until: '2026-03-20' };
    expect(await garage.refused('Desk', 'storage.charge', ahead)).toMatchObject({
      fields: [{ path: 'until', problem: 'in-the-future' }],
    });
    const charged = await garage.did('Desk', 'storage.charge', { orderId: id });
    const job = (await order(charged.orderId)).jobs[0];
    expect(await garage.refused('Desk', 'job.moveOut', { id: job?.id, revision: job?.revision })).toMatchObject({
      reasons: [{ what: 'storage-stays' }],
    });
    await garage.did('Desk', 'order.handOver', { id, revision: (await order(id)).revision, to: 'Ansel Pell' });
    garage.now = at('2026-03-25T09:00');
    expect(await garage.did('Desk', 'storage.get', { orderId: id, on: '2026-03-25' })).toMatchObject({
      until: '2026-03-18',
      days: 3,
    });
  });

  test('T39 in two parts: two days on the invoice, three on an order of their own, by the same yes', async () => {
    const { id, number } = await invoiced();
    garage.now = at('2026-03-18T09:00');
    expect(await storage(id)).toMatchObject({
      ...{ ownOrder: true, standsOn: null, invoicedUntil: '2026-03-15', chargedUntil: null },
      ...{ firstCharged: '2026-03-16', days: 3, net: 4500, tax: 900, gross: 5400 },
    });
    const charged = await garage.did('Desk', 'storage.charge', { orderId: id });
    expect(charged).toMatchObject({ days: 3, gross: 5400 });
    expect(charged.orderId).not.toBe(id);
    const own = await order(charged.orderId);
    expect(own).toMatchObject({
      ...{ number: charged.number, complaint: '', handedOverAt: null, stops: [] },
      ...{ customer: { name: 'Ansel Pell' }, car: { plate: 'A 1' }, mileageIn: null },
    });
    expect(own.jobs[0]?.title).toBe(`Storage of the car, for order ${number}`);
    expect(own.jobs).toMatchObject([
      { covered: true, lines: [{ kind: 'fee', words: '3 days at 15.00', amount: 4500 }] },
    ]);
    expect(own.decisions).toMatchObject([
      { ceiling: 5400, way: 'person', at: at('2026-03-09T08:00'), recordedAt: at('2026-03-18T09:00') },
    ]);
    const { toPay } = await garage.did('Desk', 'invoice.issue', { orderId: charged.orderId });
    // Together what T39 says: five days, 75.00 and 15.00 of tax.
    const before = (await order(id)).papers.findLast((paper) => paper.kind === 'invoice');
    expect((before?.gross ?? 0) - 12_000 + toPay).toBe(9000);
    expect(await storage(charged.orderId)).toMatchObject({
      days: 0,
      invoicedUntil: '2026-03-18',
      visit: { id, number },
    });
    expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
  });

  test('the fee on the open order is brought up to the day; only once that is invoiced a further one is opened', async () => {
    const { id } = await invoiced();
    garage.now = at('2026-03-16T09:00');
    const first = await garage.did('Desk', 'storage.charge', { orderId: id });
    expect(await garage.refused('Desk', 'storage.charge', { orderId: id })).toMatchObject({
      reasons: [{ what: 'storage-charged', with: { until: '2026-03-16' } }],
    });
    garage.now = at('2026-03-17T09:00');
    // Asked from either of the two orders it is one fee.
    const again = await garage.did('Desk', 'storage.charge', { orderId: first.orderId });
    expect(again).toMatchObject({ orderId: first.orderId, days: 2, gross: 1800 });
    expect((await order(first.orderId)).jobs).toHaveLength(1);
    expect(await storage(id)).toMatchObject({ standsOn: { id: first.orderId }, chargedUntil: '2026-03-17' });
    await garage.did('Desk', 'invoice.issue', { orderId: first.orderId });
    garage.now = at('2026-03-18T09:00');
    const second = await garage.did('Desk', 'storage.charge', { orderId: id });
    expect(second).toMatchObject({ days: 1, gross: 1800 });
    expect(second.orderId).not.toBe(first.orderId);
  });

  test('where nothing stood on the invoice, the free days are told on the order of its own', async () => {
    const { id } = await invoiced({ chargeFirst: false });
    garage.now = at('2026-03-18T09:00');
    const { orderId } = await garage.did('Desk', 'storage.charge', { orderId: id });
    expect((await order(orderId)).jobs[0]?.lines[0]?.words).toBe('5 days after 3 free at 15.00');
  });

  test('an order of its own that was called off charges nothing; a new one takes its days', async () => {
    const { id } = await invoiced();
    garage.now = at('2026-03-16T09:00');
    const first = await garage.did('Desk', 'storage.charge', { orderId: id });
    const { revision } = await order(first.orderId);
    await garage.did('Desk', 'order.cancel', { id: first.orderId, revision, why: 'Let go' });
    garage.now = at('2026-03-17T09:00');
    expect(await garage.did('Desk', 'storage.charge', { orderId: id })).toMatchObject({ days: 2 });
  });

  test('the car goes from both orders at once, and stays in the list of cars not fetched until then', async () => {
    const { id } = await invoiced();
    garage.now = at('2026-03-18T09:00');
    const { orderId } = await garage.did('Desk', 'storage.charge', { orderId: id });
    const stored = async () => (await garage.did('Desk', 'today.get', {})).waiting.stored.map((row) => row.orderId);
    expect(await stored()).toEqual([id]);
    const { revision } = await order(orderId);
    await garage.did('Desk', 'order.handOver', { id: orderId, revision, to: 'Ansel Pell' });
    expect(await order(id)).toMatchObject({ handedOverAt: garage.now, handedOverTo: 'Ansel Pell' });
    expect(await stored()).toEqual([]);
    // It is one visit of the car, which is not here any more.
    const { carId } = { carId: (await order(id)).car.id };
    expect((await garage.did('Desk', 'car.history', { id: carId })).visits).toBe(1);
    const { cars } = await garage.did('Desk', 'customer.get', { id: (await order(id)).customer.id });
    expect(cars).toMatchObject([{ inShop: null, lastHere: at('2026-03-09T08:00') }]);
  });

  test('charged only after it was fetched, the order begins as handed over, and ends with that day', async () => {
    const { id } = await invoiced();
    garage.now = at('2026-03-17T17:00');
    const { revision } = await order(id);
    await garage.did('Desk', 'order.handOver', { id, revision, to: 'Ansel Pell' });
    garage.now = at('2026-03-20T09:00');
    const { orderId, days } = await garage.did('Desk', 'storage.charge', { orderId: id });
    expect(days).toBe(2);
    expect((await order(orderId)).handedOverAt).toBe(at('2026-03-17T17:00'));
  });

  test('the most that they want to spend counts both; what was not agreed is not charged', async () => {
    const { id } = await invoiced({ ownMaximum: 16_000 });
    garage.now = at('2026-03-18T09:00');
    expect(await garage.refused('Desk', 'storage.charge', { orderId: id })).toMatchObject({
      reasons: [{ what: 'over-own-maximum', with: { maximum: 16_000, excess: 12_000 + 3600 + 5400 - 16_000 } }],
    });
    // Nothing is left of the attempt.
    expect((await garage.did('Desk', 'today.get', {})).rows).toHaveLength(1);
  });
});
