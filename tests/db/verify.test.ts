import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { APPEND_ONLY } from '../../db/schema/1-first.ts';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.end();
});

/** An order with rows in most tables. */
async function fill(): Promise<void> {
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Per Halloran', phone: '555-0177' } },
    car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    complaint: 'Pulls left.',
    mileage: 61_000,
    here: true,
  });
  const part = await garage.did('Desk', 'part.add', {
    number: 'CW-18',
    words: 'Crush washer',
    unit: '',
    price: 210,
    cost: 90,
    onHand: 10_000,
  });
  const job = await garage.did('Desk', 'job.add', {
    orderId: id,
    job: { title: 'Look' },
    lines: [
      { kind: 'labour', words: 'Look', quantity: 800, unitPrice: 12_800 },
      { kind: 'part', words: 'Washer', quantity: 2000, unitPrice: 210 },
    ],
  });
  await garage.did('Desk', 'quote.issue', { orderId: id });
  await garage.did('Desk', 'decision.tried', { orderId: id, way: 'phone', reached: '555-0177' });
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 20_000 },
    spoken: { name: 'Per Halloran', role: 'customer' },
    way: 'person',
  });
  await garage.did('Runa', 'part.issue', {
    jobId: job.id,
    lineId: job.lineIds[1] ?? null,
    partId: part.id,
    quantity: 2000,
  });
  await garage.did('Runa', 'clock.on', { jobId: job.id });
  garage.now = at('2026-03-10T09:00');
  await garage.did('Runa', 'clock.off', {});
  const order = await garage.did('Desk', 'order.get', { id });
  await garage.did('Desk', 'order.mileageOut', { id, revision: order.revision, mileage: 61_001 });
  const invoice = await garage.did('Desk', 'invoice.issue', { orderId: id });
  await garage.did('Desk', 'payment.take', { orderId: id, kind: 'payment', way: 'card', amount: invoice.toPay });
}

/** Works on the file behind the shop's back, the triggers out of the way. */
async function behind(work: (raw: Database.Database) => void): Promise<void> {
  await garage.shop.close();
  const raw = new Database(join(garage.folder, 'shop.sqlite'));
  raw.pragma('foreign_keys = OFF');
  for (const table of APPEND_ONLY)
    raw.exec(`DROP TRIGGER IF EXISTS ${table}_no_update; DROP TRIGGER IF EXISTS ${table}_no_delete`);
  work(raw);
  raw.close();
  const { openShop } = await import('../../db/shop.ts');
  garage.shop = await openShop({ folder: garage.folder });
}

const faults = async () => (await garage.did('Odile', 'care.verify', {})).faults;

describe('verify says which row', () => {
  test('nothing is wrong with an untouched shop', async () => {
    await fill();
    const { sound, checked } = await garage.did('Odile', 'care.verify', {});
    expect(sound).toBe(true);
    expect(checked).toMatchObject({ paper: 3, part_move: 2, clock_entry: 1 });
  });

  test.each([
    'paper',
    'decision',
    'decision_job',
    'contact_try',
    'clock_entry',
    'part_move',
    'payment',
    'posting',
    'odometer_reading',
    'request',
    'line',
    'customer',
    'work_order',
  ])('a changed row of %s', async (table) => {
    await fill();
    let id = '';
    const column: Record<string, string> = {
      paper: 'issued_at',
      decision: 'words',
      decision_job: 'risk',
      contact_try: 'words',
      clock_entry: 'why',
      part_move: 'note',
      payment: 'note',
      posting: 'on_day',
      odometer_reading: 'why',
      request: 'answer',
      line: 'words',
      customer: 'name',
      work_order: 'complaint',
    };
    await behind((raw) => {
      id = (raw.prepare(`SELECT id FROM ${table} LIMIT 1`).get() as { id: string }).id;
      const value = table === 'paper' ? 1 : 'behind its back';
      raw.prepare(`UPDATE ${table} SET ${column[table]} = ? WHERE id = ?`).run(value, id);
    });
    expect(await faults()).toContainEqual({ what: 'row-changed', table, row: id, detail: 'not as the trail noted it' });
  });

  test('a row taken away, and one put in', async () => {
    await fill();
    let gone = '';
    await behind((raw) => {
      gone = (raw.prepare('SELECT id FROM payment LIMIT 1').get() as { id: string }).id;
      raw.prepare('DELETE FROM payment WHERE id = ?').run(gone);
      raw.prepare("INSERT INTO bay VALUES ('x', 'Bay 9', '', 9)").run();
    });
    const found = await faults();
    expect(found).toContainEqual(expect.objectContaining({ what: 'row-missing', table: 'payment', row: gone }));
    expect(found).toContainEqual(expect.objectContaining({ what: 'row-unknown', table: 'bay', row: 'x' }));
  });

  test('a trail row rewritten', async () => {
    await fill();
    await behind((raw) => raw.prepare("UPDATE trail SET operation = 'nothing.much' WHERE n = 3").run());
    expect(await faults()).toContainEqual(expect.objectContaining({ what: 'trail-broken', row: '3' }));
  });

  test("a paper's sum and a stock balance are added again", async () => {
    await fill();
    await behind((raw) => {
      raw.prepare("UPDATE paper SET gross = gross + 1 WHERE kind = 'invoice'").run();
      raw.prepare('UPDATE part SET on_hand = on_hand + 1000').run();
    });
    expect((await faults()).map((fault) => fault.what)).toEqual(
      expect.arrayContaining(['paper-sum', 'stock-balance', 'row-changed']),
    );
  });
});
