import { afterEach, beforeEach, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';
import { orderOf, printed, saidYes, setShop, sumsOf } from './sheet-orders.ts';

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

// 100.00 of labour, 5.00 supplies by rule, 4.50 for waste, 20 % on 109.50: 131.40.
test('supplies by rule and the fee for waste are rows of their own; credited whole, nothing is left', async () => {
  await setShop(garage, {
    supplies: { mode: 'percent', bp: 500, cap: null, floor: null, sentence: '' },
    wasteFee: { amount: 450, words: 'Oil disposal', when: 'charged', source: 'county list', checkedOn: null },
  });
  const labour = { kind: 'labour', words: 'Drain and fill', quantity: 1000, unit: 'h', unitPrice: 10_000 } as const;
  const { id, jobs } = await orderOf(garage, [labour]);
  const { gross } = await sumsOf(garage, id);
  expect(gross).toBe(13_140);
  await saidYes(garage, id, [jobs[0]?.id ?? ''], gross);
  const { paperId: invoicePaperId } = await garage.did('Desk', 'invoice.issue', { orderId: id });
  const left = async () => (await garage.did('Desk', 'creditNote.left', { invoicePaperId })).rows;
  expect((await left()).map((row) => [row.what, row.letter, row.words, row.left, row.amount])).toEqual([
    ['line', 'A', 'Drain and fill', 1000, 10_000],
    ['supplies', '', '', 1000, 500],
    ['waste-fee', '', 'Oil disposal', 1000, 450],
  ]);
  const note = (lines: { lineId: string; quantity: number }[]) =>
    garage.did('Desk', 'creditNote.issue', { invoicePaperId, reason: 'not wanted', lines });

  // Half of the supplies and the fee: 2.50 + 4.50, and 1.40 of tax.
  const part = await note([
    { lineId: 'supplies', quantity: 500 },
    { lineId: 'waste-fee', quantity: 1000 },
  ]);
  expect(part).toMatchObject({ net: 700, tax: 140, gross: 840 });
  const paper = await printed(garage, part.paperId);
  expect(paper).toMatch(/Supplies 2\.50/);
  expect(paper).toMatch(/Oil disposal 4\.50/);
  expect((await left()).map((row) => row.left)).toEqual([1000, 500, 0]);

  const rest = await note(
    (await left()).flatMap(({ lineId, left: quantity }) => (quantity > 0 ? [{ lineId, quantity }] : [])),
  );
  expect(part.gross + rest.gross).toBe(13_140);
  expect((await garage.did('Desk', 'order.get', { id })).balance).toBe(0);
  expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
});

test('a sale that is undone whole gives the tax on the old unit back, too', async () => {
  await setShop(garage, { coreTax: { way: 'kept', bp: 0, source: '', checkedOn: null } });
  const { id, jobs } = await orderOf(garage, [
    { kind: 'part', words: 'Carrier', quantity: 1000, unitPrice: 100_000, condition: 'new' },
    { kind: 'core', words: 'Old carrier', quantity: 1000, unitPrice: 35_000 },
  ]);
  await saidYes(garage, id, [jobs[0]?.id ?? ''], 162_000);
  const { paperId: invoicePaperId } = await garage.did('Desk', 'invoice.issue', { orderId: id });
  const [part = '', core = ''] = jobs[0]?.lineIds ?? [];
  const note = (lineId: string) =>
    garage.did('Desk', 'creditNote.issue', { invoicePaperId, reason: 'back', lines: [{ lineId, quantity: 1000 }] });
  // The old unit first: 70.00 of tax stays; then the carrier, with all the tax there was.
  expect(await note(core)).toMatchObject({ gross: 35_000, tax: 0 });
  expect(await note(part)).toMatchObject({ gross: 127_000, tax: 27_000 });
  expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
});
