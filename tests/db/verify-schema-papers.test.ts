import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openShop } from '../../db/shop.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(() => garage.end());

async function behind(sql: string): Promise<void> {
  await garage.shop.close();
  const raw = new Database(join(garage.folder, 'shop.sqlite'));
  raw.exec(sql);
  raw.close();
  garage.shop = await openShop({ folder: garage.folder });
}
const faults = async () => (await garage.did('Odile', 'care.verify', {})).faults;

describe('verify names what is not as the migrations make it', () => {
  test.each([
    ['DROP TRIGGER paper_no_update', 'schema-missing', 'paper', 'paper_no_update', 'trigger'],
    [
      'DROP TRIGGER paper_no_update; DROP TRIGGER paper_no_delete',
      'schema-missing',
      'paper',
      /^paper_no_/,
      'trigger, and 1 more',
    ],
    ['CREATE INDEX quick ON customer (name)', 'schema-unknown', 'customer', 'quick', 'index'],
    ['CREATE TABLE aside (n INTEGER)', 'schema-unknown', 'aside', 'aside', 'table'],
    ['ALTER TABLE bay ADD COLUMN colour TEXT', 'schema-changed', 'bay', 'bay', 'table'],
    [
      "DROP TRIGGER paper_no_update; CREATE TRIGGER paper_no_update BEFORE UPDATE ON paper WHEN old.net < 0 BEGIN SELECT RAISE(ABORT, 'no'); END",
      ...(['schema-changed', 'paper', 'paper_no_update', 'trigger'] as const),
    ],
  ] as const)('%s', async (sql, what, table, row, detail) => {
    await behind(sql);
    const found = await faults();
    expect(found).toContainEqual({ what, table, row: expect.stringMatching(row), detail });
    expect(found.filter((one) => one.what.startsWith('schema-'))).toHaveLength(1);
  });

  test('an index that is gone, whichever it is', async () => {
    const raw = new Database(join(garage.folder, 'shop.sqlite'), { readonly: true });
    const indexes = raw
      .prepare("SELECT name, tbl_name AS t FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL LIMIT 1")
      .all() as { name: string; t: string }[];
    raw.close();
    const [index] = indexes;
    await behind(`DROP INDEX ${index?.name}`);
    expect(await faults()).toEqual([{ what: 'schema-missing', table: index?.t, row: index?.name, detail: 'index' }]);
  });
});

describe('papers are made again and compared with their files', () => {
  const quote = async () => {
    const { id: orderId } = await garage.did('Desk', 'order.book', {
      customer: { add: { name: 'Per Halloran', phone: '555-0177' } },
      car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
      ...{ complaint: 'Pulls left.', here: false },
    });
    const lines = [{ kind: 'labour' as const, words: 'Look', quantity: 1000, unitPrice: 9000 }];
    await garage.did('Desk', 'job.add', { orderId, job: { title: 'Look' }, lines });
    return (await garage.did('Desk', 'quote.issue', { orderId })).paperId;
  };
  const looked = (after: string | null = null, most = 20) => garage.did('Odile', 'care.papers', { after, most });
  const papers = () => readdirSync(join(garage.folder, 'papers'));

  test('a piece at a time, and one that nobody printed yet is sound', async () => {
    const made = [await quote(), await quote(), await quote()].toSorted();
    await garage.did('Desk', 'paper.read', { id: made[0] ?? '' });
    const first = await looked(null, 2);
    expect(first).toEqual({ of: 3, looked: 2, faults: [], next: made[1] });
    expect(await looked(first.next, 2)).toEqual({ of: 3, looked: 1, faults: [], next: null });
    expect(papers()).toHaveLength(1);
  });

  test('a damaged file is named, is left as it is, and is made anew where the owner says so', async () => {
    const id = await quote();
    const { base64 } = await garage.did('Desk', 'paper.read', { id });
    const [name = ''] = papers();
    const path = join(garage.folder, 'papers', name);
    const whole = readFileSync(path);
    const damaged = Buffer.from(whole);
    damaged[200] = (damaged[200] ?? 0) ^ 1;
    writeFileSync(path, damaged);
    const fault = { what: 'paper-file-differs', table: 'paper', row: id, detail: name };
    expect((await looked()).faults).toEqual([fault]);
    expect(readFileSync(path)).toEqual(damaged);
    expect(await garage.refused('Desk', 'paper.makeAnew', { id })).toMatchObject({ code: 'not-allowed' });
    await garage.did('Odile', 'paper.makeAnew', { id });
    expect((await looked()).faults).toEqual([]);
    expect(readFileSync(path).toString('base64')).toBe(base64);
    // What was found is kept beside it.
    expect(papers()).toHaveLength(2);
    const found = papers().find((one) => one.includes(' as found ')) ?? '';
    expect(readFileSync(join(garage.folder, 'papers', found))).toEqual(damaged);
  });
});
