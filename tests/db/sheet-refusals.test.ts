import { afterEach, beforeEach, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(() => garage.end());

const DAY = 86_400_000;
const spoken = { name: 'Ilse Vandermeer', role: 'customer' as const };
const part = { kind: 'part' as const, words: 'Seal', quantity: 1000, unitPrice: 5000 };
const problem = (path: string, problem: string) => ({ code: 'bad-input', fields: [{ path, problem }] });

/** A visit with one job, one that is offered, and a discount. */
async function visit() {
  const { id: orderId, carId } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KVR 221', words: 'Corvane R', unit: 'km' } },
    ...{ complaint: 'It whines.', here: true },
  });
  const job = await garage.did('Desk', 'job.add', { orderId, job: { title: 'Seals' }, lines: [part] });
  const later = await garage.did('Desk', 'job.add', { orderId, job: { title: 'Bush', offered: true }, lines: [part] });
  const discount = await garage.did('Desk', 'discount.add', { orderId, on: 'all', reduction: { bp: 500 } });
  const answer = (jobId: string, said: 'yes' | 'no' | 'later') => ({
    ...{ orderId, jobs: [{ jobId, answer: said }], spoken, way: 'person' as const },
    upTo: said === 'yes' ? { total: 900_000 } : null,
  });
  return { orderId, carId, jobId: job.id, laterId: later.id, discountId: discount.id, answer };
}

test('once the invoice is out nothing of it is declined, nothing new is said yes to, and no discount goes', async () => {
  const { orderId, jobId, laterId, discountId, answer } = await visit();
  await garage.did('Desk', 'decision.record', answer(jobId, 'yes'));
  const { number } = await garage.did('Odile', 'invoice.issue', { orderId });
  const invoiced = { code: 'held', reasons: [{ what: 'invoiced', with: { number } }] };
  expect(await garage.refused('Desk', 'decision.record', answer(jobId, 'no'))).toEqual(invoiced);
  expect(await garage.refused('Desk', 'decision.record', answer(laterId, 'yes'))).toEqual(invoiced);
  expect(await garage.refused('Desk', 'discount.takeOut', { id: discountId })).toEqual(invoiced);
  // What was offered beside it can still be declined: the car remembers it.
  await garage.did('Desk', 'decision.record', answer(laterId, 'no'));
  const { jobs } = await garage.did('Desk', 'order.get', { id: orderId });
  expect(jobs.map((job) => job.answer)).toEqual(['yes', 'no']);
});

test('a discount goes while the sheet is open; one that is not there is not found', async () => {
  const { orderId, discountId } = await visit();
  await garage.did('Desk', 'discount.takeOut', { id: discountId });
  expect((await garage.did('Desk', 'order.get', { id: orderId })).discounts).toEqual([]);
  expect(await garage.refused('Desk', 'discount.takeOut', { id: 'nobody' })).toMatchObject({ code: 'not-found' });
});

test('a car is handed over once: when and to whom stays as it was', async () => {
  const { orderId: id } = await visit();
  const { revision } = await garage.did('Desk', 'order.get', { id });
  const first = await garage.did('Desk', 'order.handOver', { id, revision, to: 'Ilse Vandermeer' });
  garage.now += DAY;
  const again = { id, revision: first.revision, to: 'Somebody else' };
  expect(await garage.refused('Desk', 'order.handOver', again)).toEqual(problem('id', 'closed-already'));
  const order = await garage.did('Desk', 'order.get', { id });
  expect([order.handedOverTo, order.handedOverAt]).toEqual(['Ilse Vandermeer', garage.now - DAY]);
});

test('nobody was rung, nothing was sent and no clock was read on a day to come', async () => {
  const { orderId, carId } = await visit();
  const { paperId } = await garage.did('Desk', 'quote.issue', { orderId });
  const tomorrow = garage.now + DAY;
  const rung = { orderId, way: 'phone' as const, reached: '555-0142', at: tomorrow };
  expect(await garage.refused('Desk', 'decision.tried', rung)).toEqual(problem('at', 'in-the-future'));
  const sent = { id: paperId, how: 'by post', at: tomorrow };
  expect(await garage.refused('Desk', 'paper.sent', sent)).toEqual(problem('at', 'in-the-future'));
  const read = { id: carId, reading: 42_000, event: 'read' as const };
  const ahead = { ...read, on: '2026-03-11' };
  expect(await garage.refused('Desk', 'car.odometer', ahead)).toEqual(problem('on', 'in-the-future'));
  await garage.did('Desk', 'car.odometer', { ...read, on: '2026-03-10' });
  await garage.did('Desk', 'decision.tried', { ...rung, at: garage.now });
  await garage.did('Desk', 'paper.sent', { ...sent, at: garage.now });
});

test('the row that stands for no car has no clock', async () => {
  await garage.did('Desk', 'order.book', {
    ...{ customer: { add: { name: 'Ilse Vandermeer' } }, car: { none: true }, complaint: 'Wipers.', here: true },
  });
  const read = { id: 'counter', reading: 5, on: '2026-03-10', event: 'read' as const };
  expect(await garage.refused('Desk', 'car.odometer', read)).toMatchObject({ code: 'not-found' });
});

test('a quote stands until today at the earliest', async () => {
  const { orderId } = await visit();
  const over = { orderId, validUntil: '2026-03-09' };
  expect(await garage.refused('Desk', 'quote.issue', over)).toEqual(problem('validUntil', 'in-the-past'));
  await garage.did('Desk', 'quote.issue', { orderId, validUntil: '2026-03-10' });
});

test('a job that is moved to an order of its own leaves the most that the customer wants to spend where it was', async () => {
  const { orderId, laterId } = await visit();
  const { revision } = await garage.did('Desk', 'order.get', { id: orderId });
  await garage.did('Desk', 'order.change', { id: orderId, revision, change: { ownMaximum: 9000 } });
  const moved = await garage.did('Desk', 'job.moveOut', { id: laterId, revision: 1 });
  expect((await garage.did('Desk', 'order.get', { id: moved.orderId })).ownMaximum).toBeNull();
  expect((await garage.did('Desk', 'order.get', { id: orderId })).ownMaximum).toBe(9000);
});

test('a credit note over nothing of a line is none', async () => {
  const { orderId, jobId, answer } = await visit();
  await garage.did('Desk', 'decision.record', answer(jobId, 'yes'));
  const { paperId } = await garage.did('Odile', 'invoice.issue', { orderId });
  const { rows } = await garage.did('Desk', 'creditNote.left', { invoicePaperId: paperId });
  const nothing = { lineId: rows[0]?.lineId ?? '', quantity: 0 };
  const credit = { invoicePaperId: paperId, reason: 'Nothing', lines: [nothing] };
  expect(await garage.refused('Desk', 'creditNote.issue', credit)).toMatchObject({
    code: 'bad-input',
    fields: [{ path: 'lines.0.quantity', problem: 'more-than-billed' }],
  });
});

test('a line names a part, people and a job of its own order that are there', async () => {
  const { jobId, laterId } = await visit();
  const other = await visit();
  const labour = { kind: 'labour' as const, words: 'Fit', quantity: 1000, unitPrice: 9600 };
  const missing = (what: string, id: string) => ({ code: 'not-found', what, id });
  const add = (line: object) => garage.refused('Desk', 'line.add', { jobId, line: { ...labour, ...line } });
  expect(await add({ overlapJobId: other.jobId })).toEqual(missing('job', other.jobId));
  expect(await add({ overlapJobId: 'none' })).toEqual(missing('job', 'none'));
  expect(await add({ kind: 'part', partId: 'none' })).toEqual(missing('part', 'none'));
  expect(await add({ people: [{ personId: 'none', hours: 1000 }] })).toEqual(missing('person', 'none'));
  const { id, revision } = await garage.did('Desk', 'line.add', { jobId, line: { ...labour, overlapJobId: laterId } });
  const change = { id, revision, change: { overlapJobId: other.jobId } };
  expect(await garage.refused('Desk', 'line.change', change)).toEqual(missing('job', other.jobId));
  await garage.did('Desk', 'line.change', { id, revision, change: { words: 'Fit it' } });
});
