import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { copyShop } from '../../db/file/backup.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let shop: PracticeShop;
beforeEach(async () => {
  shop = await practiceShop();
});
afterEach(() => shop.end());

async function orderWithPart(quantity: number) {
  const part = await shop.did('Desk', 'part.add', {
    number: 'OR-583',
    words: 'O-ring 58 x 3',
    unit: '',
    price: 640,
    cost: 300,
    bin: 'D 07',
    keepAtLeast: 4000,
    onHand: 5000,
  });
  const order = await shop.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It drips.',
    mileage: 42_180,
    here: true,
  });
  const job = await shop.did('Desk', 'job.add', {
    orderId: order.id,
    job: { title: 'New O-ring' },
    lines: [{ kind: 'part', words: 'O-ring', partId: part.id, quantity, unitPrice: 640 }],
  });
  return { partId: part.id, orderId: order.id, jobId: job.id, lineId: job.lineIds[0] ?? '' };
}
const row = async () => (await shop.did('Desk', 'stock.get', {})).rows[0];
const decide = (orderId: string, jobId: string, answer: 'yes' | 'no') =>
  shop.did('Desk', 'decision.record', {
    orderId,
    jobs: [{ jobId, answer }],
    upTo: answer === 'yes' ? { total: 10_000 } : null,
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
    reached: 'Runa heard it',
  });

test('a line speaks for its part until it is drawn; free and what to buy follow', async () => {
  const { partId, orderId, jobId, lineId } = await orderWithPart(2000);
  expect(await row()).toMatchObject({ onHand: 5000, spokenFor: 2000, free: 3000, buy: 1000, onTheWay: 0 });
  await decide(orderId, jobId, 'yes');
  await shop.did('Runa', 'part.issue', { jobId, lineId, partId, quantity: 1000 });
  expect(await row()).toMatchObject({ onHand: 4000, spokenFor: 1000, free: 3000, buy: 1000 });
  await shop.did('Desk', 'awaited.order', { lineId, kind: 'part', supplier: 'Pellin', dueOn: '2026-03-09' });
  const stock = await shop.did('Desk', 'stock.get', {});
  expect(stock.rows[0]).toMatchObject({ onTheWay: 2000, buy: 0 });
  expect(stock.onTheWay).toMatchObject([{ orderId, words: 'O-ring', quantity: 2000, late: true }]);
});

test('what somebody said no to is not spoken for', async () => {
  const { orderId, jobId } = await orderWithPart(2000);
  await decide(orderId, jobId, 'no');
  expect(await row()).toMatchObject({ spokenFor: 0, free: 5000 });
});

test('moves of a part come newest first; cost is the owner’s to see', async () => {
  const { partId, orderId, jobId, lineId } = await orderWithPart(2000);
  await decide(orderId, jobId, 'yes');
  shop.now += 60_000;
  await shop.did('Runa', 'part.issue', { jobId, lineId, partId, quantity: 2000 });
  const { rows } = await shop.did('Odile', 'part.moves', { partId });
  expect(rows).toMatchObject([
    { what: 'issued', quantity: -2000, value: -600, order: { id: orderId } },
    { what: 'received', quantity: 5000, value: 1500, order: null },
  ]);
  expect((await shop.did('Desk', 'part.moves', { partId })).rows[0]?.value).toBeNull();
  expect((await shop.did('Runa', 'stock.get', {})).rows[0]).toMatchObject({ price: null, value: null });
});

test('labour rates are saved whole on the shop’s revision; none goes, one is usual', async () => {
  const { revision, rates } = await shop.did('Odile', 'shop.get', {});
  const kept = rates.map((rate) => ({ ...rate, usual: false }));
  const added = { id: null, name: 'Account', price: 8800, usual: true };
  await shop.did('Odile', 'shop.rates', { revision, rates: [...kept, added] });
  const after = await shop.did('Odile', 'shop.get', {});
  expect(after.rates).toMatchObject([
    { name: 'Labour', usual: false },
    { name: 'Account', price: 8800, usual: true },
  ]);
  expect(await shop.refused('Odile', 'shop.rates', { revision, rates: [added] })).toMatchObject({
    code: 'changed-meanwhile',
  });
  const now = after.revision;
  expect(await shop.refused('Odile', 'shop.rates', { revision: now, rates: [added] })).toMatchObject({
    code: 'bad-input',
  });
  expect(await shop.refused('Odile', 'shop.rates', { revision: now, rates: kept })).toMatchObject({
    code: 'bad-input',
  });
  expect(await shop.refused('Desk', 'shop.rates', { revision: now, rates: after.rates })).toMatchObject({
    code: 'not-allowed',
  });
});

test('bays are renamed and added in their order', async () => {
  const { revision, bays } = await shop.did('Odile', 'shop.get', {});
  const renamed = bays.map((bay) => ({ ...bay, name: 'Pit' }));
  await shop.did('Odile', 'shop.bays', { revision, bays: [...renamed, { id: null, name: 'Yard', words: '' }] });
  expect((await shop.did('Odile', 'shop.get', {})).bays.map((bay) => bay.name)).toEqual(['Pit', 'Yard']);
  expect((await shop.did('Odile', 'care.verify', {})).faults).toEqual([]);
});

test('copies in the shop’s folder are listed with their size', async () => {
  expect(await shop.did('Odile', 'care.copies', {})).toEqual({ copies: [] });
  const backups = join(shop.folder, 'backups');
  mkdirSync(backups, { recursive: true });
  const copy = await copyShop({ from: shop.folder, to: backups, at: shop.now, zone: 'UTC' });
  expect((await shop.did('Odile', 'care.copies', {})).copies).toMatchObject([{ name: copy.name, bytes: copy.bytes }]);
});

test('below the least it is bought up to the most, in whole packs; neither said, just to the least', async () => {
  const { partId } = await orderWithPart(2000);
  const change = async (fields: { keepAtMost?: number | null; pack?: number | null }) => {
    const { revision = 0 } = (await row()) ?? {};
    await shop.did('Desk', 'part.change', { id: partId, revision, change: fields });
  };
  // 5 there, 2 spoken for: 3 free, under the 4 to keep. Up to 9 are 6 more: two packs of 4.
  await change({ keepAtMost: 9000 });
  expect(await row()).toMatchObject({ free: 3000, keepAtMost: 9000, pack: null, buy: 6000 });
  await change({ pack: 4000 });
  expect(await row()).toMatchObject({ buy: 8000 });
  // A most under the least is no reason to stay short.
  await change({ keepAtMost: 1000, pack: null });
  expect(await row()).toMatchObject({ buy: 1000 });
  await change({ keepAtMost: null });
  expect(await row()).toMatchObject({ keepAtMost: null, buy: 1000 });
});

test('what lies there and has not moved for the shop’s months is named, until it moves', async () => {
  const { partId, orderId, jobId, lineId } = await orderWithPart(2000);
  const still = () => shop.did('Desk', 'stock.still', {});
  expect((await still()).rows).toEqual([]);
  const months = async (deadStockMonths: number) => {
    const { revision } = await shop.did('Odile', 'shop.get', {});
    await shop.did('Odile', 'shop.change', { revision, settings: { deadStockMonths } });
  };
  await months(2);
  shop.now += 95 * 86_400_000;
  expect(await still()).toMatchObject({ worth: null, rows: [{ id: partId, onHand: 5000, value: null }] });
  expect(await shop.did('Odile', 'stock.still', {})).toMatchObject({ worth: 1500, rows: [{ value: 1500 }] });
  await months(12);
  expect((await still()).rows).toEqual([]);
  await months(2);
  await decide(orderId, jobId, 'yes');
  await shop.did('Runa', 'part.issue', { jobId, lineId, partId, quantity: 1000 });
  expect((await still()).rows).toEqual([]);
});
