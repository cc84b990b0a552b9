import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { shopSettings } from '../../core/contract/shop.ts';
import { StatementRuns } from '../../db/books/runs.ts';
import type { Context } from '../../db/context.ts';
import { ShopDatabase } from '../../db/file/dialect.ts';
import { foldText } from '../../db/fold.ts';
import { filteredOrders, type OrderFilter } from '../../db/order/filter.ts';
import { migrations } from '../../db/schema/migrations.ts';
import type { Tables } from '../../db/tables.ts';
import { Writer } from '../../db/writer.ts';
import { at, type PracticeShop, practiceShop, SETTINGS } from './practice-shop.ts';

const ORDERS = 6000;
const FIRST = at('2020-01-01T08:00');
const SAID = ['Whines on the overrun', 'Pulls left', 'Clunk when taking up', 'Yearly service', 'Brzęczy, gdy zimny'];

let garage: PracticeShop;
let raw: Database.Database;

beforeAll(async () => {
  garage = await practiceShop();
  raw = new Database(join(garage.folder, 'shop.sqlite'));
  const { id: person } = raw.prepare("SELECT id FROM person WHERE name = 'Odile'").get() as { id: string };
  const prepared = new Map<string, Database.Statement>();
  const insert = (table: string, row: Record<string, unknown>) => {
    const names = Object.keys(row);
    const kept = prepared.get(table);
    const values = names.map((name) => `@${name}`).join(', ');
    const statement = kept ?? raw.prepare(`INSERT INTO ${table} (${names.join(', ')}) VALUES (${values})`);
    prepared.set(table, statement);
    statement.run(row);
  };
  raw.transaction(() => {
    for (let n = 0; n < ORDERS; n += 1) {
      const name = `Ilse Vandermeer ${n}`;
      if (n % 4 === 0) {
        insert('customer', {
          ...{ id: `c${n}`, revision: 1, name, phone: '', phone2: '', email: '', address: '[]', tell_by: '' },
          ...{ tax_number: '', tax_exempt: '', po_required: 0, may_yes: '[]', note: '', made_at: 0 },
          ...{ find_name: foldText(name), find_phone: '', find_phone2: '' },
        });
        insert('car', {
          ...{ id: `a${n}`, revision: 1, plate: `KAL ${n}`, vin: '', words: 'Corvane R', year: null, unit: 'km' },
          ...{ axle_code: '', note: '', made_at: 0, find_plate: `KAL${n}`, find_words: 'corvane r' },
        });
        const worn = { id: `p${n}`, car_id: `a${n}`, plate: `KAL ${n}`, find_plate: `KAL${n}`, from_day: '2020-01-01' };
        insert('car_plate', worn);
      }
      const own = n - (n % 4);
      insert('work_order', {
        ...{
          id: `w${n}`,
          revision: 1,
          number: n + 1,
          customer_id: `c${own}`,
          car_id: `a${own}`,
          opened_at: FIRST + n * 1e6,
        },
        ...{ opened_by: person, complaint: `${SAID[n % SAID.length]} ${n}`, when_it_happens: '[]', door: '{}' },
        ...{ handed_over_at: n > ORDERS - 40 ? null : FIRST + n * 1e6 + 1, handed_over_to: '', cancel_why: '' },
        ...{ promise_words: '', po_number: '', old_parts_answer: '' },
      });
      insert('job', {
        ...{ id: `j${n}`, revision: 1, work_order_id: `w${n}`, place: 0, title: `Rear axle ${n}`, kind: 'charged' },
        ...{ note: '', bearer: '', offered: 0, given: 0, give_why: '', taken_out: 0 },
      });
    }
  })();
}, 120_000);
afterAll(async () => {
  raw?.close();
  await garage?.end();
});

/** How the database goes about a filter: the steps of its plan. */
async function planOf(filter: OrderFilter): Promise<string[]> {
  const db = new ShopDatabase<Tables>(raw);
  return db.transaction(async (tx) => {
    const context: Context = {
      ...{ tx, write: new Writer(tx), now: 0, today: '2026-03-10', practice: true, folder: garage.folder },
      ...{ warnings: [], settings: shopSettings.parse(SETTINGS), who: null, seesPrices: true, seesCost: true },
      runs: new StatementRuns(
        () => 0,
        () => undefined,
        () => undefined,
      ),
      afterwards: () => undefined,
    };
    const query = (await filteredOrders(context, filter)).select('work_order.opened_at').compile();
    const plan = raw.prepare(`EXPLAIN QUERY PLAN ${query.sql}`).all(...query.parameters) as { detail: string }[];
    return plan.map(({ detail }) => detail);
  });
}

/** Steps that read a whole table of the shop; a find index is asked, not read through, also where the plan says SCAN. */
const readThrough = (plan: readonly string[]) =>
  plan.filter((step) =>
    /^SCAN (work_order|job|customer|car|car_plate|decision|decision_job|fluid_sample|line)\b/.test(step),
  );

const SHORT = ['refused', 'cameBack', 'lab', 'oldUnit', 'unpaid'] as const;
const TYPED = ['ove', 'whines on', 'KAL 12', 'vandermeer 40', 'axle 77', '1187', 'il', 'ka', 'w'];

test.each(['as it grew', 'with its figures counted'])('no question reads a whole table, %s', async (when) => {
  if (when !== 'as it grew') raw.exec('ANALYZE');
  for (const which of SHORT) {
    const plan = await planOf({ which, year: null, text: '' });
    const scans = plan.filter((step) => step.startsWith('SCAN') && !/USING (COVERING )?INDEX/.test(step));
    expect([which, ...scans.filter((step) => !/subquery|CONSTANT/i.test(step))]).toEqual([which]);
  }
  for (const text of TYPED)
    expect([text, ...readThrough(await planOf({ which: 'all', year: null, text }))]).toEqual([text]);
});

test('what is asked by an index that holds only such rows is asked by it', async () => {
  const plan = async (which: OrderFilter['which']) => (await planOf({ which, year: null, text: '' })).join('\n');
  expect(await plan('refused')).toContain('decision_job_no');
  expect(await plan('cameBack')).toContain('job_came_back');
  expect(await plan('lab')).toContain('fluid_sample_open');
  expect(await plan('unpaid')).toContain('order_balance_owed');
});

test('the same orders as by looking at each', async () => {
  const found = async (text: string) =>
    (await garage.did('Desk', 'order.weeks', { filter: { which: 'all', text } })).total;
  const looked = (text: string) =>
    (
      raw
        .prepare(
          `SELECT count(*) AS n FROM work_order WHERE complaint LIKE @t
            OR customer_id IN (SELECT id FROM customer WHERE find_name LIKE @t)
            OR car_id IN (SELECT car_id FROM car_plate WHERE find_plate LIKE @t)
            OR id IN (SELECT work_order_id FROM job WHERE title LIKE @t)
            OR number = @number`,
        )
        .get({ t: `%${text}%`, number: Number(text) }) as { n: number }
    ).n;
  for (const text of ['overrun 1', 'pulls left', '4711', 'axle 12', 'meer 400', 'kal48'])
    expect([text, await found(text)]).toEqual([text, looked(text)]);
  // Letters that accents come off are found without them.
  expect(await found('brzeczy')).toBe(ORDERS / SAID.length);
});

test('a shop of the version before finds what was said there long ago', async () => {
  const old = new Database(':memory:');
  for (const { sql } of migrations.slice(0, 5)) old.exec(sql);
  for (const table of ['person', 'customer', 'car', 'work_order', 'job']) {
    const names = (old.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name);
    const rows = raw
      .prepare(`SELECT ${names.join(', ')} FROM ${table} LIMIT 400`)
      .raw()
      .all() as unknown[][];
    const into = old.prepare(`INSERT INTO ${table} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`);
    for (const row of rows) into.run(...row);
  }
  old.exec(migrations[5].sql);
  const held = (table: string, text: string) =>
    old.prepare(`SELECT count(*) AS n FROM find_${table} WHERE find_${table} MATCH ?`).get(`"${text}"`);
  expect(held('work_order', 'pulls left')).toEqual({ n: 80 });
  expect(held('job', 'rear axle')).toEqual({ n: 400 });
  old.exec("UPDATE work_order SET complaint = 'Nothing any more' WHERE id = 'w1'");
  old.exec("DELETE FROM job WHERE id = 'j1'");
  expect(held('work_order', 'pulls left')).toEqual({ n: 79 });
  expect(held('job', 'rear axle')).toEqual({ n: 399 });
  old.close();
});
