import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { OutputOf } from '../../core/contract/index.ts';
import type { InvoicePaper } from '../../core/paper/document.ts';
import { readPages, textOf } from '../paper/read-back.ts';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
});
afterEach(async () => {
  await garage.end();
});

/** An order of one part, invoiced: 120.00 with tax, due fourteen days on. */
async function invoiced(plate: string, name: string, deposit = 0) {
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name, tellBy: 'message', email: 'who@example.invalid' } },
    car: { add: { plate, words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    here: true,
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Part' },
    lines: [{ kind: 'part', words: 'Part', quantity: 2000, unitPrice: 5000, condition: 'new' }],
  });
  const first = await garage.did('Desk', 'quote.issue', { orderId: id });
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    quotePaperId: quote.paperId,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 12_000 },
    spoken: { name, role: 'customer' },
    way: 'person',
  });
  if (deposit > 0)
    await garage.did('Desk', 'payment.take', { orderId: id, kind: 'deposit', way: 'card', amount: deposit });
  return {
    id,
    lineId: job.lineIds[0] ?? '',
    quotes: [first, quote],
    bill: () => garage.did('Desk', 'invoice.issue', { orderId: id }),
  };
}

describe('what is owed and what came in', () => {
  test('unpaid by days past due, today by way, deposits and what is in a customer’s favour apart', async () => {
    const first = await invoiced('KTB 4471', 'Ilse Vandermeer', 2000);
    await first.bill();
    garage.now = at('2026-03-20T09:00');
    const second = await invoiced('JJD 311', 'Agnes Pell');
    const paid = await second.bill();
    await garage.did('Desk', 'payment.take', { orderId: second.id, kind: 'payment', way: 'cash', amount: 12_000 });
    await garage.did('Desk', 'creditNote.issue', {
      invoicePaperId: paid.paperId,
      reason: 'one was not fitted',
      lines: [{ lineId: second.lineId, quantity: 1000 }],
    });
    await invoiced('PLT 9', 'Tomas Ruell', 3000);
    garage.now = at('2026-03-26T09:00');
    await garage.did('Desk', 'payment.take', { orderId: second.id, kind: 'refund', way: 'cash', amount: 1000 });
    await garage.did('Desk', 'payment.take', { orderId: first.id, kind: 'payment', way: 'cash', amount: 4000 });
    const seen = await garage.did('Desk', 'money.get', {});
    expect(seen.unpaid).toMatchObject([
      {
        number: 1045,
        customer: 'Ilse Vandermeer',
        dueOn: '2026-03-24',
        age: 16,
        daysPastDue: 2,
        gross: 12_000,
        open: 6000,
      },
    ]);
    expect(seen.owed).toBe(6000);
    expect(seen.ageing.map(({ upTo, sum }) => [upTo, sum])).toEqual([
      [0, 0],
      [30, 6000],
      [60, 0],
      [90, 0],
      [null, 0],
    ]);
    expect(seen.inFavour).toMatchObject([{ number: 1046, customer: 'Agnes Pell', sum: 5000 }]);
    expect(seen.deposits).toBe(3000);
    expect(seen.today).toEqual({
      ways: [{ way: 'cash', in: 4000, back: 1000, count: 2 }],
      in: 4000,
      back: 1000,
      drawer: 3000,
    });
    expect(await garage.refused('Runa', 'money.get', {})).toMatchObject({ code: 'not-allowed' });
  });

  test('papers newest first, by page, kind and text; to send what was not sent, the newest quote only', async () => {
    const one = await invoiced('KTB 4471', 'Ilse Vandermeer');
    const two = await invoiced('JJD 311', 'Agnes Pell', 2000);
    garage.now = at('2026-03-11T09:00');
    const bill = await one.bill();
    const all = await garage.did('Desk', 'paper.list', {});
    expect(all.rows.map((row) => row.kind)).toEqual(['invoice', 'receipt', 'quote', 'quote', 'quote', 'quote']);
    const pages = [];
    for (let before: string | null = null; ; ) {
      const { rows }: OutputOf<'paper.list'> = await garage.did('Desk', 'paper.list', { before, most: 4 });
      pages.push(...rows.map((row) => row.id));
      before = rows.at(-1)?.id ?? null;
      if (before === null) break;
    }
    expect(pages).toEqual(all.rows.map((row) => row.id));
    const found = async (text: string) =>
      (await garage.did('Desk', 'paper.list', { text, kind: 'invoice' })).rows.length;
    expect([await found('vandermeer'), await found('KTB-4471'), await found('1045'), await found('pell')]).toEqual([
      1, 1, 1, 0,
    ]);

    const toSend = async () =>
      (await garage.did('Desk', 'paper.toSend', {})).rows.map((row) => [row.kind, row.version, row.customer]);
    expect(await toSend()).toEqual([
      ['quote', 2, 'Agnes Pell'],
      ['receipt', null, 'Agnes Pell'],
      ['invoice', null, 'Ilse Vandermeer'],
    ]);
    await garage.did('Desk', 'paper.sent', { id: bill.paperId, how: 'by message' });
    await garage.did('Desk', 'paper.sent', { id: two.quotes[1]?.paperId ?? '', how: 'by post' });
    expect(await toSend()).toEqual([['receipt', null, 'Agnes Pell']]);
  });
});

test('a mechanic is told whose move it is, not how much is owed', async () => {
  const { id, bill } = await invoiced('KTB 4471', 'Ilse Vandermeer');
  await bill();
  const seen = async (who: string) => (await garage.did(who, 'order.get', { id })).next;
  expect(await seen('Desk')).toMatchObject({ what: 'pay-and-collect', with: { balance: 12_000 } });
  expect(await seen('Runa')).toMatchObject({ what: 'pay-and-collect', with: {} });
  expect(Object.keys((await seen('Runa')).with)).not.toContain('balance');
});

test('an invoice after a deposit that was partly paid back says both, so that its lines add up to what is to pay', async () => {
  const order = await invoiced('KTB 4471', 'Ilse Vandermeer', 5000);
  await garage.did('Desk', 'payment.take', { orderId: order.id, kind: 'refund', way: 'cash', amount: 2000 });
  const { paperId } = await order.bill();
  const raw = new Database(join(garage.folder, 'shop.sqlite'), { readonly: true });
  const text = raw.prepare('SELECT document FROM paper WHERE id = ?').pluck().get(paperId) as string;
  raw.close();
  const document = JSON.parse(text) as InvoicePaper;
  expect(document.taken.map(({ what, amount }) => [what, amount])).toEqual([
    ['deposit', 5000],
    ['refund', -2000],
  ]);
  const taken = document.taken.reduce((sum, one) => sum + one.amount, 0);
  expect(document.toPay).toBe(document.sums.total - taken + document.cashRounding);
  expect(document.toPay).toBe(9000);
  const { base64 } = await garage.did('Desk', 'paper.read', { id: paperId });
  const printed = (await readPages(new Uint8Array(Buffer.from(base64, 'base64')))).map(textOf).join('\n');
  expect(printed).toMatch(/Paid back, Cash[^\n]*\s+20\.00/i);
});
