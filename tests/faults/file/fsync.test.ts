import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';

const COMMITS = 50;
const connection = new URL('../../../db/file/connection.ts', import.meta.url).href;
const hasStrace = spawnSync('strace', ['-V']).status === 0;

/** Runs commits in a process of its own under strace and counts what it asked the disk to make durable meanwhile. */
function syncsOf(synchronous: '' | 'NORMAL'): number {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-fsync-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const trace = join(folder, 'trace');
  // Reading /dev/null and /dev/zero marks in the trace where the commits begin and end.
  const script = `const { openConnection } = await import(${JSON.stringify(connection)});
    const { openSync } = await import('node:fs');
    const raw = openConnection(${JSON.stringify(join(folder, 'shop.sqlite'))}, { create: true });
    raw.exec('CREATE TABLE trail (n INTEGER PRIMARY KEY) STRICT');
    ${synchronous ? `raw.pragma('synchronous = ${synchronous}');` : ''}
    const add = raw.prepare('INSERT INTO trail VALUES (?)');
    openSync('/dev/null', 'r');
    for (let n = 1; n <= ${COMMITS}; n += 1) add.run(n);
    openSync('/dev/zero', 'r');`;
  const run = spawnSync(
    'strace',
    [
      '-f',
      '-e',
      'trace=fsync,fdatasync,openat,open',
      '-o',
      trace,
      process.execPath,
      '--input-type=module',
      '-e',
      script,
    ],
    { encoding: 'utf8' },
  );
  expect(run.stderr).toBe('');
  const lines = readFileSync(trace, 'utf8').split('\n');
  const begin = lines.findLastIndex((line) => line.includes('"/dev/null"'));
  const end = lines.findLastIndex((line) => line.includes('"/dev/zero"'));
  expect(begin).toBeGreaterThan(0);
  expect(end).toBeGreaterThan(begin);
  return lines.slice(begin, end).filter((line) => /\b(fsync|fdatasync)\(/.test(line)).length;
}

describe('what was answered as saved is on the disk', () => {
  it.skipIf(!hasStrace)(
    `every commit asks for it once (${hasStrace ? 'strace' : 'skipped: strace is not there'})`,
    () => {
      const full = syncsOf('');
      // The control: with the setting that better-sqlite3 would choose, the count must show the difference.
      const normal = syncsOf('NORMAL');
      console.log(`${COMMITS} commits: ${full} syncs, with synchronous=NORMAL ${normal}`);
      expect(full).toBeGreaterThanOrEqual(COMMITS);
      // One more: the head of a new log.
      expect(full).toBeLessThanOrEqual(COMMITS + 2);
      expect(normal).toBeLessThan(COMMITS / 5);
    },
    30_000,
  );
});
