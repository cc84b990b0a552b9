import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { OutputOf } from '../../core/contract/index.ts';
import { PEOPLE } from '../../demo-shop/garage.ts';
import { type Played, playDemo } from '../../demo-shop/play.ts';
import { type OpenDoor, openWithDoor } from '../../electron/open.ts';

const DEMO = resolve(import.meta.dirname, '../../demo-shop');

/** The story must hold wherever in the week or the day it ends. */
const ENDS = [
  ['Wednesday noon', Date.parse('2026-11-18T12:00:00Z')],
  ['Sunday, after midnight', Date.parse('2026-03-01T00:20:00Z')],
] as const;

describe.each(ENDS)('the demo garage, ending on %s', (_when, end) => {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-demo-'));
  const said: string[] = [];
  let open: OpenDoor;
  let played: Played;
  beforeAll(async () => {
    open = await openWithDoor({ folder, practice: true, port: 0 });
    played = await playDemo(open.shop, end, (sentence) => said.push(sentence));
  }, 60_000);
  afterAll(async () => {
    await open.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test('at least forty orders, each next move among them', () => {
    expect(played.orders.length).toBeGreaterThanOrEqual(40);
    const moves = new Set(played.orders.map((order) => order.next.what));
    expect([...moves].sort()).toEqual(
      [
        ...['bring-it-in', 'was-expected', 'find-out', 'write-up-quote', 'send-quote', 'say-yes', 'ring-about-extra'],
        ...['ring-about-excess', 'deliver', 'start-work', 'work-goes-on', 'carry-on', 'close-out', 'pay-and-collect'],
        ...['pay', 'collect', 'give-back', 'put-clock-right', 'settled', 'cancelled', 'close-out-cancelled'],
        'left-without-work',
      ].sort(),
    );
  });

  test('six weeks, and nothing after the end', () => {
    const opened = played.orders.map((order) => order.openedAt);
    const first = Math.min(...opened);
    // The shop opens thirty working days before the last; its first car comes the day after.
    expect(end - first).toBeGreaterThanOrEqual(38 * 86_400_000);
    expect(Math.max(...opened)).toBeLessThanOrEqual(end);
    // Numbers run as time does.
    const byNumber = played.orders.toSorted((a, b) => a.number - b.number).map((order) => order.openedAt);
    expect(byNumber).toEqual(opened.toSorted((a, b) => a - b));
  });

  test('the carrier swap went from the call to the payment', async () => {
    const row = played.orders.find((order) => order.plate === 'KTB 4471');
    expect(row?.titles).toHaveLength(3);
    expect(row?.next.what).toBe('settled');
    const runa = await open.shop.enter('Runa', 'runa-4127');
    const personId = runa.ok ? (runa.output as { personId: string }).personId : null;
    const answer = await open.shop.call('order.get', { id: row?.id }, { personId, device: 'test' });
    const order = (answer.ok ? answer.output : null) as OutputOf<'order.get'> | null;
    expect(order?.jobs.map((job) => job.steps.filter((step) => step.state === 'done').length)).toEqual([0, 18, 0]);
    expect(order?.jobs.map((job) => job.clockedMinutes)).toEqual([50, 366, 0]);
    expect(order?.papers.map((paper) => paper.kind).sort()).toEqual(
      ['quote', 'receipt', 'invoice', 'receipt', 'credit-note', 'receipt'].sort(),
    );
    // 6.2 h and 0.8 h at 128.00, the lab's 42.00, and the parts with 6.25 % tax; the deposit for the old carrier came back.
    const parts = 184_000 + 12 * 485 + 2 * 210 + 2 * 390 + 2 * 1875 + 640 + 3465;
    expect(order?.sums?.gross).toBe(7 * 12_800 + 4200 + Math.round((parts + 35_000) * 1.0625));
    expect(order?.balance).toBe(0);
  });

  test('people come back whose years stand in the old books', async () => {
    const runa = await open.shop.enter('Runa', 'runa-4127');
    const personId = runa.ok ? (runa.output as { personId: string }).personId : null;
    const ask = async (operation: string, input: unknown) => {
      const answer = await open.shop.call(operation, input, { personId, device: 'test' });
      if (!answer.ok) throw new Error(JSON.stringify(answer.error));
      return answer.output;
    };
    const { runs } = (await ask('import.list', {})) as OutputOf<'import.list'>;
    expect(runs).toHaveLength(1);
    expect(runs[0]?.counts).toMatchObject({ customers: 19, cars: 21, bad: 0 });
    expect(runs[0]?.counts.visits).toBeGreaterThan(100);
    // Each plate is one car, each of these people one customer, whatever came when.
    const cars = (await ask('car.list', { most: 200 })) as OutputOf<'car.list'>;
    const plates = cars.rows.map((row) => row.plate);
    expect(new Set(plates).size).toBe(plates.length);
    const { rows } = (await ask('customer.list', { text: 'Ilse Vandermeer' })) as OutputOf<'customer.list'>;
    expect(rows).toHaveLength(1);
  });

  test('the shop agrees with itself, and every paper is a PDF in its folder', () => {
    expect(played.verified.faults).toEqual([]);
    expect(played.verified.sound).toBe(true);
    const files = readdirSync(join(folder, 'papers'));
    expect(files.length).toBe(played.papers.length);
    expect(played.papers.length).toBeGreaterThan(20);
    for (const file of files)
      expect(
        readFileSync(join(folder, 'papers', file))
          .subarray(0, 5)
          .toString(),
      ).toBe('%PDF-');
  });

  test('the printed codes let their people in', async () => {
    for (const { name, role, code } of PEOPLE)
      expect(await open.shop.enter(name, code)).toMatchObject({ ok: true, output: { name, role } });
    expect((await open.shop.enter(PEOPLE[0].name, 'another')).ok).toBe(false);
    expect(open.shop.practice).toBe(true);
  });
});

/** What shows that a source reaches past the operations; empty when it does not. */
function reachesPast(source: string): string[] {
  const imports = [...source.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((found) => found[1] ?? '');
  const past = imports.filter((path) => /(^|\/)db\/|better-sqlite3|kysely|node:sqlite/.test(path));
  const words = source.match(/\b(SELECT|INSERT INTO|UPDATE \w+ SET|DELETE FROM|CREATE TABLE|PRAGMA)\b/gi) ?? [];
  return [...past, ...words];
}

describe('the demo is played through operations only', () => {
  test.each(readdirSync(DEMO).filter((file) => file.endsWith('.ts')))('%s', (file) => {
    expect(reachesPast(readFileSync(join(DEMO, file), 'utf8'))).toEqual([]);
  });

  test('the check sees what it looks for', () => {
    expect(reachesPast("import { openShop } from '../db/shop.ts';")).toEqual(['../db/shop.ts']);
    expect(reachesPast("await import('better-sqlite3')")).toEqual(['better-sqlite3']);
    expect(reachesPast('raw.exec("update job set place = 1")')).toEqual(['update job set']);
  });
});

test('the demo is never played over a shop that is there', () => {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-demo-'));
  try {
    const there = join(folder, 'shop.sqlite');
    writeFileSync(there, 'a shop');
    const run = spawnSync(process.execPath, [join(DEMO, 'demo.ts'), '--shop', folder], { encoding: 'utf8' });
    expect(run.status).toBe(1);
    expect(run.stderr).toContain(`There is a shop in ${folder} already`);
    expect(readFileSync(there, 'utf8')).toBe('a shop');
    expect(readdirSync(folder)).toEqual(['shop.sqlite']);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
