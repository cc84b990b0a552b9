import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
let orderId: string;
beforeEach(async () => {
  garage = await practiceShop();
  const order = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Agnes Pell' } },
    car: { add: { words: 'Oriel Estate', unit: 'km' } },
    complaint: 'Rattles',
    here: true,
  });
  orderId = order.id;
});
afterEach(async () => {
  await garage.end();
});

const MOST = 900_000_000_000;
const part = { kind: 'part', words: 'Washer', quantity: 1000, unitPrice: MOST } as const;

/** All that is read of an order and of the whole shop. */
const readAll = async () => {
  await garage.did('Odile', 'order.get', { id: orderId });
  await garage.did('Odile', 'closeOut.get', { orderId });
  await garage.did('Odile', 'order.page', { filter: { which: 'all' } });
  await garage.did('Odile', 'today.get', {});
  await garage.did('Odile', 'money.get', {});
  await garage.did('Odile', 'stock.get', {});
};

describe('a sum that no sheet can hold is refused when it is typed, and what is there stays readable', () => {
  test('a line, added, changed or with a job', async () => {
    const job = await garage.did('Desk', 'job.add', { orderId, job: { title: 'All of them' }, lines: [part] });
    const many = { ...part, quantity: 1001 };
    const most = { problem: 'too-much', with: { most: MOST } };
    expect(await garage.refused('Desk', 'job.add', { orderId, job: { title: 'More' }, lines: [part, many] })).toEqual({
      code: 'bad-input',
      fields: [{ path: 'lines.1', ...most }],
    });
    expect(await garage.refused('Desk', 'line.add', { jobId: job.id, line: many })).toMatchObject({
      fields: [{ path: 'line', ...most }],
    });
    const [id = ''] = job.lineIds;
    expect(await garage.refused('Desk', 'line.change', { id, revision: 1, change: { quantity: 1001 } })).toMatchObject({
      fields: [{ path: 'change', ...most }],
    });
    for (let n = 0; n < 9; n += 1) await garage.did('Desk', 'line.add', { jobId: job.id, line: part });
    await readAll();
  });

  test('hours of the book and what outside work costs', async () => {
    const job = await garage.did('Desk', 'job.add', { orderId, job: { title: 'All of them' } });
    const labour = {
      kind: 'labour',
      words: 'Labour',
      quantity: 0,
      unitPrice: MOST,
      billing: 'book',
      book: 1001,
    } as const;
    const outside = { kind: 'outside', words: 'Gears', quantity: 1001, unitPrice: 0, unitCost: MOST } as const;
    for (const line of [labour, outside])
      expect((await garage.refused('Desk', 'line.add', { jobId: job.id, line })).code).toBe('bad-input');
  });

  test('deposits, each of the most', async () => {
    for (let n = 0; n < 3; n += 1)
      await garage.did('Desk', 'payment.take', { orderId, kind: 'deposit', way: 'card', amount: MOST });
    await readAll();
  });

  test('a part put into stock', async () => {
    const row = { number: 'W-1', words: 'Washer', unit: '', price: MOST, cost: MOST };
    expect(await garage.refused('Desk', 'part.add', { ...row, onHand: 1001 })).toMatchObject({
      fields: [{ path: 'onHand', problem: 'too-much', with: { most: MOST } }],
    });
    const { id } = await garage.did('Desk', 'part.add', { ...row, onHand: 1000 });
    await garage.did('Desk', 'part.receive', { partId: id, quantity: 1000, cost: MOST });
    await readAll();
  });
});
