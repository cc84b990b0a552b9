import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { InvoicePaper } from '../../core/paper/document.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
let orderId: string;

/** An order of one part at 114.40: 137.28 with tax, the sum of T05 (tests/trade/scenarios.json); the smallest coin is 0.05. */
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Agnes Pell' } },
    car: { add: { words: 'Oriel Estate', unit: 'km' } },
    complaint: 'Rattles',
    here: true,
  });
  orderId = id;
  const job = await garage.did('Desk', 'job.add', {
    orderId,
    job: { title: 'Bush' },
    lines: [{ kind: 'part', words: 'Bush', quantity: 1000, unitPrice: 11_440, condition: 'new' }],
  });
  const quote = await garage.did('Desk', 'quote.issue', { orderId });
  await garage.did('Desk', 'decision.record', {
    orderId,
    quotePaperId: quote.paperId,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 13_728 },
    spoken: { name: 'Agnes Pell', role: 'customer' },
    way: 'person',
  });
});
afterEach(async () => {
  await garage.end();
});

const bill = () => garage.did('Desk', 'invoice.issue', { orderId });
const cash = (kind: 'deposit' | 'payment' | 'refund', amount: number) =>
  garage.did('Desk', 'payment.take', { orderId, kind, way: 'cash', amount });
/** The invoice as it stands on paper. */
function printedInvoice(): InvoicePaper {
  const raw = new Database(join(garage.folder, 'shop.sqlite'), { readonly: true });
  const text = raw.prepare("SELECT document FROM paper WHERE kind = 'invoice'").pluck().get() as string;
  raw.close();
  return JSON.parse(text) as InvoicePaper;
}
const payments = async () => (await garage.did('Desk', 'order.get', { id: orderId })).payments;

describe('cash is handed over in the coins there are', () => {
  test('all of it at once: 137.30, two more than is owed, on a line of its own (T05)', async () => {
    await bill();
    expect(await cash('payment', 13_728)).toMatchObject({ handed: 13_730, balance: 0 });
  });

  test('a part: what was typed is settled, the next coin changes hands, and the rest comes to nothing in the end', async () => {
    await bill();
    expect(await cash('payment', 10_003)).toMatchObject({ handed: 10_005, balance: 3725 });
    expect((await payments()).map(({ kind, way, amount }) => [kind, way, amount])).toEqual([
      ['payment', 'cash', 10_005],
      ['rounding', '', -2],
    ]);
    expect(await cash('payment', 3725)).toMatchObject({ handed: 3725, balance: 0 });
    expect((await garage.did('Desk', 'money.get', {})).today.drawer).toBe(13_730);
    expect(await garage.did('Odile', 'care.verify', {})).toMatchObject({ sound: true });
  });

  test('a deposit, and a part of it given back', async () => {
    expect(await cash('deposit', 5002)).toMatchObject({ handed: 5000, balance: null });
    expect(await cash('refund', 1003)).toMatchObject({ handed: 1005, balance: null });
    expect((await garage.did('Desk', 'order.get', { id: orderId })).balance).toBe(-3999);
  });

  test('a deposit with its rounding stands on the invoice so that it adds up', async () => {
    await cash('deposit', 5003);
    const { toPay } = await bill();
    expect(toPay).toBe(13_728 - 5003);
    const paper = printedInvoice();
    expect(paper.taken.map(({ what, amount }) => [what, amount])).toEqual([['deposit', 5005]]);
    const taken = paper.taken.reduce((sum, one) => sum + one.amount, 0);
    expect([paper.cashRounding, paper.sums.total - taken + paper.cashRounding]).toEqual([2, paper.toPay]);
  });

  test('a part that no coin pays is refused; a rest that no coin pays is settled', async () => {
    await bill();
    expect(await garage.refused('Desk', 'payment.take', { orderId, kind: 'payment', way: 'cash', amount: 2 })).toEqual({
      code: 'bad-input',
      fields: [{ path: 'amount', problem: 'too-little', with: { least: 3 } }],
    });
    await garage.did('Desk', 'payment.take', { orderId, kind: 'payment', way: 'card', amount: 13_726 });
    expect(await cash('payment', 2)).toMatchObject({ handed: 0, balance: 0 });
  });

  test('card and transfer are taken to the last cent', async () => {
    await bill();
    const input = { orderId, kind: 'payment', way: 'card', amount: 10_003 } as const;
    expect(await garage.did('Desk', 'payment.take', input)).toMatchObject({ handed: 10_003, balance: 3725 });
  });
});
