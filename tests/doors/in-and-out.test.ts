import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { SETTINGS } from '../db/practice-shop.ts';
import { runShop } from './run-shop.ts';

// Many processes, one after the other: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 120_000 });

const SET_UP = {
  settings: SETTINGS,
  people: [{ name: 'Odile', role: 'owner', code: 'owner-code', payRate: 0 }],
  bays: [],
  rates: [{ name: 'Labour', price: 9600, usual: true }],
};

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'crownwheel-in-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const shop = (...args: string[]) =>
  runShop(join(folder, 'shop'), [...args, '--as', 'Odile', '--practice'], { code: 'owner-code' });
const outputOf = (out: string) => (JSON.parse(out) as { output: unknown }).output;

test('a file is tried, brought in, not twice, and what is here goes out as CSV', async () => {
  await runShop(join(folder, 'shop'), ['call', 'shop.setUp', JSON.stringify(SET_UP)]);
  const file = join(folder, 'old.csv');
  writeFileSync(
    file,
    Buffer.from('Nom;Téléphone;Immatriculation\r\nÉlise Ansel;0171 5550143;OYB 902\r\n;5;\r\n', 'latin1'),
  );

  const tried = await shop('import', file, '--try');
  expect(tried).toMatchObject({ code: 0, err: expect.stringContaining('Line 3: customer-name is missing') });
  expect(outputOf(tried.out)).toMatchObject({ tried: { customers: 1, cars: 1, known: 0 } });
  const first = await shop('import', file);
  expect(first).toMatchObject({ code: 0, err: expect.stringContaining('1 customers, 1 cars and 0 visits came in') });
  const again = await shop('import', file);
  expect(outputOf(again.out)).toMatchObject({ tried: { customers: 0, cars: 0, known: 1 } });

  const out = join(folder, 'customers.csv');
  expect(await shop('export', 'customers', out)).toMatchObject({ code: 0 });
  expect(readFileSync(out, 'utf8')).toMatch(/^\uFEFFcustomer-key,customer-name,.*\r\n[^,]+,Élise Ansel,0171 5550143,/);
  // What is there is not overwritten, and what is no kind is a wrong command.
  for (const wrong of [
    ['export', 'customers', out],
    ['export', 'dreams'],
    ['import', join(folder, 'none.csv')],
    ['import', file, '--columns', 'shoe-size'],
    ['import', file, '--dates', 'backwards'],
    ['import', file, '--decimal', ';'],
  ])
    expect(await shop(...wrong), wrong.join(' ')).toMatchObject({ code: 2, out: '' });

  const { id } = outputOf(first.out) as { id: string };
  expect(outputOf((await shop('call', 'import.undo', JSON.stringify({ id }))).out)).toEqual({
    gone: 2,
    kept: 0,
    next: null,
  });
  expect((await shop('export', 'cars')).out.trim().split('\n')).toHaveLength(1);
  const nobody = await runShop(join(folder, 'shop'), ['import', file]);
  expect(nobody).toMatchObject({ code: 1, err: expect.stringContaining('Say who calls with --as NAME') });
});
