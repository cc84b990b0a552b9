import { afterEach, beforeEach, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
});
afterEach(async () => {
  await garage.end();
});

test('an invoice is not made of a sheet that came to another sum than the person saw', async () => {
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    here: true,
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Look' },
    lines: [{ kind: 'labour', words: 'Look', quantity: 1000, unit: 'h', unitPrice: 10_000 }],
  });
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 20_000 },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
  });
  await garage.did('Odile', 'line.change', { id: job.lineIds[0] ?? '', revision: 1, change: { unitPrice: 11_000 } });
  expect(await garage.refused('Desk', 'invoice.issue', { orderId: id, seen: 12_000 })).toMatchObject({
    code: 'changed-meanwhile',
    now: { gross: 13_200 },
    yours: { gross: 12_000 },
  });
  expect((await garage.did('Desk', 'order.get', { id })).papers).toEqual([]);
  expect(await garage.did('Desk', 'invoice.issue', { orderId: id, seen: 13_200 })).toMatchObject({ gross: 13_200 });
});
