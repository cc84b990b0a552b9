import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { OperationName } from '../../core/contract/index.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

/** Tables that grow with the years. */
const GROWING = [
  ...['customer', 'car', 'car_plate', 'car_owner', 'odometer_reading', 'work_order', 'job', 'line', 'finding', 'paper'],
  ...['paper_sent', 'decision', 'decision_job', 'clock_entry', 'step_done', 'torque_entry', 'part_move', 'awaited'],
  ...['payment', 'message', 'reminder', 'order_balance', 'booking', 'request', 'trail', 'to_send', 'statement'],
  ...['statement_sent', 'statement_noted', 'consent'],
];
/** Indexes that hold only what is open, so that going through the whole of one is going through what is open. */
const SHORT = ['order_balance_owed', 'order_balance_open', 'work_order_here', 'awaited_open', 'line_core'];
/** Indexes of which only the newest row is read. */
const NEWEST = ['statement_made'];

let garage: PracticeShop;
let raw: Database.Database;
let orderId = '';
let customerId = '';
const prepared = new Set<string>();
const everPrepared = new Set<string>();
const { prepare } = Database.prototype;

beforeAll(async () => {
  Database.prototype.prepare = function (this: Database.Database, sql: string) {
    prepared.add(sql);
    everPrepared.add(sql);
    return prepare.call(this, sql);
  } as typeof prepare;
  garage = await practiceShop();
  raw = new Database(join(garage.folder, 'shop.sqlite'), { readonly: true });
  const booked = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Anna Berg', phone: '555-0101' } },
    car: { add: { plate: 'KT 44', words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    here: true,
  });
  orderId = booked.id;
  customerId = booked.customerId;
  const part = await garage.did('Desk', 'part.add', { number: 'GO-7590', words: 'Oil', unit: 'L', price: 1, cost: 1 });
  await garage.did('Desk', 'job.add', {
    orderId,
    job: { title: 'Look' },
    lines: [{ kind: 'part', words: 'Oil', quantity: 1000, unitPrice: 9600, partId: part.id }],
  });
});
afterAll(async () => {
  Database.prototype.prepare = prepare;
  raw.close();
  await garage.end();
});

/** Steps of the plans that go through the whole of a table that grows, in a file without statistics. */
async function goneThrough(operation: OperationName, input: unknown): Promise<string[]> {
  prepared.clear();
  await garage.did('Odile', operation, input as never);
  const questions = [...prepared].filter((sql) => /^(select|with)/i.test(sql));
  expect(questions.length).toBeGreaterThan(0);
  return questions.flatMap((sql) =>
    (prepare.call(raw, `EXPLAIN QUERY PLAN ${sql}`) as Database.Statement)
      .all(...Array.from({ length: sql.split('?').length - 1 }, () => ''))
      .map((step) => (step as { detail: string }).detail)
      .filter((detail) => {
        const [, table = '', index = ''] = /^SCAN (\w+)(?:.* INDEX (\w+))?/.exec(detail) ?? [];
        const named = new RegExp(`"(\\w+)" as "${table}"`).exec(sql)?.[1] ?? table;
        return GROWING.includes(named) && !SHORT.includes(index) && !(NEWEST.includes(index) && /limit \?$/.test(sql));
      })
      .map((detail) => `${detail}: ${sql}`),
  );
}

/** A statement that was prepared before is not prepared again, so each operation is asked once in this file. */
test.each<[OperationName, (order: string, customer: string) => unknown]>([
  ['today.get', () => ({})],
  ['stock.get', () => ({ most: 50 })],
  ['stock.still', () => ({})],
  ['money.get', () => ({})],
  ['order.get', (id) => ({ id })],
  ['find.line', () => ({ text: 'berg' })],
  ['customer.get', (_, customer) => ({ id: customer })],
  ['customer.credit', (_, customer) => ({ id: customer })],
  ['message.list', (_, customer) => ({ customerId: customer })],
])('%s goes through no table that grows with the years', async (operation, input) => {
  expect(await goneThrough(operation, input(orderId, customerId))).toEqual([]);
});

test('papers to send are counted in the index that holds only those', async () => {
  const countSql = [...everPrepared].filter((sql) => /^select count\(\*\).* from "to_send"/.test(sql));
  expect(countSql).toHaveLength(1);
  const steps = (prepare.call(raw, `EXPLAIN QUERY PLAN ${countSql[0]}`) as Database.Statement).all(0);
  expect(steps.map((step) => (step as { detail: string }).detail)).toEqual([
    'SEARCH to_send USING COVERING INDEX to_send_issued (issued_at>?)',
  ]);
});
