import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { guessMapping } from '../../../core/bring-in/fields.ts';
import { readTable, type Table } from '../../../core/bring-in/table.ts';
import type { OutputOf } from '../../../core/contract/index.ts';
import { type PracticeShop, practiceShop } from '../practice-shop.ts';

const CUSTOMERS = 25_000;
const BAD = 400;
const PIECE = 500;

/** 25,000 people with a car each; every so often a row that cannot be read. */
function bigFile(): Buffer {
  const rows = Array.from({ length: CUSTOMERS }, (_, n) => {
    const bad = Math.floor(n % (CUSTOMERS / BAD)) === 7;
    const mail = bad ? 'no mail at all' : `p${n}@example.test`;
    return `Måns Ø${n};0${5_550_000 + n};${mail};Kvarngatan ${n};${10_000 + n};Örebro;ABC ${n};Oriel Estate`;
  });
  return Buffer.from(`Name;Telefon;E-Mail;Strasse;PLZ;Ort;Kennzeichen;Modell\r\n${rows.join('\r\n')}\r\n`, 'latin1');
}

let garage: PracticeShop;
const bytes = bigFile();
let table: Table;

beforeAll(async () => {
  garage = await practiceShop();
  const read = readTable(bytes);
  if ('problem' in read) throw new Error(read.problem);
  table = read;
});
afterAll(() => garage.end());

const pieces = () =>
  Array.from({ length: Math.ceil(table.rows.length / PIECE) }, (_, n) =>
    table.rows.slice(n * PIECE, (n + 1) * PIECE).map(({ line, cells }) => ({ line, cells: [...cells] })),
  );
const mapping = () => {
  const guessed = guessMapping(table.names, table.rows, 2);
  return { ...guessed, columns: [...guessed.columns] };
};

async function begin(): Promise<string> {
  const fileHash = createHash('sha256').update(bytes).digest('hex');
  return (await garage.did('Desk', 'import.begin', { fileName: 'people.csv', fileHash, mapping: mapping() })).id;
}

async function bringIn() {
  const id = await begin();
  const bad = [];
  const pieceTook: number[] = [];
  const from = performance.now();
  for (const rows of pieces()) {
    const at = performance.now();
    bad.push(...(await garage.did('Desk', 'import.put', { id, rows })).bad);
    pieceTook.push(performance.now() - at);
  }
  const took = performance.now() - from;
  const { runs } = await garage.did('Desk', 'import.list', {});
  return { id, bad, counts: runs.find((run) => run.id === id)?.counts, took, pieceTook };
}

test('25,000 customers with 400 bad rows: tried, brought in, again, taken back, verified', {
  timeout: 300_000,
}, async () => {
  expect(table).toMatchObject({ encoding: 'windows-1252', delimiter: ';' });
  expect(table.rows).toHaveLength(CUSTOMERS);

  const makes = new Map<string, Set<string>>();
  let badTried = 0;
  for (const rows of pieces()) {
    const piece = await garage.did('Desk', 'import.try', { mapping: mapping(), rows });
    badTried += piece.bad.length;
    for (const { what, name } of piece.would.flatMap((row) => row.makes))
      makes.set(what, (makes.get(what) ?? new Set()).add(name));
  }
  expect(badTried).toBe(BAD);
  expect(makes.get('customer')?.size).toBe(CUSTOMERS - BAD);

  const first = await bringIn();
  expect(first.bad).toHaveLength(BAD);
  expect(first.bad[0]).toEqual({ line: 9, problems: [{ field: 'customer-email', problem: 'wrong-form' }] });
  expect(first.counts).toEqual({ customers: 24_600, cars: 24_600, visits: 0, known: 0, bad: BAD });

  // The last pieces cost about what the first ones did: going through all that is here for each would be a hundred times.
  const middle = (times: readonly number[]) => times.toSorted((a, b) => a - b)[times.length >> 1] ?? 0;
  const growth = middle(first.pieceTook.slice(-10)) / middle(first.pieceTook.slice(0, 10));
  expect(growth).toBeLessThan(8);

  const again = await bringIn();
  expect(again.counts).toEqual({ customers: 0, cars: 0, visits: 0, known: 24_600, bad: BAD });
  const { hits } = await garage.did('Desk', 'find.line', { text: 'abc 2499' });
  expect(hits.length).toBeGreaterThan(0);

  let after: string | null = null;
  let gone = 0;
  const from = performance.now();
  do {
    const piece: OutputOf<'import.undo'> = await garage.did('Desk', 'import.undo', { id: first.id, after });
    gone += piece.gone;
    after = piece.next;
    expect(piece.kept).toBe(0);
  } while (after !== null);
  const undo = performance.now() - from;
  expect(gone).toBe(2 * 24_600);
  expect((await garage.did('Desk', 'customer.list', {})).rows).toEqual([]);
  const { sound, faults } = await garage.did('Odile', 'care.verify', {});
  expect(faults.slice(0, 3)).toEqual([]);
  expect(sound).toBe(true);
  console.info(
    `brought in ${first.took.toFixed(0)} ms (slowest piece ${Math.max(...first.pieceTook).toFixed(0)}, last pieces ${growth.toFixed(2)} times the first), again ${again.took.toFixed(0)} ms, taken back ${undo.toFixed(0)} ms`,
  );
});
