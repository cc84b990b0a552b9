import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { OperationName } from '../../core/contract/index.ts';
import { importFile } from '../../electron/in-and-out.ts';
import { practiceShop } from '../db/practice-shop.ts';

test('a file that is tried says of each row that cannot be brought in which value is wrong', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-values-'));
  const garage = await practiceShop();
  const file = join(folder, 'odd.csv');
  writeFileSync(file, 'Name,Email,Mileage,Visit date\nPer Dahl,per-at-example,12x40,31/31/2024\nAda Rind,,40,\n');
  const said: string[] = [];
  const ask = (operation: string, input: unknown) =>
    garage.shop.call(operation as OperationName, input, {
      personId: garage.people.get('Odile') ?? null,
      device: 'test',
    });
  try {
    await importFile(file, { try: true }, ask, { out: () => {}, err: (sentence) => said.push(sentence) });
  } finally {
    await garage.end();
    rmSync(folder, { recursive: true });
  }
  const bad = said.filter((sentence) => sentence.startsWith('Line'));
  expect(bad).toHaveLength(1);
  expect(bad[0]).toContain('visit-on "31/31/2024" is no day of the calendar');
  expect(bad[0]).toContain('visit-mileage "12x40" is no number');
});
