import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openConnection } from '../../db/file/connection.ts';
import { openShop } from '../../db/shop.ts';
import { deskRows } from './desk.ts';
import { doorRows } from './doors.ts';
import { type Measured, table } from './measure.ts';
import { paperRows } from './paper-rows.ts';
import { makeYears } from './years.ts';

/**
 * npm run bench [-- --years N] [--turns N] [--json FILE]: ratios against the limit, in one run, on a shop of so many
 * years. Absolute times are told, never asserted: the machine is what it is.
 */
const argument = (name: string, otherwise: string) => {
  const at = process.argv.indexOf(name);
  return at < 0 ? otherwise : (process.argv[at + 1] ?? otherwise);
};
const years = Number(argument('--years', '20'));
const turns = Number(argument('--turns', '200'));
const json = argument('--json', '');

async function rowsOf(span: number): Promise<Measured[]> {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-bench-'));
  try {
    const made = await makeYears(folder, span, (done) => process.stderr.write(`${span} years: ${done}\n`));
    const shop = await openShop({ folder });
    const raw = openConnection(join(folder, 'shop.sqlite'));
    const rows = await deskRows(shop, raw, made, turns);
    raw.close();
    await shop.close();
    return span === years ? [...rows, ...(await doorRows(made, turns)), ...(await paperRows(turns))] : rows;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const young = await rowsOf(1);
const rows = await rowsOf(years);
console.log(`A shop of ${years} years, in milliseconds\n`);
console.log(table(rows));
const growth = rows.flatMap(({ what, limit, ours }, k) => {
  const before = young[k]?.what === what && young[k]?.limit === limit ? young[k]?.ours : undefined;
  return before === undefined
    ? []
    : [{ what, limit: 'itself at one year', ours, bare: before, ratio: ours / before, goal: 1.2 }];
});
console.log(`\nGrowth\n\n${table(growth)}`);
if (json !== '') writeFileSync(json, JSON.stringify({ years, rows, growth }, null, 1));
