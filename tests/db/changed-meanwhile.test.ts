import { afterEach, beforeEach, expect, test } from 'vitest';
import type { OperationName } from '../../core/contract/index.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
let ids: Readonly<Record<string, string>>;
beforeEach(async () => {
  garage = await practiceShop();
  const order = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    here: true,
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: order.id,
    job: { title: 'Swap' },
    lines: [{ kind: 'labour', words: 'Fit', quantity: 4500, unitPrice: 9600 }],
  });
  const finding = await garage.did('Runa', 'finding.add', { orderId: order.id, text: 'Torn bush' });
  const part = await garage.did('Desk', 'part.add', { number: 'S', words: 'Seal', unit: '', price: 100, cost: 50 });
  ids = {
    order: order.id,
    job: job.id,
    line: job.lineIds[0] ?? '',
    finding: finding.id,
    customer: order.customerId,
    car: order.carId,
    part: part.id,
  };
});
afterEach(async () => {
  await garage.end();
});

/** Two people start from the same row: the first saves, the second is told both values and nothing of his is written. */
test.each<[string, OperationName, object, object]>([
  ['order', 'order.change', { complaint: 'It howls.' }, { complaint: 'It hums.' }],
  ['order', 'order.change', { door: { fuel: '1/2' } }, { door: { fuel: '1/4' } }],
  ['order', 'order.change', { payerId: null, oldPartsAnswer: 'shown' }, { oldPartsAnswer: 'returned' }],
  ['job', 'job.change', { title: 'Swap it' }, { title: 'Swap all' }],
  ['line', 'line.change', { quantity: 5000 }, { quantity: 4000 }],
  ['customer', 'customer.change', { note: 'rings back' }, { note: 'writes' }],
  ['car', 'car.change', { axleCode: 'R7' }, { axleCode: 'R8' }],
  ['part', 'part.change', { price: 120 }, { price: 130 }],
])('%s: a stale save with %s is told both values', async (row, operation, first, second) => {
  const id = ids[row] ?? '';
  const input = (change: object) => ({ id, revision: 1, change });
  await garage.did('Odile', operation, input(first) as never);
  expect(await garage.refused('Desk', operation, input(second))).toMatchObject({
    code: 'changed-meanwhile',
    id,
    revision: 2,
    now: first,
    yours: second,
  });
  expect(await garage.did('Desk', operation, { id, revision: 2, change: second } as never)).toEqual({
    id,
    revision: 3,
  });
});

test('finding: a stale save is told both values; making a job of it counts as a change', async () => {
  const id = ids.finding ?? '';
  await garage.did('Desk', 'job.add', { orderId: ids.order ?? '', job: { title: 'Bush' }, findingId: id });
  expect(await garage.refused('Runa', 'finding.change', { id, revision: 1, text: 'Torn mount' })).toMatchObject({
    code: 'changed-meanwhile',
    revision: 2,
    now: { text: 'Torn bush', jobId: expect.any(String) },
    yours: { text: 'Torn mount' },
  });
  expect(await garage.did('Runa', 'finding.change', { id, revision: 2, text: 'Torn mount' })).toEqual({
    id,
    revision: 3,
  });
});

test('different rows never stand in each other’s way', async () => {
  await garage.did('Odile', 'line.change', { id: ids.line ?? '', revision: 1, change: { quantity: 5000 } });
  await garage.did('Desk', 'job.change', { id: ids.job ?? '', revision: 1, change: { title: 'Swap it' } });
  await garage.did('Desk', 'order.change', { id: ids.order ?? '', revision: 1, change: { poNumber: '77' } });
});
