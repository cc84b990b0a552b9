import { afterEach, beforeEach, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
});
afterEach(async () => {
  await garage.end();
});

/** Three seals for 10.00 together with a discount, and half an hour at 9.99; both taxed at 20 %. */
async function billed() {
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It drips.',
    here: true,
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Seals' },
    lines: [
      { kind: 'part', words: 'Seal', quantity: 3000, unitPrice: 349, discount: { sum: 47 }, condition: 'new' },
      { kind: 'labour', words: 'Fit', quantity: 500, unit: 'h', unitPrice: 999 },
    ],
  });
  const { sums } = await garage.did('Desk', 'order.get', { id });
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: sums?.gross ?? 0 },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
  });
  const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id });
  const [seal = '', labour = ''] = job.lineIds;
  const credit = (lines: { lineId: string; quantity: number }[]) =>
    ({ invoicePaperId: invoice.paperId, reason: 'not fitted', lines }) as const;
  return { id, invoice, seal, labour, credit };
}

test('an invoice credited bit by bit ends at nothing owed, every note adds up again', async () => {
  const { id, invoice, seal, labour, credit } = await billed();
  const notes = [];
  for (const lines of [
    [{ lineId: seal, quantity: 1000 }],
    [
      { lineId: seal, quantity: 1000 },
      { lineId: labour, quantity: 200 },
    ],
    [{ lineId: labour, quantity: 300 }],
    [{ lineId: seal, quantity: 1000 }],
  ])
    notes.push(await garage.did('Desk', 'creditNote.issue', credit(lines)));
  expect(notes.reduce((sum, note) => sum + note.gross, 0)).toBe(invoice.gross);
  expect((await garage.did('Desk', 'order.get', { id })).balance).toBe(0);
  expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
  expect(await garage.refused('Desk', 'creditNote.issue', credit([{ lineId: seal, quantity: 1 }]))).toMatchObject({
    fields: [{ path: 'lines.0.quantity', problem: 'more-than-billed', with: { left: 0 } }],
  });
});

test('a line named twice in one note is refused: together it could be more than was billed', async () => {
  const { seal, credit } = await billed();
  const twice = [
    { lineId: seal, quantity: 2000 },
    { lineId: seal, quantity: 2000 },
  ];
  expect(await garage.refused('Desk', 'creditNote.issue', credit(twice))).toMatchObject({
    fields: [{ path: 'lines.1.lineId', problem: 'same-row-twice' }],
  });
});
