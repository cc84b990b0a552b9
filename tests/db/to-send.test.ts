import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { books } from '../../db/schema/13-books.ts';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.end();
});

const waiting = async () => {
  const { rows } = await garage.did('Desk', 'paper.toSend', {});
  const { toSend } = (await garage.did('Desk', 'today.get', {})).waiting;
  expect(toSend).toBe(rows.length);
  return rows.map(({ kind, version }) => (version === null ? kind : `${kind} ${version}`));
};

/** An order with two quotes, the first of them sent, and an invoice. */
async function visit(): Promise<{ invoicePaperId: string }> {
  const { id: orderId } = await garage.did('Desk', 'order.book', {
    ...{ customer: { add: { name: 'Ilse Vandermeer' } }, car: { add: { words: 'Corvane R', unit: 'km' } } },
    ...{ complaint: 'It whines.', here: true },
  });
  const line = { kind: 'labour' as const, words: 'Look', quantity: 1000, unitPrice: 9600 };
  const job = await garage.did('Desk', 'job.add', { orderId, job: { title: 'Look' }, lines: [line] });
  await garage.did('Desk', 'quote.issue', { orderId });
  expect(await waiting()).toEqual(['quote 1']);
  await garage.did('Desk', 'line.add', { jobId: job.id, line });
  const second = await garage.did('Desk', 'quote.issue', { orderId });
  // The newer one takes the place of the first.
  expect(await waiting()).toEqual(['quote 2']);
  await garage.did('Desk', 'decision.record', {
    ...{ orderId, quotePaperId: second.paperId, jobs: [{ jobId: job.id, answer: 'yes' as const }] },
    ...{ upTo: { total: 90_000 }, spoken: { name: 'Ilse Vandermeer', role: 'customer' as const }, way: 'person' },
  });
  const { paperId } = await garage.did('Desk', 'invoice.issue', { orderId });
  expect(await waiting()).toEqual(['invoice']);
  return { invoicePaperId: paperId };
}

test('a paper waits until it is sent; of quotes the one that stands, until the invoice', async () => {
  const { invoicePaperId } = await visit();
  await garage.did('Desk', 'paper.sent', { id: invoicePaperId, how: 'by hand' });
  expect(await waiting()).toEqual([]);
  expect(await garage.did('Odile', 'care.verify', {})).toMatchObject({ sound: true, checked: { to_send: 0 } });
});

test('what lay longer than 400 days is not told any more', async () => {
  await visit();
  garage.now = at('2027-04-14T07:59');
  expect(await waiting()).toEqual(['invoice']);
  garage.now = at('2027-04-14T08:00');
  expect(await waiting()).toEqual([]);
});

test('in a shop from before, what waits is found when it is brought up to date', async () => {
  await visit();
  const raw = new Database(join(garage.folder, 'shop.sqlite'));
  const kept = () => raw.prepare('SELECT paper_id, issued_at FROM to_send ORDER BY paper_id').all();
  const before = kept();
  expect(before).toHaveLength(1);
  // As the migration builds it, once more from the papers that are there.
  const fill = /INSERT INTO to_send SELECT id[^;]*;/.exec(books.sql)?.[0] ?? '';
  raw.exec(`DELETE FROM to_send; ${fill}`);
  expect(kept()).toEqual(before);
  raw.close();
});
