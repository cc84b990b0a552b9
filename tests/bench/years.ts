import { createHash } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { OutputOf } from '../../core/contract/index.ts';
import { shopSettings } from '../../core/contract/shop.ts';
import { rulesOf } from '../../core/money/shop-rules.ts';
import { openShop } from '../../db/shop.ts';
import { SETTINGS } from '../db/practice-shop.ts';

/** How large a shop is after so many years: 25,000 customers, 32,000 cars, 200,000 orders at twenty. */
export interface Years {
  readonly folder: string;
  readonly ownerId: string;
  readonly orders: readonly string[];
  readonly open: readonly string[];
  /** The car with the most visits. */
  readonly car: string;
  readonly line: string;
  readonly now: number;
}

const DAY = 86_400_000;
const NOW = Date.parse('2026-11-25T10:00:00Z');
const NAMES = ['Vandermeer', 'Halloran', 'Osker', 'Łukasik', 'Solberg', 'Quist', 'Ansgar', 'Brandt', 'Holm', 'Fell'];
const FIRST = ['Ilse', 'Per', 'Bram', 'Zofia', 'Henk', 'Lena', 'Paul', 'Otto', 'Signe', 'Nora'];
const CARS = ['Corvane R', 'Oriel Estate', 'Brackwater Six', 'Corvane Pickup', 'Oriel 2'];
const OPEN = 40;
const VISITS = 60;

/** An id as the program makes them, from its kind and its number: the same figures make the same shop. */
function id(kind: string, n: number): string {
  const hex = createHash('sha256').update(`${kind} ${n}`).digest('hex');
  return `01900000-${hex.slice(0, 4)}-7${hex.slice(4, 7)}-8${hex.slice(7, 10)}-${hex.slice(10, 22)}`;
}

const RULES = rulesOf(shopSettings.parse(SETTINGS), false);

/** What an invoice keeps of what it was reckoned from. */
function sheetOf(order: number, jobs: number): string {
  const lines = (j: number) =>
    Array.from({ length: 4 }, (_, l) => ({
      ...{ id: id('line', (order * 2 + j) * 4 + l), kind: l === 0 ? 'labour' : 'part', quantity: 1500 },
      ...{ unitPrice: 9600, given: false },
    }));
  const sheet = {
    jobs: Array.from({ length: jobs }, (_, j) => ({ id: id('job', order * 2 + j), given: false, lines: lines(j) })),
    ...{ discounts: [], exempt: false },
  };
  return JSON.stringify({ sheet, rules: RULES });
}

/**
 * Sets a practice shop up through the program, and fills it with years of rows written straight into the file: what is
 * measured is reading and writing, not the making. Its trail is not one that `verify` would take.
 */
export async function makeYears(folder: string, years: number, say: (done: string) => void): Promise<Years> {
  const shop = await openShop({ folder, practice: true });
  const answer = await shop.call(
    'shop.setUp',
    {
      settings: SETTINGS,
      people: [
        { name: 'Odile', role: 'owner', code: 'owner-code', payRate: 0 },
        { name: 'Runa', role: 'mechanic', code: 'runa-code', payRate: 2800 },
      ],
      bays: [{ name: 'Bay 1', words: '' }],
      rates: [{ name: 'Labour', price: 9600, usual: true }],
    },
    { personId: null, device: 'bench' },
    { at: NOW - years * 365 * DAY },
  );
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  const [ownerId = '', runaId = ''] = (answer.output as OutputOf<'shop.setUp'>).people.map((person) => person.id);
  await shop.close();

  const raw = new Database(join(folder, 'shop.sqlite'));
  raw.pragma('synchronous = OFF');
  raw.pragma('cache_size = -400000');
  const columns = (table: string) => (raw.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name);
  const inserts = new Map<string, (row: Record<string, unknown>) => void>();
  const insert = (table: string, row: Record<string, unknown>) => {
    let run = inserts.get(table);
    if (run === undefined) {
      const names = columns(table);
      const statement = raw.prepare(
        `INSERT INTO ${table} (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`,
      );
      run = (each) => void statement.run(...names.map((name) => each[name] ?? null));
      inserts.set(table, run);
    }
    run(row);
  };

  const share = years / 20;
  const [customers, cars, orders, parts] = [25_000, 32_000, 200_000, 3000].map((n) => Math.round(n * share));
  const bay = (raw.prepare('SELECT id FROM bay').get() as { id: string }).id;
  raw.exec('BEGIN');
  for (let n = 0; n < (customers ?? 0); n++) {
    const name = `${FIRST[n % 10]} ${NAMES[Math.floor(n / 10) % 10]} ${n}`;
    const phone = `555${String(1_000_000 + n)}`;
    insert('customer', {
      ...{ id: id('customer', n), revision: 1, name, phone, phone2: '', email: '', address: '[]', tell_by: '' },
      ...{ tax_number: '', tax_exempt: '', po_required: 0, may_yes: '[]', note: '', made_at: NOW },
      ...{ find_name: name.toLowerCase().replaceAll('ł', 'l'), find_phone: phone, find_phone2: '' },
    });
  }
  for (let n = 0; n < (cars ?? 0); n++) {
    const plate = `${String.fromCharCode(65 + (n % 26), 65 + (Math.floor(n / 26) % 26))}${String(n).padStart(5, '0')}`;
    const words = CARS[n % CARS.length] ?? '';
    insert('car', {
      ...{ id: id('car', n), revision: 1, plate, vin: `1M8GDM9A1KP${String(n).padStart(6, '0')}`, words, year: 2001 },
      ...{ unit: 'km', axle_code: '', note: '', made_at: NOW, find_plate: plate, find_words: words.toLowerCase() },
    });
    insert('car_plate', { id: id('plate', n), car_id: id('car', n), plate, find_plate: plate, from_day: '2007-01-01' });
    insert('car_owner', {
      ...{ id: id('owner', n), car_id: id('car', n), customer_id: id('customer', n % (customers ?? 1)) },
      from_day: '2007-01-01',
    });
  }
  for (let n = 0; n < (parts ?? 0); n++) {
    const number = `P${String(n).padStart(5, '0')}`;
    insert('part', {
      ...{
        id: id('part', n),
        revision: 1,
        number,
        words: `Bearing ${n}`,
        unit: '',
        price: 1000 + n,
        bin: `A ${n % 90}`,
      },
      ...{ one_time: 0, keep_at_least: 1000, on_hand: 5000, value: 4000, find_number: number },
    });
  }
  say(`${customers} customers, ${cars} cars, ${parts} parts`);
  const all = orders ?? 0;
  let trail = (raw.prepare('SELECT max(n) AS n FROM trail').get() as { n: number }).n;
  for (let n = 0; n < all; n++) {
    const open = n >= all - OPEN;
    // One in a hundred is called off before it comes.
    const off = !open && n % 100 === 7;
    const at = NOW - Math.round(((all - n) / all) * years * 365 * DAY);
    // Every visit of one car, so often; the others take turns.
    const car = n % Math.floor(all / VISITS) === 0 ? 0 : 1 + (n % ((cars ?? 2) - 1));
    const orderId = id('order', n);
    const customer = id('customer', car % (customers ?? 1));
    insert('work_order', {
      ...{ id: orderId, revision: 1, number: 10_000 + n, customer_id: customer, car_id: id('car', car), opened_at: at },
      ...{ opened_by: ownerId, complaint: 'It whines over fifty.', when_it_happens: '[]', door: '{}' },
      ...{ mileage_in: 40_000 + n, mileage_out: open ? null : 40_010 + n, arrived_at: off ? null : at },
      ...{
        handed_over_at: open || off ? null : at + DAY,
        cancelled_at: off ? at : null,
        handed_over_to: '',
        cancel_why: '',
        promise_words: '',
        po_number: '',
      },
      old_parts_answer: 'shown',
    });
    insert('odometer_reading', {
      ...{
        id: id('odometer', n),
        car_id: id('car', car),
        work_order_id: orderId,
        reading: 40_000 + n,
        total: 40_000 + n,
      },
      ...{ on_day: new Date(at).toISOString().slice(0, 10), event: 'read', new_start: null, doubt: 'none', why: '' },
      ...{ person_id: ownerId, at, recorded_at: at, mileage: 40_000 + n },
    });
    if (open)
      insert('booking', {
        id: id('booking', n),
        work_order_id: orderId,
        bay_id: bay,
        day: '2026-11-25',
        from_time: '08:00',
        hours: 2000,
      });
    const jobs = 1 + (n % 2);
    for (let j = 0; j < jobs; j++) {
      const jobId = id('job', n * 2 + j);
      insert('job', {
        ...{ id: jobId, revision: 1, work_order_id: orderId, place: j, title: 'Rear axle', kind: 'charged', note: '' },
        ...{ bearer: '', offered: 0, given: 0, give_why: '', taken_out: 0 },
      });
      for (let l = 0; l < 4; l++) {
        const labour = l === 0;
        insert('line', {
          ...{
            id: id('line', (n * 2 + j) * 4 + l),
            revision: 1,
            job_id: jobId,
            place: l,
            kind: labour ? 'labour' : 'part',
          },
          ...{ words: labour ? 'Work' : 'Bearing', part_number: '', quantity: 1500, unit: labour ? 'h' : '' },
          ...{ unit_price: 9600, billing: 'typed', book: 0, overlap: 0, people: '[]', supplier: '', unit_cost: 500 },
          ...{ given: 0, give_why: '', taken_out: 0 },
        });
      }
      insert('clock_entry', {
        ...{
          id: id('clock', n * 2 + j),
          person_id: runaId,
          job_id: jobId,
          kind: 'work',
          on_at: at,
          off_at: at + 5_400_000,
        },
        ...{ why: '', recorded_by: runaId, recorded_at: at },
      });
      insert('part_move', {
        ...{
          id: id('move', n * 2 + j),
          part_id: id('part', n % (parts ?? 1)),
          what: 'issued',
          quantity: -1000,
          value: -500,
        },
        ...{ job_id: jobId, note: '', person_id: runaId, at },
      });
    }
    const decision = id('decision', n);
    if (off) continue;
    insert('decision', {
      ...{
        id: decision,
        work_order_id: orderId,
        number: 1,
        at,
        recorded_at: at,
        ceiling: 1_000_000,
        spoken_name: 'Ilse',
      },
      ...{ spoken_role: 'customer', way: 'phone', reached: '555', words: 'yes', on_sheet: 1, person_id: ownerId },
    });
    for (let j = 0; j < jobs; j++)
      insert('decision_job', {
        ...{ id: id('answer', n * 2 + j), decision_id: decision, job_id: id('job', n * 2 + j), answer: 'yes' },
        ...{ amount: 1, risk: '', unsafe: 0 },
      });
    if (!open && !off) {
      const paper = id('invoice', n);
      const due = new Date(at + 14 * DAY).toISOString().slice(0, 10);
      insert('paper', {
        ...{ id: paper, work_order_id: orderId, kind: 'invoice', number: 10_000 + n, issued_at: at + DAY },
        ...{
          issued_on: new Date(at).toISOString().slice(0, 10),
          person_id: ownerId,
          customer_id: customer,
          net: 50_000,
        },
        ...{
          tax: 10_000,
          gross: 60_000,
          due_on: due,
          sheet: sheetOf(n, jobs),
          document: JSON.stringify({ words: 'x'.repeat(400) }),
        },
      });
      if (n < all - OPEN - 60)
        insert('paper_sent', {
          ...{ id: id('sent', n), paper_id: paper, at: at + DAY, how: 'mail', person_id: ownerId },
        });
      // Five hundred are unpaid.
      if (n < all - OPEN - 500)
        insert('payment', {
          ...{ id: id('payment', n), work_order_id: orderId, kind: 'payment', way: 'card', amount: 60_000, note: '' },
          ...{ person_id: ownerId, at: at + DAY },
        });
    }
    for (let k = 0; k < 3; k++) {
      trail += 1;
      insert('trail', {
        ...{ n: trail, at, person_id: ownerId, device: 'bench', operation: 'line.add', request: id('request', trail) },
        ...{
          changes: JSON.stringify([{ t: 'line', id: id('line', n), d: 'x'.repeat(64) }]),
          before: '',
          hash: id('hash', trail),
        },
      });
    }
    if (n % 10_000 === 9999) {
      raw.exec('COMMIT; BEGIN');
      say(`${n + 1} of ${all} orders`);
    }
  }
  raw.exec('COMMIT');
  raw.prepare("UPDATE number_series SET next = ? WHERE id IN ('order', 'invoice')").run(10_000 + all);
  raw.exec('ANALYZE');
  raw.pragma('wal_checkpoint(TRUNCATE)');
  raw.close();
  const list = Array.from({ length: all }, (_, n) => id('order', n));
  const open = list.slice(-OPEN);
  return { folder, ownerId, orders: list, open, car: id('car', 0), line: id('line', (all - 1) * 8), now: NOW };
}
