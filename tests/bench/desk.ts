import { closeSync, fdatasyncSync, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import type { OperationName } from '../../core/contract/index.ts';
import type { Shop } from '../../db/shop.ts';
import { type Measured, measure } from './measure.ts';
import { rawFind } from './raw-find.ts';
import type { Years } from './years.ts';

/** The rows of the desk, each against the same work in raw prepared SQL on the same file. */
export async function deskRows(shop: Shop, raw: Database.Database, years: Years, turns: number): Promise<Measured[]> {
  const ask = async (operation: OperationName, input: unknown) => {
    const answer = await shop.call(operation, input, { personId: years.ownerId, device: 'bench' }, { at: years.now });
    if (!answer.ok) throw new Error(`${operation}: ${JSON.stringify(answer.error)}`);
    return answer.output;
  };
  const any = (list: readonly string[], turn: number) => list[(turn * 7919) % list.length] ?? '';

  const five = [
    'SELECT * FROM work_order WHERE id = ?',
    'SELECT * FROM job WHERE work_order_id = ? ORDER BY place',
    'SELECT line.* FROM line JOIN job ON job.id = line.job_id WHERE job.work_order_id = ? ORDER BY job.place, line.place',
    'SELECT * FROM decision JOIN decision_job ON decision_job.decision_id = decision.id WHERE work_order_id = ?',
    'SELECT clock_entry.* FROM clock_entry JOIN job ON job.id = clock_entry.job_id WHERE job.work_order_id = ?',
  ].map((sql) => raw.prepare(sql));
  const facts = raw.prepare(
    `SELECT work_order.*, customer.name, car.plate,
      (SELECT count(*) FROM job WHERE work_order_id = work_order.id) AS jobs,
      (SELECT sum(quantity * unit_price) FROM line JOIN job ON job.id = line.job_id WHERE job.work_order_id = work_order.id) AS sum,
      (SELECT max(at) FROM decision WHERE work_order_id = work_order.id) AS said,
      (SELECT count(*) FROM paper WHERE work_order_id = work_order.id) AS papers,
      (SELECT count(*) FROM clock_entry JOIN job ON job.id = clock_entry.job_id WHERE job.work_order_id = work_order.id) AS clocks
     FROM work_order JOIN customer ON customer.id = customer_id JOIN car ON car.id = car_id
     WHERE handed_over_at IS NULL AND cancelled_at IS NULL`,
  );
  const life = raw.prepare(
    `SELECT work_order.*, (SELECT json_group_array(title) FROM job WHERE work_order_id = work_order.id) AS titles,
      (SELECT sum(gross) FROM paper WHERE work_order_id = work_order.id AND kind = 'invoice') AS sum
     FROM work_order WHERE car_id = ? ORDER BY opened_at DESC`,
  );
  const found = rawFind(raw);
  const held = raw.prepare(
    `SELECT opened_at / 604800000 AS week, count(*) FROM work_order WHERE rowid IN (
       SELECT rowid FROM find_work_order WHERE find_work_order MATCH @t
       UNION SELECT work_order.rowid FROM work_order JOIN customer ON customer.id = customer_id
         WHERE customer.rowid IN (SELECT rowid FROM find_customer WHERE find_customer MATCH @t)
       UNION SELECT work_order.rowid FROM work_order JOIN job ON job.work_order_id = work_order.id
         WHERE job.rowid IN (SELECT rowid FROM find_job WHERE find_job MATCH @t)
       UNION SELECT work_order.rowid FROM work_order JOIN car_plate ON car_plate.car_id = work_order.car_id
         WHERE car_plate.rowid IN (SELECT rowid FROM find_car_plate WHERE find_car_plate MATCH @t)
     ) GROUP BY week`,
  );
  const typed = ['solb', 'AB000', '5551012', 'osker 14', 'KP0123', 'P0012', 'lukasik', '14212'];
  const shelf = raw.prepare('SELECT * FROM part ORDER BY bin, number LIMIT 50');
  const unpaid = raw.prepare(
    `SELECT paper.id, paper.number, paper.gross, order_balance.owed FROM order_balance
     JOIN paper ON paper.work_order_id = order_balance.work_order_id AND paper.kind = 'invoice'
     WHERE order_balance.owed <> 0`,
  );
  const change = raw.prepare('UPDATE line SET quantity = ?, revision = revision + 1 WHERE id = ?');
  const note = raw.prepare('INSERT INTO request (id, operation, input_hash, answer, at) VALUES (?, ?, ?, ?, ?)');
  const trail = raw.prepare('INSERT INTO trail SELECT max(n) + 1, ?, ?, ?, ?, ?, ?, ?, ? FROM trail');
  const sheet = five[2];
  let revision = (raw.prepare('SELECT revision FROM line WHERE id = ?').get(years.line) as { revision: number })
    .revision;
  const other = raw.prepare('SELECT id FROM line WHERE id <> ? LIMIT 1').get(years.line) as { id: string };
  const plain = openSync(join(years.folder, 'plain'), 'w');

  const rows = [
    await measure(
      { what: 'an order, whole', limit: '5 prepared queries', goal: 1.3, turns },
      (turn) => ask('order.get', { id: any(years.open, turn) }),
      (turn) => five.map((one) => one.all(any(years.open, turn))),
    ),
    await measure(
      { what: 'Today, 40 open orders', limit: 'one query', goal: 1.1, turns: Math.ceil(turns / 4) },
      () => ask('today.get', {}),
      () => facts.all(),
    ),
    await measure(
      { what: "a car's life, 60 visits", limit: 'raw', goal: 1.15, turns },
      () => ask('car.get', { id: years.car }),
      () => life.all(years.car),
    ),
    await measure(
      { what: 'find as one types, p95', limit: 'the same rows, raw, p95', goal: 1.5, turns: turns * 2, share: 0.95 },
      (turn) => ask('find.line', { text: typed[turn % typed.length] }),
      (turn) => found(typed[turn % typed.length] ?? ''),
    ),
    await measure(
      { what: 'orders that hold a text, by week', limit: 'the same indexes, raw', goal: 1.5, turns },
      (turn) => ask('order.weeks', { filter: { which: 'all', text: typed[turn % typed.length] } }),
      (turn) => held.all({ t: `"${typed[turn % typed.length]}"` }),
    ),
    await measure(
      { what: 'stock, 50 parts', limit: 'raw', goal: 1.2, turns },
      () => ask('stock.get', { most: 50 }),
      () => shelf.all(),
    ),
    await measure(
      { what: 'what is owed', limit: 'raw', goal: 1.1, turns: Math.ceil(turns / 10) },
      () => ask('money.get', {}),
      () => unpaid.all(),
    ),
    await measure(
      { what: 'a line saved, durable', limit: 'raw, FULL', goal: 1.5, turns },
      async (turn) => {
        const saved = (await ask('line.change', {
          ...{ id: years.line, revision, change: { quantity: 1000 + turn } },
        })) as { revision: number };
        revision = saved.revision;
      },
      (turn) => {
        raw.exec('BEGIN IMMEDIATE');
        sheet?.all(any(years.open, turn));
        change.run(1000 + turn, other.id);
        note.run(`raw-${turn}-${process.pid}`, 'line.change', 'x', '{}', turn);
        trail.run(turn, years.ownerId, 'bench', 'line.change', 'x', '[]', 'x', 'x');
        raw.exec('COMMIT');
      },
    ),
    await measure(
      { what: 'a line saved, durable', limit: 'floor: write and fdatasync', goal: null, turns },
      async (turn) => {
        const saved = (await ask('line.change', {
          ...{ id: years.line, revision, change: { quantity: 1000 + turn } },
        })) as { revision: number };
        revision = saved.revision;
      },
      () => {
        writeSync(plain, Buffer.alloc(8192, 1));
        fdatasyncSync(plain);
      },
    ),
  ];
  closeSync(plain);
  return rows;
}
