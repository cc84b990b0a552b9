import { createHash } from 'node:crypto';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { guessMapping } from '../../../core/bring-in/fields.ts';
import { readTable, type Table } from '../../../core/bring-in/table.ts';
import { type Brought, bringIn, type Desk, takeBackAll, tryFile } from '../../../core/bring-in/whole-file.ts';
import { writeCsv } from '../../../core/take-out/csv.ts';
import { type PracticeShop, practiceShop } from '../practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(() => garage.end());

const deskOf = (shop: PracticeShop): Desk => ({
  tryPiece: (input) => shop.did('Desk', 'import.try', input),
  begin: (input) => shop.did('Desk', 'import.begin', input),
  put: (input) => shop.did('Desk', 'import.put', input),
  undo: (input) => shop.did('Desk', 'import.undo', input),
});

const tableOf = (text: string): Table => {
  const table = readTable(Buffer.from(text));
  if ('problem' in table) throw new Error(table.problem);
  return table;
};

async function bring(text: string, shop = garage) {
  const { names, rows } = tableOf(text);
  const mapping = guessMapping(names, rows, 2);
  const tried = await tryFile(rows, mapping, deskOf(shop));
  const hash = createHash('sha256').update(text).digest('hex');
  const brought = await bringIn({ name: 'old.csv', hash, rows }, mapping, deskOf(shop));
  const { customers, cars, visits } = brought.made;
  // What was said before is what came.
  expect(tried).toMatchObject({ customers, cars, visits, bad: brought.bad });
  return { ...brought, tried };
}

const PEOPLE = `customer no;Name;Phone;Plate;Model
17;Mara Oyelaran;0171 5550143;OYB 902;Oriel Estate
17;Mara Oyelaran;0171 5550143;KD 14 MW;Oriel Van
18;Per Halloran;;HAL 77;Brae Coupé
`;

test('one person with two cars is one person; files after it name them by their number', async () => {
  expect((await bring(PEOPLE)).made).toEqual({ customers: 2, cars: 3, visits: 0, known: 0, bad: 0 });
  const visits = `Customer no;Plate;Date;Mileage;Work;Total
17;oyb-902;2019-04-03;61000;Rear axle oil;84,50
17;OYB 902;2021-06-30;88120;Carrier bearings;1.240,00
19;ZZZ 1;2020-01-01;5;Nothing;1
;HAL 77;1.13.2020;;Oil;
`;
  const { made, bad } = await bring(visits);
  expect(made).toEqual({ customers: 0, cars: 0, visits: 2, known: 0, bad: 2 });
  const { rows } = await garage.did('Desk', 'car.list', { text: 'OYB 902' });
  const id = rows[0]?.id ?? '';
  const pastOf = async (name: string) => (await garage.did(name, 'car.get', { id })).pastVisits;
  expect(await pastOf('Desk')).toMatchObject([
    { on: '2021-06-30', mileage: 88_120, words: 'Carrier bearings', amount: 124_000 },
    { on: '2019-04-03', mileage: 61_000, words: 'Rear axle oil', amount: 8450 },
  ]);
  expect((await pastOf('Runa')).map(({ amount }) => amount)).toEqual([null, null]);
  expect(bad).toEqual([
    { line: 4, problems: [{ field: 'customer-key', problem: 'not-known-here' }] },
    { line: 5, problems: [{ field: 'visit-on', problem: 'not-a-date' }] },
  ]);
});

test('who is here already is left as they are, and is known by phone however written', async () => {
  const { id } = await garage.did('Desk', 'customer.add', { name: 'Mara Öyelaran', phone: '+44 (171) 555-0143' });
  const first = await bring('Name,Phone,Note\nMara Oyelaran,0171 5550143,old note\n');
  expect(first.made).toMatchObject({ customers: 0, known: 1 });
  expect((await garage.did('Desk', 'customer.get', { id })).fields.note).toBe('');
  // The same name with another number is somebody else.
  expect((await bring('Name,Phone\nMara Oyelaran,0171 5559999\n')).made).toMatchObject({ customers: 1 });
  // With nothing but a name it cannot be told which.
  expect((await bring('Name,Plate\nMara Oyelaran,AAA 1\n')).bad).toEqual([
    { line: 2, problems: [{ field: 'customer-name', problem: 'several-of-the-name' }] },
  ]);
});

test('a car that somebody else owns here is not taken from them', async () => {
  await bring(PEOPLE);
  expect((await bring('Name,Phone,Plate\nSilas Penrose,0171 5550199,OYB-902\n')).bad).toEqual([
    { line: 2, problems: [{ field: 'car-plate', problem: 'belongs-to-another' }] },
  ]);
  expect((await garage.did('Desk', 'customer.list', { text: 'Penrose' })).rows).toEqual([]);
});

test('rows that do not fit are named by column, and change nothing', async () => {
  const { bad, made } = await bring(
    `Name,E-mail,Plate,VIN\n,a@example.test,,\nPer,nonsense,,\n${'x'.repeat(130)},,,\nIda,,"<script>",\nIda,,,WBA3A5C50DF12345O\n`,
  );
  expect(made.customers).toBe(0);
  expect(bad.map(({ line, problems }) => [line, problems[0]?.field, problems[0]?.problem])).toEqual([
    [2, 'customer-name', 'missing'],
    [3, 'customer-email', 'wrong-form'],
    [4, 'customer-name', 'too-long'],
    [5, 'car-plate', 'not-a-plate'],
    [6, 'car-vin', 'vin-character'],
  ]);
});

test('the same file twice changes nothing, even where somebody changed what it brought', async () => {
  await bring(PEOPLE);
  const { rows } = await garage.did('Desk', 'customer.list', { text: 'Halloran' });
  const change = { name: 'Pelle Halloran', phone: '0171 5550000' };
  await garage.did('Desk', 'customer.change', { id: rows[0]?.id ?? '', revision: 1, change });
  const { made, tried } = await bring(PEOPLE);
  expect(made).toEqual({ customers: 0, cars: 0, visits: 0, known: 3, bad: 0 });
  expect(tried?.fresh.size).toBe(0);
});

test('taken back: all of it but what somebody worked with; afterwards it can come in again', async () => {
  const { id } = await bring(PEOPLE);
  const cars = await garage.did('Desk', 'car.list', { text: 'OYB 902' });
  const people = await garage.did('Desk', 'customer.list', { text: 'Mara' });
  await garage.did('Desk', 'order.book', {
    customer: { id: people.rows[0]?.id ?? '' },
    car: { id: cars.rows[0]?.id ?? '' },
    complaint: 'Whines.',
    here: true,
  });
  expect(await takeBackAll(id, deskOf(garage))).toEqual({ gone: 3, kept: 2 });
  expect((await garage.did('Desk', 'car.list', {})).rows.map((row) => row.plate)).toEqual(['OYB 902']);
  expect((await garage.did('Desk', 'customer.list', {})).rows.map((row) => row.name)).toEqual(['Mara Oyelaran']);
  expect(await garage.refused('Desk', 'import.undo', { id })).toMatchObject({ fields: [{ problem: 'taken-back' }] });
  expect((await garage.did('Desk', 'import.list', {})).runs[0]?.undoneAt).toBe(garage.now);
  expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
  expect((await bring(PEOPLE)).made).toMatchObject({ customers: 1, cars: 2 });
});

test('what goes out comes in again elsewhere, and a mechanic gets nothing out', async () => {
  await bring(PEOPLE);
  await bring('Plate,Date,Mileage,Work,Total\nOYB 902,2019-04-03,61000,"=Rear axle, oil",84.50\n');
  const other = await practiceShop();
  try {
    const csv = async (kind: 'customers' | 'cars' | 'visits') => {
      const { columns, rows } = await garage.did('Desk', 'export.rows', { kind });
      return writeCsv([columns, ...rows]);
    };
    expect((await bring(await csv('customers'), other)).made).toMatchObject({ customers: 2, bad: 0 });
    expect((await bring(await csv('cars'), other)).made).toMatchObject({ customers: 0, cars: 3, bad: 0 });
    expect((await bring(await csv('visits'), other)).made).toMatchObject({ visits: 1, bad: 0 });
    const { rows } = await other.did('Desk', 'export.rows', { kind: 'visits' });
    expect(rows[0]?.slice(1)).toEqual(['OYB 902', '', '2019-04-03', '61000', "'=Rear axle, oil", '84.50']);
    const { id } = (await other.did('Desk', 'customer.list', { text: 'Mara' })).rows[0] ?? { id: '' };
    expect((await other.did('Desk', 'customer.get', { id })).cars).toHaveLength(2);
  } finally {
    await other.end();
  }
  expect(await garage.refused('Runa', 'export.rows', { kind: 'customers' })).toMatchObject({ code: 'not-allowed' });
  expect(await garage.refused('Runa', 'import.list', {})).toMatchObject({ code: 'not-allowed' });
});

test('pieces of what goes out leave nothing out', async () => {
  await bring(PEOPLE);
  const all = [];
  let after: string | null = '';
  while (after !== null) {
    const piece: { rows: string[][]; next: string | null } = await garage.did('Desk', 'export.rows', {
      ...{ kind: 'cars', after, most: 2 },
    });
    all.push(...piece.rows.map((row) => row[1]));
    after = piece.next;
  }
  expect(all).toEqual(['OYB 902', 'KD 14 MW', 'HAL 77']);
});

test('a file that was stopped goes on behind its last row as the same one: taken back at once, and counted once', async () => {
  const { names, rows } = tableOf(
    `Name,Phone\n${Array.from({ length: 900 }, (_, n) => `Ida ${n},0171 ${5_550_000 + n}`).join('\n')}`,
  );
  const mapping = guessMapping(names, rows, 2);
  const file = { name: 'old.csv', hash: '', rows };
  const steps: number[] = [];
  const onProgress = (done: number, total: number) => {
    steps.push(done);
    expect(total).toBe(900);
  };
  const stopped = await bringIn(file, mapping, deskOf(garage), { onProgress, stopped: () => steps.length >= 2 });
  expect(stopped).toMatchObject({ rows: 500, whole: false, made: { customers: 500 } });
  const whole = await bringIn(file, mapping, deskOf(garage), { onProgress }, stopped);
  expect(whole).toMatchObject({ id: stopped.id, rows: 900, whole: true, made: { customers: 900, known: 0 } });
  expect(steps).toEqual([250, 500, 750, 900]);
  const { runs } = await garage.did('Desk', 'import.list', {});
  expect(runs.map(({ id, counts }) => [id, counts.customers])).toEqual([[whole.id, 900]]);
  expect(await takeBackAll(whole.id, deskOf(garage))).toEqual({ gone: 900, kept: 0 });
  expect((await garage.did('Desk', 'customer.list', { text: 'Ida' })).rows).toEqual([]);
});

test('what came before a piece was refused is told, and goes on when the reason is gone', async () => {
  const { names, rows } = tableOf(
    `Name,Phone\n${Array.from({ length: 600 }, (_, n) => `Ida ${n},0171 ${5_550_000 + n}`).join('\n')}`,
  );
  const mapping = guessMapping(names, rows, 2);
  const desk = deskOf(garage);
  let pieces = 0;
  const put: Desk['put'] = (input) => {
    pieces += 1;
    return pieces === 2 ? Promise.reject(new Error('no room')) : desk.put(input);
  };
  const file = { name: 'old.csv', hash: '', rows };
  let sofar: Brought | null = null;
  const onSoFar = (now: Brought) => {
    sofar = now;
  };
  await expect(bringIn(file, mapping, { ...desk, put }, { onSoFar })).rejects.toThrow('no room');
  expect(sofar).toMatchObject({ rows: 250, whole: false });
  expect(await bringIn(file, mapping, desk, {}, sofar)).toMatchObject({ rows: 600, made: { customers: 600 } });
});

test('others go on while a large file comes in: between two of its pieces they are answered', async () => {
  const { names, rows } = tableOf(
    `Name,Phone\n${Array.from({ length: 2500 }, (_, n) => `Ida ${n},0171 ${5_550_000 + n}`).join('\n')}`,
  );
  const done: string[] = [];
  const desk = deskOf(garage);
  const put: Desk['put'] = async (input) => {
    const answer = await desk.put(input);
    done.push('piece');
    return answer;
  };
  const all = bringIn({ name: 'old.csv', hash: '', rows }, guessMapping(names, rows, 2), { ...desk, put });
  let ended = false;
  const others = (async () => {
    while (!ended) {
      await garage.did('Runa', 'today.get', {});
      done.push('other');
    }
  })();
  expect((await all).made.customers).toBe(2500);
  ended = true;
  await others;
  expect(done.filter((what) => what === 'piece')).toHaveLength(10);
  expect(done.join(' ')).not.toContain('piece piece piece');
});

test('what this shop wrote out is known to it: nothing comes in and every row is counted as here', async () => {
  await bring(PEOPLE);
  await bring('Plate;Date;Mileage;Work;Total\nOYB 902;2019-04-03;61000;Rear axle oil;84,50\n');
  for (const [kind, rows] of [
    ['customers', 2],
    ['cars', 3],
    ['visits', 1],
  ] as const) {
    const piece = await garage.did('Desk', 'export.rows', { kind, after: '' });
    const { tried, made } = await bring(writeCsv([piece.columns, ...piece.rows]));
    expect([tried?.known, tried?.fresh.size, made], kind).toEqual([
      ...[rows, 0, { customers: 0, cars: 0, visits: 0, known: rows, bad: 0 }],
    ]);
  }
});

test('sums of a file: the column tells what parts decimals, and a sum with two readings is refused', async () => {
  await bring(PEOPLE);
  const visits = (...sums: string[]) =>
    `Plate;Date;Work;Total\n${sums.map((sum, n) => `OYB 902;201${n}-04-03;Oil;${sum}`).join('\n')}\n`;
  const wrong = await bring(visits('1.234', '84'));
  expect(wrong.made).toMatchObject({ visits: 1, bad: 1 });
  expect(wrong.bad).toEqual([{ line: 2, problems: [{ field: 'visit-amount', problem: 'two-readings' }] }]);
  expect((await bring(visits('1.234', '1,5', '2.500,00'))).made).toMatchObject({ visits: 2, known: 1, bad: 0 });
});
