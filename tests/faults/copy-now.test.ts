import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { listCopies } from '../../db/file/backup.ts';
import { type PracticeShop, practiceShop } from '../db/practice-shop.ts';

let garage: PracticeShop;
let stick: string;
beforeEach(async () => {
  garage = await practiceShop();
  stick = mkdtempSync(join(tmpdir(), 'crownwheel-stick-'));
});
afterEach(async () => {
  await garage.end();
  rmSync(stick, { recursive: true });
});

test('the owner makes a copy while others work, here and on a stick with the papers', async () => {
  writeFileSync(join(garage.folder, 'papers', 'invoice 1045.pdf'), 'paper');
  let worked = 0;
  let copied = false;
  const copying = garage.did('Odile', 'care.copy', {}).finally(() => {
    copied = true;
  });
  while (!copied && worked < 500) {
    worked += 1;
    await garage.did('Desk', 'customer.add', { name: `Customer ${worked}` });
    await new Promise((later) => setTimeout(later, 1));
  }
  const copy = await copying;
  expect(worked).toBeGreaterThan(1);
  expect((await garage.did('Odile', 'care.copies', {})).copies.map(({ name }) => name)).toEqual([copy.name]);

  const away = await garage.did('Odile', 'care.copy', { to: stick });
  expect(away.path).toBe(join(stick, away.name, 'shop.sqlite'));
  expect(away.trail).toBe(worked + 1);
  expect(listCopies(stick).map(({ trail }) => trail)).toEqual([away.trail]);
  // Nothing in the shop changed by it.
  expect((await garage.did('Odile', 'trail.list', {})).rows[0]?.n).toBe(worked + 1);
});

test('nobody else may, and a place that is no folder is named', async () => {
  expect(await garage.refused('Desk', 'care.copy', {})).toMatchObject({ code: 'not-allowed', why: 'role' });
  expect(await garage.refused('nobody', 'care.copy', {})).toMatchObject({ code: 'not-allowed', why: 'sign-in' });
  for (const to of [join(stick, 'nowhere'), 'backups', '..']) {
    expect(await garage.refused('Odile', 'care.copy', { to })).toEqual({
      code: 'bad-input',
      fields: [{ path: 'to', problem: 'not-a-folder' }],
    });
  }
  expect(listCopies(join(garage.folder, 'backups'))).toEqual([]);
});
