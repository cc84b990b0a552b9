import { afterEach, beforeEach, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from '../db/practice-shop.ts';
import { bookIn, invoice, yes } from './played-shop.ts';

/** Today, read back from the shop after each thing that is recorded. */
let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' }, zone: 'Europe/Berlin' });
});
afterEach(() => garage.end());

const LABOUR = { kind: 'labour' as const, words: 'Work', quantity: 1000, unitPrice: 10_000 };
const add = (orderId: string, title: string) =>
  garage.did('Desk', 'job.add', { orderId, job: { title }, lines: [LABOUR] });
/** Whose move, what and since when, for the one order there is; null when Today does not show it. */
async function today() {
  const { rows } = await garage.did('Desk', 'today.get', {});
  const [row] = rows;
  expect(rows.length).toBeLessThan(2);
  return row === undefined ? null : [row.next.whose, row.next.what, row.next.since];
}
const later = (minutes: number) => {
  garage.now += minutes * 60_000;
  return garage.now;
};

test('a visit from the door to the road', async () => {
  const came = garage.now;
  const { id } = await bookIn(garage);
  expect(await today()).toEqual(['ours', 'find-out', came]);
  const job = await add(id, 'Brakes');
  expect(await today()).toEqual(['ours', 'write-up-quote', came]);
  const tried = later(5);
  await garage.did('Desk', 'decision.tried', { orderId: id, way: 'phone', reached: '555-0142' });
  const quoted = later(5);
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  // Rung before there was a quote: nobody knows of it.
  expect(tried).toBeLessThan(quoted);
  expect(await today()).toEqual(['ours', 'send-quote', quoted]);
  await garage.did('Desk', 'paper.sent', { id: quote.paperId, how: 'e-mail' });
  expect(await today()).toEqual(['customer', 'say-yes', quoted]);
  later(5);
  await yes(garage, id, [job.id], 12_000);
  expect(await today()).toEqual(['ours', 'start-work', came]);
  const on = later(10);
  await garage.did('Runa', 'clock.on', { jobId: job.id });
  later(30);
  expect(await today()).toEqual(['ours', 'work-goes-on', on]);
  const off = later(10);
  await garage.did('Runa', 'clock.off', {});
  expect(await today()).toEqual(['ours', 'close-out', off]);
  const billed = later(5);
  await invoice(garage, id);
  expect(await today()).toEqual(['customer', 'pay-and-collect', billed]);
  await garage.did('Desk', 'payment.take', { orderId: id, kind: 'payment', way: 'card', amount: 12_000 });
  expect(await today()).toEqual(['customer', 'collect', billed]);
  const { revision } = await garage.did('Desk', 'order.get', { id });
  await garage.did('Desk', 'order.handOver', { id, revision, to: 'Ilse Vandermeer' });
  expect(await today()).toBeNull();
});

test('a car that was expected yesterday is waited for since its hour on the shop’s own clock', async () => {
  const { bays } = await garage.did('Desk', 'shop.get', {});
  const booked = garage.now;
  await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    here: false,
    booking: { bayId: bays[0]?.id ?? '', day: '2026-03-11', from: '08:30', hours: 1000 },
  });
  expect(await today()).toEqual(['customer', 'bring-it-in', booked]);
  garage.now = at('2026-03-11T20:00');
  expect(await today()).toEqual(['customer', 'bring-it-in', booked]);
  garage.now = at('2026-03-12T08:00');
  expect(await today()).toEqual(['customer', 'was-expected', at('2026-03-11T07:30')]);
});

test('a car that went without an invoice stays on Today until it has one', async () => {
  const { id } = await bookIn(garage);
  const job = await add(id, 'Brakes');
  await yes(garage, id, [job.id], 12_000);
  const { revision } = await garage.did('Desk', 'order.get', { id });
  const went = later(60);
  await garage.did('Desk', 'order.handOver', { id, revision, to: 'Ilse Vandermeer' });
  expect(await today()).toEqual(['ours', 'close-out', went]);
  const billed = later(5);
  await invoice(garage, id);
  expect(await today()).toEqual(['customer', 'pay', billed]);
});

test('a car that went without work leaves Today, unless its deposit is still here', async () => {
  const { id } = await bookIn(garage);
  await garage.did('Desk', 'payment.take', { orderId: id, kind: 'deposit', way: 'card', amount: 5_000 });
  const { revision } = await garage.did('Desk', 'order.get', { id });
  const went = later(60);
  await garage.did('Desk', 'order.handOver', { id, revision, to: 'Ilse Vandermeer' });
  expect(await today()).toEqual(['ours', 'give-back', went]);
  await garage.did('Desk', 'payment.take', { orderId: id, kind: 'refund', way: 'card', amount: 5_000 });
  expect(await today()).toBeNull();
});
