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

const LABOUR = { kind: 'labour', words: 'Drain and fill', quantity: 1000, unit: 'h', unitPrice: 10_000 } as const;
const OIL = { kind: 'fluid', words: 'Oil', quantity: 1000, unit: 'L', unitPrice: 2000 } as const;
const FEE = { amount: 450, words: 'Oil disposal', when: 'charged', source: 'county list', checkedOn: null } as const;

test('a shop from before it was there has none', async () => {
  expect((await garage.did('Odile', 'shop.get', {})).settings?.wasteFee).toBeNull();
  const { id } = await orderOf(garage, [LABOUR]);
  expect(await sumsOf(garage, id)).toMatchObject({ wasteFee: { words: '', amount: 0 }, net: 10_000, gross: 12_000 });
});

test('from the setting to the sheet, the quote, the yes, the invoice and what is printed; later settings move none of it', async () => {
  await setShop(garage, { wasteFee: FEE });
  const { id, jobs } = await orderOf(garage, [LABOUR], [LABOUR]);
  const sums = await sumsOf(garage, id);
  // 100.00 + 100.00 + 4.50 once, and 20 % of it.
  expect(sums).toMatchObject({ wasteFee: { words: 'Oil disposal', amount: 450 }, fees: 0, net: 20_450, gross: 24_540 });
  expect(sums.reckoning).toContainEqual({ rule: 'waste-fee', on: { words: 'Oil disposal', jobs: 2 }, result: 450 });
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  expect(await printed(garage, quote.paperId)).toMatch(/Oil disposal 4\.50/);
  expect((await garage.did('Desk', 'quote.list', { orderId: id })).quotes).toMatchObject([{ wasteFee: 450 }]);

  // The covered job is a sheet of its own: the fee stands on it once, 104.50 + 20.90.
  await saidYes(garage, id, [jobs[0]?.id ?? ''], 12_540);
  const { yes } = await garage.did('Desk', 'order.get', { id });
  expect(yes).toMatchObject({ coveredTotal: 12_540, coveredExcess: 0, heldSum: 12_000 });

  await saidYes(garage, id, [jobs[1]?.id ?? ''], 24_540);
  const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id, seen: 24_540 });
  expect(invoice.gross).toBe(24_540);
  const before = await printed(garage, invoice.paperId);
  expect(before).toMatch(/Oil disposal 4\.50/);

  await setShop(garage, { wasteFee: { ...FEE, amount: 900, words: 'Waste' }, taxes: [] });
  expect(await sumsOf(garage, id)).toEqual(sums);
  expect(await printed(garage, invoice.paperId)).toBe(before);
  expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
});

test('it stands on no order that charges nothing, and at wish only beside a part or fluid', async () => {
  await setShop(garage, { wasteFee: FEE });
  const free = await orderOf(garage, [LABOUR]);
  await garage.did('Desk', 'job.give', { id: free.jobs[0]?.id ?? '', revision: 1, given: true });
  expect((await sumsOf(garage, free.id)).gross).toBe(0);

  await setShop(garage, { wasteFee: { ...FEE, when: 'part-or-fluid' } });
  const looked = await orderOf(garage, [LABOUR]);
  expect((await sumsOf(garage, looked.id)).net).toBe(10_000);
  await garage.did('Desk', 'line.add', { jobId: looked.jobs[0]?.id ?? '', line: OIL });
  expect((await sumsOf(garage, looked.id)).net).toBe(12_450);
});

test('it bears the tax of fees, and none where fees bear none', async () => {
  const tax = (await garage.did('Odile', 'shop.get', {})).settings?.taxes ?? [];
  await setShop(garage, { wasteFee: FEE, taxes: tax.map((one) => ({ ...one, kinds: ['labour'] })) });
  const { id } = await orderOf(garage, [LABOUR]);
  expect(await sumsOf(garage, id)).toMatchObject({ net: 10_450, tax: 2000, gross: 12_450 });
});

test('a sale over the counter makes no waste', async () => {
  await setShop(garage, { wasteFee: FEE });
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { none: true },
    complaint: 'Oil',
    here: true,
  });
  await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Over the counter' }, lines: [OIL] });
  expect((await sumsOf(garage, id)).net).toBe(2000);
});
