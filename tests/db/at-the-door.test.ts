import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, expect, test } from 'vitest';
import type { PaperDocument } from '../../core/paper/document.ts';
import { type PracticeShop, practiceShop, SETTINGS } from './practice-shop.ts';

let garage: PracticeShop;
afterEach(async () => {
  await garage.end();
});

const intake = {
  customer: { add: { name: 'Ilse Vandermeer' } },
  car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' as const } },
  complaint: 'It whines.',
  here: true,
};
const LINE = { kind: 'part' as const, words: 'Seal', quantity: 1000, unitPrice: 10_000, condition: 'new' as const };

/** A paper's document as it is kept. */
function documentOf(paperId: string): PaperDocument {
  const raw = new Database(join(garage.folder, 'shop.sqlite'), { readonly: true });
  const row = raw.prepare('SELECT document FROM paper WHERE id = ?').get(paperId) as { document: string };
  raw.close();
  return JSON.parse(row.document) as PaperDocument;
}

async function quoted(orderId: string) {
  await garage.did('Desk', 'job.add', { orderId, job: { title: 'Seal' }, lines: [LINE] });
  const { paperId } = await garage.did('Desk', 'quote.issue', { orderId });
  const document = documentOf(paperId);
  if (document.kind !== 'quote') throw new Error('no quote');
  return document;
}

test('a deposit at the door is taken in the same step, with its receipt', async () => {
  garage = await practiceShop();
  const deposit = { amount: 50_000, way: 'card' as const };
  const booked = await garage.did('Desk', 'order.book', { ...intake, deposit });
  expect(booked.receipt).toMatchObject({ number: 500 });
  const order = await garage.did('Desk', 'order.get', { id: booked.id });
  expect(order.payments).toMatchObject([{ kind: 'deposit', way: 'card', amount: 50_000 }]);
  expect(order.balance).toBe(-50_000);
  expect(order.papers).toMatchObject([{ kind: 'receipt', number: 500, gross: 50_000 }]);
  expect(await garage.refused('Desk', 'order.book', { ...intake, deposit: { amount: 0, way: 'cash' } })).toMatchObject({
    code: 'bad-input',
  });
  expect((await garage.did('Desk', 'order.book', intake)).receipt).toBeNull();
});

test('storage told at the door stands on the quote and is no sum for a mechanic', async () => {
  garage = await practiceShop();
  const door = { storageTold: true, storage: { perDay: 1500, freeWorkingDays: 3 }, oldParts: 'show' as const };
  const { id } = await garage.did('Desk', 'order.book', { ...intake, door });
  const document = await quoted(id);
  expect(document.notices.at(-1)).toBe(
    'Once the car is done and you were told, leaving it here costs 15.00 USD a day plus tax; the first 3 working days cost nothing.',
  );
  expect(document.oldParts).toBe('Old parts are to be shown.');
  expect((await garage.did('Desk', 'order.get', { id })).door.storage).toEqual(door.storage);
  expect((await garage.did('Runa', 'order.get', { id })).door.storage).toBeNull();
});

test('papers in German say it in German', async () => {
  garage = await practiceShop({ language: 'de', decimal: ',', group: '.', currency: 'EUR', prices: 'inclusive' });
  const door = { storage: { perDay: 1500, freeWorkingDays: 0 }, oldParts: 'return' as const };
  const { id } = await garage.did('Desk', 'order.book', { ...intake, door });
  const document = await quoted(id);
  expect(document.oldParts).toBe('Altteile sind auszuhändigen.');
  expect(document.notices).toEqual([
    ...SETTINGS.notices,
    'Nach der Fertigmeldung kostet das Stehenlassen 15,00 EUR am Tag.',
  ]);
});

test('somebody else pays: the paper is made out to them, their exemption and their order number count', async () => {
  garage = await practiceShop();
  const payer = await garage.did('Desk', 'customer.add', {
    name: 'Ostrand Fleet',
    poRequired: true,
    taxExempt: 'E-77',
  });
  const { id } = await garage.did('Desk', 'order.book', { ...intake, payerId: payer.id });
  const document = await quoted(id);
  expect(document.billTo).toEqual(['Ostrand Fleet']);
  expect(document.sums).toMatchObject({ tax: 0, exempt: 'E-77' });
  const order = await garage.did('Desk', 'order.get', { id });
  expect(order.stops.map((stop) => stop.what)).toContain('po-missing');
  expect(
    await garage.refused('Desk', 'order.change', { id, revision: order.revision, change: { payerId: 'nobody' } }),
  ).toMatchObject({ code: 'not-found', what: 'customer' });
});

test('what a job of the book came to last times: with count and spread, for whoever sees prices', async () => {
  garage = await practiceShop({ supplies: { mode: 'itemise' } });
  const bookJob = (await garage.did('Desk', 'jobBook.list', {})).rows.find((row) => row.steps === 0);
  const any = bookJob ?? (await garage.did('Desk', 'jobBook.list', {})).rows[0];
  const bookJobId = any?.id ?? '';
  const invoiceAt = async (unitPrice: number, given = false) => {
    const { id } = await garage.did('Desk', 'order.book', intake);
    const job = await garage.did('Desk', 'job.fromBook', { orderId: id, bookJobId });
    await garage.did('Desk', 'job.change', { id: job.id, revision: job.revision, change: { fixedPrice: unitPrice } });
    if (given)
      await garage.did('Desk', 'job.give', { id: job.id, revision: job.revision + 1, given: true, why: 'goodwill' });
    const { sums, stops } = await garage.did('Desk', 'order.get', { id });
    await garage.did('Odile', 'decision.record', {
      orderId: id,
      jobs: [{ jobId: job.id, answer: 'yes' }],
      upTo: { total: sums?.gross ?? 0 },
      spoken: { name: 'Ilse Vandermeer', role: 'customer' },
      way: 'person',
    });
    const overrides = [...new Set(stops.filter((stop) => stop.override === 'owner').map((stop) => stop.what))];
    await garage.did('Odile', 'invoice.issue', {
      orderId: id,
      overrides: overrides.map((what) => ({ what, reason: 'practice' })),
    });
  };
  expect((await garage.did('Desk', 'jobBook.get', { id: bookJobId })).lastTimes.prices).toBeNull();
  for (const price of [42_000, 39_000, 45_500]) await invoiceAt(price);
  await invoiceAt(40_000, true);
  const { lastTimes } = await garage.did('Desk', 'jobBook.get', { id: bookJobId });
  expect(lastTimes.count).toBe(4);
  expect(lastTimes.prices).toEqual({ least: 39_000, middle: 42_000, most: 45_500, count: 3 });
  expect((await garage.did('Runa', 'jobBook.get', { id: bookJobId })).lastTimes.prices).toBeNull();
});
