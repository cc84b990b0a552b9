import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { foldPhone, foldPlate, foldText } from '../../db/fold.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

const CUSTOMERS = 25_000;
const FIRST = ['Anna', 'Bo', 'Cara', 'Dirk', 'Elin', 'Fadil', 'Greta', 'Henk', 'Ines', 'Jonas', 'Kaja', 'Lars'];
const PARTS = ['berg', 'lund', 'holm', 'stern', 'vik', 'dahl', 'mark', 'feld', 'wald', 'strand', 'brink', 'thal'];

let garage: PracticeShop;
let raw: Database.Database;

/** An invented name, the same for the same number. */
const nameOf = (n: number) =>
  `${FIRST[n % 12]} ${PARTS[(n * 7) % 12]}${PARTS[(n * 5 + 3) % 12]}${n % 97 === 0 ? 'zeck' : ''}`;

beforeAll(async () => {
  garage = await practiceShop();
  raw = new Database(join(garage.folder, 'shop.sqlite'));
  const customer = raw.prepare(
    `INSERT INTO customer (id, revision, name, phone, phone2, email, address, tell_by, tax_number, tax_exempt,
       po_required, may_yes, note, made_at, find_name, find_phone, find_phone2)
     VALUES (?, 1, ?, ?, '', '', '[]', '', '', '', 0, '[]', '', 0, ?, ?, '')`,
  );
  const car = raw.prepare(
    `INSERT INTO car (id, revision, plate, vin, words, year, unit, axle_code, note, made_at, find_plate, find_words)
     VALUES (?, 1, ?, ?, 'Corvane R', NULL, 'km', '', '', 0, ?, 'corvane r')`,
  );
  const plate = raw.prepare(
    `INSERT INTO car_plate (id, car_id, plate, find_plate, from_day) VALUES (?, ?, ?, ?, '2020-01-01')`,
  );
  const owner = raw.prepare(`INSERT INTO car_owner (id, car_id, customer_id, from_day) VALUES (?, ?, ?, '2020-01-01')`);
  raw.transaction(() => {
    for (let n = 0; n < CUSTOMERS; n += 1) {
      const phone = `0171 ${String((n * 7919) % 10_000_000).padStart(7, '0')}`;
      customer.run(`c${n}`, nameOf(n), phone, foldText(nameOf(n)), foldPhone(phone));
      const shown = `K${String.fromCharCode(65 + (n % 26))}${String.fromCharCode(65 + ((n * 11) % 26))} ${(n * 37) % 10_000}`;
      car.run(`a${n}`, shown, `CRWNWHEE8L${String(n).padStart(7, '0')}`, foldPlate(shown));
      plate.run(`p${n}`, `a${n}`, shown, foldPlate(shown));
      owner.run(`o${n}`, `a${n}`, `c${n}`);
    }
  })();
}, 120_000);
afterAll(async () => {
  raw?.close();
  await garage?.end();
});

const ASKED = ['zeck', 'lund', 'anna', 'bergst', 'KAL', '4471', '5550', 'ldwal', '0024999', 'dirk'];

/** The middle of some times, milliseconds. */
const middle = (times: readonly number[]) => times.toSorted((a, b) => a - b)[times.length >> 1] ?? 0;

async function timed(rounds: number, work: (text: string) => unknown): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round += 1)
    for (const text of ASKED) {
      const from = performance.now();
      await work(text);
      times.push(performance.now() - from);
    }
  return middle(times);
}

test('among 25,000 customers the same are found as by looking at every row', async () => {
  for (const text of ['zeck', 'ldwal', 'bergstern']) {
    const wanted = raw.prepare('SELECT count(*) AS n FROM customer WHERE find_name LIKE ?').get(`%${text}%`) as {
      n: number;
    };
    const { hits } = await garage.did('Desk', 'find.line', { text, most: 50 });
    expect(hits.filter((hit) => hit.by === 'name').length).toBe(Math.min(50, wanted.n));
  }
});

test('the index is used: a find costs a fraction of looking at every row', async () => {
  const every = [
    raw.prepare('SELECT id FROM customer WHERE find_name LIKE ? OR find_phone LIKE ? OR find_phone2 LIKE ?'),
    raw.prepare('SELECT id FROM car WHERE vin LIKE ?'),
    raw.prepare('SELECT id FROM car_plate WHERE find_plate LIKE ?'),
  ] as const;
  const looking = (text: string) => {
    const like = `%${text}%`;
    every[0].all(like, like, like);
    every[1].all(like);
    every[2].all(like);
  };
  const match = (table: string, more: string) =>
    raw.prepare(
      `SELECT t.id, ${more} FROM ${table} t WHERE t.rowid IN (SELECT rowid FROM find_${table} WHERE find_${table} MATCH ? LIMIT 20)`,
    );
  const best = [match('customer', 't.name'), match('car', 't.vin'), match('car_plate', 't.plate')];
  const raws = (text: string) => {
    for (const statement of best) statement.all(`"${text}"`);
  };
  await timed(2, (text) => garage.did('Desk', 'find.line', { text }));
  const program = await timed(8, (text) => garage.did('Desk', 'find.line', { text }));
  const rawBest = await timed(8, raws);
  const scan = await timed(2, looking);
  const told = `find: ${program.toFixed(2)} ms, raw with the index ${rawBest.toFixed(2)} ms, every row ${scan.toFixed(2)} ms`;
  console.log(told);
  // Ratios of one run; the program also asks by numbers, owners and beginnings, and answers through the whole door.
  expect(program, told).toBeLessThan(scan);
});
