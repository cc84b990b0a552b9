import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { StatementRuns } from '../../db/books/runs.ts';

test('how long a run takes is told by the clock of the shop', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-runs-'));
  let now = Date.parse('2026-03-10T08:00:00Z');
  const runs = new StatementRuns(
    () => now,
    () => undefined,
    () => undefined,
  );
  const days = { from: '2026-03-01', until: '2026-03-10', asOf: now };
  const task = { database: join(folder, 'none.sqlite'), practice: true, folder, joined: false, ...days, rows: [] };
  runs.begin('run', task, 3);
  expect(runs.stateOf('run')).toMatchObject({ running: true, spent: 0, madeBefore: 3 });
  now += 90_000;
  expect(runs.stateOf('run')).toMatchObject({ running: true, spent: 90_000 });
  // Put back meanwhile: no time is less than none.
  now -= 3_600_000;
  expect(runs.stateOf('run')?.spent).toBe(0);
  await runs.close();
  expect(runs.stateOf('run')).toMatchObject({ running: false });
  rmSync(folder, { recursive: true });
});
