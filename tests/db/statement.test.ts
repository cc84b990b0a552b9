import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { OutputOf } from '../../core/contract/index.ts';
import { readPages, textOf } from '../paper/read-back.ts';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' }, payDays: 30 });
  garage.now = at('2026-05-20T09:00');
});
afterEach(async () => {
  await garage.end();
});

/** An order of one part, said yes to; `gross` holds the tax of a fifth. Whole cents only where gross / 1.2 is one. */
async function order(
  gross: number,
  customer: { id: string } | { add: { name: string; email?: string } },
  payerId?: string,
) {
  const { id, customerId } = await garage.did('Desk', 'order.book', {
    ...{ customer, payerId: payerId ?? null, complaint: 'It whines.', here: true },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Part' },
    lines: [{ kind: 'part', words: 'Part', quantity: 1000, unitPrice: (gross * 10) / 12, condition: 'new' }],
  });
  const quote = await garage.did('Desk', 'quote.issue', { orderId: id });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId: id, quotePaperId: quote.paperId, jobs: [{ jobId: job.id, answer: 'yes' }] },
    ...{ upTo: { total: gross }, spoken: { name: 'Somebody', role: payerId ? 'payer' : 'customer' }, way: 'person' },
  });
  const pay = (amount: number, kind: 'deposit' | 'payment' | 'refund' = 'payment', way: 'cash' | 'card' = 'card') =>
    garage.did('Desk', 'payment.take', { orderId: id, kind, way, amount });
  const bill = () => garage.did('Desk', 'invoice.issue', { orderId: id });
  return { id, customerId, bill, pay, lineId: job.lineIds[0] ?? '' };
}

/** The worked sum of the trade's page: 3850.00 before, 2617.80 more, 2000.00 paid. 3850.00 is not a fifth more than cents. */
async function worked(name = 'Hollow Lane Farm') {
  const first = await order(385_200, { add: { name, email: 'farm@example.invalid' } });
  await first.bill();
  await first.pay(200);
  garage.now = at('2026-06-10T09:00');
  const second = await order(261_780, { id: first.customerId });
  await second.bill();
  garage.now = at('2026-06-12T09:00');
  await first.pay(200_000);
  garage.now = at('2026-06-30T17:00');
  return { customerId: first.customerId, first, second };
}

const get = (customerId: string, more: { from?: string; until?: string } = {}) =>
  garage.did('Desk', 'statement.get', { customerId, ...more });
const textOfPdf = async (base64: string) =>
  (await readPages(new Uint8Array(Buffer.from(base64, 'base64')))).map(textOf).join('\n');

describe('the statement of a customer', () => {
  test('3850.00 + 2617.80 - 2000.00 = 4467.80, and it agrees with what is kept as owed', async () => {
    const { customerId, second } = await worked();
    const seen = await get(customerId);
    expect(seen).toMatchObject({
      ...{ from: '2026-06-01', until: '2026-06-30', opening: 385_000, invoiced: 261_780, paid: 200_000 },
      ...{ closing: 446_780, credited: 0, back: 0, rounding: 0, unapplied: [], sent: [] },
    });
    expect(seen.rows.map(({ kind, on, amount, balance }) => [kind, on, amount, balance])).toEqual([
      ['invoice', '2026-06-10', 261_780, 646_780],
      ['payment', '2026-06-12', -200_000, 446_780],
    ]);
    expect(seen.open.map(({ dueOn, open, daysPastDue }) => [dueOn, open, daysPastDue])).toEqual([
      ['2026-06-19', 185_000, 11],
      ['2026-07-10', 261_780, -10],
    ]);
    expect((await garage.did('Desk', 'money.get', {})).owed).toBe(seen.closing);
    // As of an earlier day it says what stood then.
    expect(await get(customerId, { from: '2026-06-01', until: '2026-06-11' })).toMatchObject({ closing: 646_780 });
    expect(await get(customerId, { from: '2026-01-01', until: '2026-05-20' })).toMatchObject({
      ...{ opening: 0, closing: 385_000 },
    });
    await garage.did('Desk', 'creditNote.issue', {
      ...{ invoicePaperId: (await garage.did('Desk', 'order.get', { id: second.id })).papers.at(-1)?.id ?? '' },
      ...{ reason: 'not fitted', lines: [{ lineId: second.lineId, quantity: 1000 }] },
    });
    expect(await get(customerId)).toMatchObject({ credited: 261_780, closing: 185_000 });
  });

  test('a deposit on open work stands alone; money back and cash steps are rows of their own', async () => {
    const { customerId, first } = await worked();
    const third = await order(12_000, { id: customerId });
    await third.pay(4003, 'deposit', 'cash');
    await first.pay(185_000);
    const seen = await get(customerId);
    expect(seen.unapplied).toMatchObject([{ orderId: third.id, sum: 4003 }]);
    expect(seen.rows.slice(2).map(({ kind, amount }) => [kind, amount])).toEqual([
      ['deposit', -4005],
      ['rounding', 2],
      ['payment', -185_000],
    ]);
    expect(seen.closing).toBe(261_780 - 4003);
    expect(seen.ageing.map(({ sum }) => sum)).toEqual([261_780, 0, 0, 0, 0]);
  });

  test('the invoice is on the account of whoever pays it, joined entries are read as one', async () => {
    const payer = await garage.did('Desk', 'customer.add', { name: 'Fleet Office' });
    const driven = await order(12_000, { add: { name: 'Driver' } }, payer.id);
    await driven.pay(2000, 'deposit');
    await driven.bill();
    expect(await get(payer.id)).toMatchObject({ closing: 10_000, paid: 2000 });
    expect(await get(driven.customerId)).toMatchObject({ closing: 0, rows: [] });
    const again = await garage.did('Desk', 'customer.add', { name: 'Fleet Office Ltd' });
    await garage.did('Desk', 'customer.join', {
      ...{ fromId: payer.id, fromRevision: 1, intoId: again.id, intoRevision: 1 },
    });
    expect((await get(again.id)).closing).toBe(10_000);
    expect((await get(payer.id)).closing).toBe(10_000);
    expect((await garage.did('Desk', 'statement.owing', {})).rows).toMatchObject([
      { customerId: again.id, closing: 10_000, invoices: 1 },
    ]);
  });

  test('as a PDF with what it was made from; from the same instant the same bytes, whatever came since', async () => {
    const { customerId, first } = await worked();
    const wanted = { customerId, from: '2026-06-01', until: '2026-06-30', asOf: garage.now };
    const one = await garage.did('Desk', 'statement.pdf', wanted);
    expect(one.name).toBe('Statement 2026-06-30 Hollow Lane Farm.pdf');
    const text = await textOfPdf(one.base64);
    for (const part of ['4,467.80', '3,850.00', '30 Jun 2026, 17:00', 'Practice']) expect(text).toContain(part);
    garage.now = at('2026-06-30T17:30');
    await first.pay(100_000);
    expect(await garage.did('Desk', 'statement.pdf', wanted)).toEqual(one);
    expect(await textOfPdf((await garage.did('Desk', 'statement.pdf', { customerId })).base64)).toContain('3,467.80');
  });

  test('sent is written down with how, and what it said', async () => {
    const { customerId } = await worked();
    const days = { from: '2026-06-01', until: '2026-06-30', asOf: garage.now };
    await garage.did('Desk', 'statement.sent', { customerId, ...days, how: 'by e-mail' });
    expect((await get(customerId)).sent).toMatchObject([{ ...days, closing: 446_780, how: 'by e-mail', by: 'Desk' }]);
    expect((await garage.did('Desk', 'statement.owing', {})).rows).toMatchObject([{ sentAt: garage.now }]);
    expect(await garage.did('Odile', 'care.verify', {})).toMatchObject({ sound: true });
  });

  test('made as a PDF, opened as a mail and sent: each stands in the log of whoever it is for, the first two once', async () => {
    const { customerId } = await worked();
    const days = { from: '2026-06-01', until: '2026-06-30', asOf: garage.now };
    const made = { customerId, ...days, what: 'made' as const };
    expect(await garage.did('Desk', 'statement.noted', made)).toEqual({ noted: 1 });
    expect(await garage.did('Desk', 'statement.noted', made)).toEqual({ noted: 0 });
    garage.now += 60_000;
    await garage.did('Desk', 'statement.noted', { ...made, what: 'mail' });
    garage.now += 60_000;
    await garage.did('Desk', 'statement.sent', { customerId, ...days, how: 'by e-mail' });
    const log = await garage.did('Desk', 'message.list', { customerId });
    expect(log.rows.filter(({ kind }) => kind === 'statement')).toMatchObject([
      { about: 'sent', way: 'by e-mail', words: '2026-06-30', direction: 'out', by: 'Desk' },
      { about: 'mail', way: '', words: '2026-06-30' },
      { about: 'made', way: '', words: '2026-06-30' },
    ]);
    // It is one statement, whatever was done with it.
    expect((await get(customerId)).sent).toHaveLength(1);
    expect((await garage.did('Desk', 'privacy.copy', { customerId })).text).toContain('by e-mail');
    expect(await garage.refused('Runa', 'statement.noted', made)).toMatchObject({ code: 'not-allowed' });
    expect(await garage.refused('Desk', 'statement.noted', { id: 'none', what: 'made' })).toMatchObject({
      code: 'not-found',
    });
    expect(await garage.did('Odile', 'care.verify', {})).toMatchObject({ sound: true });
  });

  test('what does not fit is said', async () => {
    const { customerId } = await worked();
    const problem = async (input: object) => {
      const error = await garage.refused('Desk', 'statement.get', { customerId, ...input });
      return error.code === 'bad-input' ? error.fields : error.code;
    };
    expect(await problem({ until: '2026-07-01' })).toEqual([{ path: 'until', problem: 'in-the-future' }]);
    expect(await problem({ from: '2026-06-30', until: '2026-06-01' })).toEqual([
      { path: 'until', problem: 'before-from' },
    ]);
    expect(await problem({ customerId: 'nobody' })).toBe('not-found');
    expect(await garage.refused('Runa', 'statement.get', { customerId })).toMatchObject({ code: 'not-allowed' });
  });
});

/** Waits until a run is not being made any more. */
async function settled(runId: string): Promise<NonNullable<OutputOf<'statement.run'>['run']>> {
  for (;;) {
    const { run } = await garage.did('Desk', 'statement.run', { runId });
    if (run && !run.running) return run;
    await new Promise((wait) => setTimeout(wait, 20));
  }
}

describe('a statement for everybody who owes', () => {
  const three = async () => {
    for (const name of ['Ilse Vandermeer', 'Μαρία Λεονταρή', 'Пётр Световидов'])
      await (await order(12_000, { add: { name } })).bill();
    const paid = await order(12_000, { add: { name: 'Agnes Pell' } });
    await paid.bill();
    await paid.pay(12_000);
  };

  test('a file each, of whoever owes and nobody else; those that are gone are made again', async () => {
    await three();
    const { runId, of } = await garage.did('Desk', 'statement.start', {});
    expect(of).toBe(3);
    const run = await settled(runId);
    expect(run).toMatchObject({ of: 3, made: 3, failed: null, leftOut: [], joined: false });
    expect(run.files.map((name) => name.replace(/^\d+ /, '')).sort()).toEqual(
      ['Ilse Vandermeer.pdf', 'Μαρία Λεονταρή.pdf', 'Пётр Световидов.pdf'].sort(),
    );
    const [name = ''] = run.files;
    const before = await garage.did('Desk', 'statement.file', { runId, name });
    expect(await textOfPdf(before.base64)).toContain('120.00');
    rmSync(join(run.folder, name));
    await (await order(6000, { add: { name: 'Later' } })).bill();
    await garage.did('Desk', 'statement.goOn', { runId });
    expect(await settled(runId)).toMatchObject({ of: 3, made: 3 });
    expect(await garage.did('Desk', 'statement.file', { runId, name })).toEqual(before);
    expect(readdirSync(run.folder).filter((file) => file.endsWith('.part'))).toEqual([]);
  });

  test('one file for the printer, each on a page of its own', async () => {
    await three();
    const { runId } = await garage.did('Desk', 'statement.start', { joined: true });
    const { files, rows } = await settled(runId);
    expect(files).toEqual(['0001-0003 Statement 2026-05-20.pdf']);
    expect(rows.map(({ file }) => file)).toEqual([files[0], files[0], files[0]]);
    const { base64 } = await garage.did('Desk', 'statement.file', { runId, name: files[0] ?? '' });
    const pages = (await readPages(new Uint8Array(Buffer.from(base64, 'base64')))).map(textOf);
    expect(pages.map((page) => /page \d of \d/.exec(page)?.[0])).toEqual(['page 1 of 1', 'page 1 of 1', 'page 1 of 1']);
  });

  test('stopped, it ends with the one in hand; gone on with, also after the shop was closed, the rest is made', async () => {
    for (let n = 0; n < 12; n += 1) await (await order(12_000, { add: { name: `Customer ${n}` } })).bill();
    const { runId } = await garage.did('Desk', 'statement.start', {});
    await garage.did('Desk', 'statement.stop', { runId });
    const stopped = await settled(runId);
    expect(stopped.made).toBeLessThan(12);
    expect(stopped.files).toHaveLength(stopped.made);
    await garage.reopen();
    expect((await garage.did('Desk', 'statement.run', {})).run).toMatchObject({ runId, of: 12, running: false });
    await garage.did('Desk', 'statement.goOn', { runId });
    expect(await settled(runId)).toMatchObject({ made: 12, failed: null });
  });

  test('a name that no font has leaves out that one, and says which', async () => {
    await three();
    await (await order(12_000, { add: { name: '車田' } })).bill();
    for (const joined of [false, true]) {
      const { runId } = await garage.did('Desk', 'statement.start', { joined });
      const run = await settled(runId);
      expect(run.leftOut).toMatchObject([{ customer: '車田', characters: '車 田' }]);
      expect([run.of, run.made, run.failed]).toEqual([4, 3, null]);
    }
  });

  test('a place that cannot be written fails in words, and what was made stays', async () => {
    await three();
    mkdirSync(join(garage.folder, 'papers'), { recursive: true });
    writeFileSync(join(garage.folder, 'papers', 'statements'), 'a file where a folder should stand');
    const { runId } = await garage.did('Desk', 'statement.start', {});
    expect(await settled(runId)).toMatchObject({ made: 0, failed: 'fault' });
    rmSync(join(garage.folder, 'papers', 'statements'));
    await garage.did('Desk', 'statement.goOn', { runId });
    expect(await settled(runId)).toMatchObject({ made: 3, failed: null });
  });

  test('those of the last run stand on the list of Today until each is sent', async () => {
    const waiting = async (as = 'Desk') => (await garage.did(as, 'today.get', {})).waiting.statements;
    expect(await waiting()).toBeNull();
    await three();
    const first = await garage.did('Desk', 'statement.start', {});
    await settled(first.runId);
    garage.now = at('2026-05-21T09:00');
    // A newer run takes the place of the older one.
    const { runId } = await garage.did('Desk', 'statement.start', { joined: true });
    const { files, rows } = await settled(runId);
    expect(await waiting()).toEqual({ n: 3, until: '2026-05-21' });
    expect(await waiting('Runa')).toBeNull();
    // Opening the file to print it is no sending.
    const opened = { runId, name: files[0] ?? '', what: 'made' as const };
    expect(await garage.did('Desk', 'statement.noted', opened)).toEqual({ noted: 3 });
    expect((await waiting())?.n).toBe(3);
    await garage.did('Desk', 'statement.sent', { id: rows[0]?.id ?? '', how: 'by post' });
    expect((await waiting())?.n).toBe(2);
    // A statement that was sent to them apart from the run says at least as much.
    garage.now = at('2026-05-22T09:00');
    const apart = { from: '2026-05-01', until: '2026-05-22', asOf: garage.now, how: 'by hand' };
    await garage.did('Desk', 'statement.sent', { customerId: rows[1]?.customerId ?? '', ...apart });
    expect((await waiting())?.n).toBe(1);
    await garage.did('Desk', 'statement.sent', { id: rows[2]?.id ?? '', how: 'by post' });
    expect(await waiting()).toBeNull();
    expect(await garage.refused('Desk', 'statement.noted', { ...opened, name: '../x.pdf' })).toMatchObject({
      code: 'not-found',
    });
  });

  test('nobody owes: there is no run; one of a run is marked as sent', async () => {
    expect(await garage.did('Desk', 'statement.start', {})).toMatchObject({ of: 0 });
    expect(await garage.did('Desk', 'statement.run', {})).toEqual({ run: null });
    await three();
    const { runId } = await garage.did('Desk', 'statement.start', {});
    const { rows } = await settled(runId);
    await garage.did('Desk', 'statement.sent', { id: rows[1]?.id ?? '', how: 'by post' });
    expect((await settled(runId)).rows.map(({ sent }) => sent.map(({ how }) => how))).toEqual([[], ['by post'], []]);
    const outside = '../../../shop.sqlite';
    expect(await garage.refused('Desk', 'statement.file', { runId, name: outside })).toMatchObject({
      code: 'not-found',
    });
  });
});
