import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { listCopies } from '../../db/file/backup.ts';
import { shopPaths } from '../../db/file/folder.ts';
import { openShop } from '../../db/shop.ts';
import { restore } from '../../electron/copies.ts';
import { type PracticeShop, practiceShop } from '../db/practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.shop.close();
  rmSync(garage.folder, { recursive: true, force: true });
});

/** A visit from the door to the invoice; the number of the invoice. */
async function visit(name: string): Promise<number> {
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name } },
    car: { add: { words: 'Oriel Estate', unit: 'km' } },
    complaint: 'Pulls left.',
    mileage: 61_000,
    here: true,
  });
  const lines = [{ kind: 'labour' as const, words: 'Look', quantity: 800, unitPrice: 12_800 }];
  const job = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Look' }, lines });
  await garage.did('Desk', 'decision.record', {
    orderId: id,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 20_000 },
    spoken: { name, role: 'customer' },
    way: 'person',
  });
  const order = await garage.did('Desk', 'order.get', { id });
  await garage.did('Desk', 'order.mileageOut', { id, revision: order.revision, mileage: 61_001 });
  return (await garage.did('Desk', 'invoice.issue', { orderId: id })).number;
}

const verified = async () => (await garage.did('Odile', 'care.verify', {})).faults;

test('after a copy is brought back no invoice number is given twice, and the gap is known', async () => {
  const first = await visit('Agnes Pell');
  const copy = await garage.shop.keepCopy();
  await visit('Bram Oakes');
  const lastPrinted = await visit('Cato Lind');
  await garage.shop.close();
  await restore(garage.folder, copy?.path ?? '', lastPrinted - 1);
  const half = await openShop({ folder: garage.folder });
  const second = await half.keepCopy();
  await half.close();
  // Somebody finds a later paper: lifted once more, from a copy of what was brought back.
  const back = await restore(garage.folder, second?.path ?? '', lastPrinted);
  expect(back).toMatchObject({ numbers: { copied: first, next: lastPrinted + 1 } });
  const aside = readdirSync(garage.folder).filter((name) => /^shop put aside .*sqlite$/.test(name));
  const whole = aside.map((name) => {
    const raw = new Database(join(garage.folder, name), { readonly: true });
    const { n } = raw.prepare("SELECT max(number) AS n FROM paper WHERE kind = 'invoice'").get() as { n: number };
    raw.close();
    return n;
  });
  expect(whole.sort()).toEqual([first, lastPrinted]);

  garage.shop = await openShop({ folder: garage.folder });
  expect(garage.shop.warnings).toEqual([]);
  expect(await visit('Dora Venn')).toBe(lastPrinted + 1);
  expect(await verified()).toEqual([]);
  expect((await garage.did('Odile', 'trail.list', {})).rows.map((row) => row.operation)).toContain('shop.restored');
});

test('without a number from paper the copy goes on where it ends', async () => {
  const first = await visit('Agnes Pell');
  const copy = await garage.shop.keepCopy();
  await garage.shop.close();
  expect(await restore(garage.folder, copy?.path ?? '', null)).toMatchObject({
    numbers: { copied: first, next: first + 1 },
  });
  garage.shop = await openShop({ folder: garage.folder });
  expect(await verified()).toEqual([]);
});

test('a gap that nobody lifted over is still a fault', async () => {
  await visit('Agnes Pell');
  await garage.shop.close();
  const raw = new Database(shopPaths(garage.folder).database);
  raw.exec("UPDATE number_series SET next = next + 2 WHERE id = 'invoice'");
  raw.close();
  garage.shop = await openShop({ folder: garage.folder });
  await visit('Bram Oakes');
  expect((await verified()).map((fault) => fault.what)).toContain('number-gap');
});

test('a copy made at close holds all that was done, and none is made for nothing', async () => {
  await visit('Agnes Pell');
  const done = (await garage.did('Odile', 'trail.list', {})).rows[0]?.n;
  expect((await garage.shop.keepCopy())?.trail).toBe(done);
  expect(await garage.shop.keepCopy()).toBeNull();
  const [copy, ...more] = listCopies(join(garage.folder, 'backups'));
  expect([copy?.trail, more.length]).toEqual([done, 0]);
  await garage.shop.close();
  // A copy opens as a shop of its own, and all of it agrees.
  await restore(garage.folder, copy?.path ?? '', null);
  garage.shop = await openShop({ folder: garage.folder });
  expect(await verified()).toEqual([]);
});
