import { afterEach, beforeEach, expect, test } from 'vitest';
import { readPages, textOf } from '../paper/read-back.ts';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
});
afterEach(async () => {
  await garage.end();
});

async function visit(of?: { customerId: string; carId: string }) {
  const order = await garage.did('Desk', 'order.book', {
    customer: of ? { id: of.customerId } : { add: { name: 'Per Halloran', phone: '555-0177', address: ['Quay 4'] } },
    car: of ? { id: of.carId } : { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km', year: 2019 } },
    ...{ complaint: 'My brother says it pulls left.', mileage: 61_000, here: true },
  });
  const job = await garage.did('Desk', 'job.add', {
    ...{ orderId: order.id, job: { title: 'Tie rod, left' } },
    lines: [{ kind: 'part', words: 'Tie rod', partNumber: 'TR-9', quantity: 1000, unit: '', unitPrice: 12_345 }],
  });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId: order.id, jobs: [{ jobId: job.id, answer: 'yes' }], upTo: { total: 90_000 }, way: 'person' },
    spoken: { name: 'Per Halloran', role: 'customer' },
  });
  return order;
}
async function read(id: string, more: { prices?: boolean; reader?: 'owner' | 'later-owner' }) {
  const { base64, ...rest } = await garage.did('Desk', 'car.history', { id, ...more });
  const pages = await readPages(new Uint8Array(Buffer.from(base64, 'base64')));
  return { ...rest, text: pages.map(textOf).join('\n') };
}

test('to its owner: dates, mileage, their words, the work and its parts, with prices only when wished', async () => {
  const { carId } = await visit();
  const plain = await read(carId, {});
  expect(plain).toMatchObject({ visits: 1, keptBack: 0, name: 'OYB 902 Oriel Estate.pdf' });
  expect(plain.text).toContain('What was done on Oriel Estate, 2019, OYB 902');
  expect(plain.text).toContain('10 Mar 2026, 61,000 km, order 1187');
  expect(plain.text).toContain('“My brother says it pulls left.”');
  expect(plain.text).toContain('1 Tie rod TR-9');
  expect(plain.text).not.toContain('123.45');
  expect((await read(carId, { prices: true })).text).toContain('Tie rod, left, 123.45 USD');
});

test('to a later owner: no name, phone, address, word or price of the one before, even when prices are asked for', async () => {
  const { carId } = await visit();
  const { text } = await read(carId, { reader: 'later-owner', prices: true });
  expect(text).toContain('Tie rod, left');
  expect(text).toContain('10 Mar 2026, 61,000 km');
  for (const secret of ['Halloran', '555-0177', 'Quay 4', 'brother', '123.45', 'invoice'])
    expect(text).not.toContain(secret);
});

test('once the car is sold its new owner reads the old visits so by themselves; what was to be kept back is counted', async () => {
  const first = await visit();
  garage.now = at('2026-03-20T08:00');
  const next = await garage.did('Desk', 'customer.add', { name: 'Agnes Pell' });
  await garage.did('Desk', 'car.owner', { id: first.carId, revision: 1, customerId: next.id, from: '2026-03-20' });
  await visit({ customerId: next.id, carId: first.carId });
  const { text, visits } = await read(first.carId, { prices: true });
  expect(visits).toBe(2);
  expect(text).toContain('Agnes Pell');
  expect(text).not.toContain('Halloran');
  // Her own words and prices, once.
  expect(text.match(/brother/g)).toHaveLength(1);
  expect(text.match(/123\.45/g)).toHaveLength(1);
  const consents = { reminders: null, photos: null, history: false };
  await garage.did('Desk', 'customer.change', { id: first.customerId, revision: 1, change: { consents } });
  const kept = await read(first.carId, {});
  expect(kept).toMatchObject({ visits: 1, keptBack: 1 });
  expect(kept.text).toContain('One visit is left out');
});

test('a replaced clock is told; a mechanic is not asked', async () => {
  const { carId } = await visit();
  const event = { id: carId, reading: 61_000, on: '2026-03-10', event: 'replaced' as const, newStart: 0 };
  await garage.did('Desk', 'car.odometer', event);
  expect((await read(carId, {})).text).toContain('the clock was replaced at 61,000 km, the new one began at 0 km');
  expect(await garage.refused('Runa', 'car.history', { id: carId })).toMatchObject({ code: 'not-allowed' });
});
