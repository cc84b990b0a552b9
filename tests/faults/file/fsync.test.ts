import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { practiceShop } from '../../db/practice-shop.ts';

const COMMITS = 50;
const connection = new URL('../../../db/file/connection.ts', import.meta.url).href;
const shopModule = new URL('../../../db/shop.ts', import.meta.url).href;
const hasStrace = spawnSync('strace', ['-V']).status === 0;

/**
 * Runs commits in a process of its own under strace and counts what it asked the disk to make durable meanwhile. `script`
 * gets a folder and has to say where its commits begin and end: reading /dev/null and /dev/zero marks it in the trace.
 */
function syncsIn(script: (folder: string) => string): number {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-fsync-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const trace = join(folder, 'trace');
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
      `const { openSync } = await import('node:fs');
${script(folder)}`,
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

/** Commits on a connection of its own, as it is opened or with another setting. */
const onConnection = (synchronous: '' | 'NORMAL') => (folder: string) =>
  `
  const { openConnection } = await import(${JSON.stringify(connection)});
  const raw = openConnection(${JSON.stringify(join(folder, 'shop.sqlite'))}, { create: true });
  raw.exec('CREATE TABLE trail (n INTEGER PRIMARY KEY) STRICT');
  ${synchronous ? `raw.pragma('synchronous = ${synchronous}');` : ''}
  const add = raw.prepare('INSERT INTO trail VALUES (?)');
  openSync('/dev/null', 'r');
  for (let n = 1; n <= ${COMMITS}; n += 1) add.run(n);
  openSync('/dev/zero', 'r');`;

/** Changes of a whole shop, through its operations. */
const onShop = (folder: string, owner: string) => `
  const { openShop } = await import(${JSON.stringify(shopModule)});
  const shop = await openShop({ folder: ${JSON.stringify(folder)} });
  openSync('/dev/null', 'r');
  for (let n = 1; n <= ${COMMITS}; n += 1) {
    const answer = await shop.call('customer.add', { name: 'Customer ' + n }, { personId: ${JSON.stringify(owner)}, device: 'test' });
    if (!answer.ok) throw new Error(JSON.stringify(answer));
  }
  openSync('/dev/zero', 'r');
  await shop.close();`;

describe('what was answered as saved is on the disk', () => {
  it.skipIf(!hasStrace)(
    `every commit asks for it once (${hasStrace ? 'strace' : 'skipped: strace is not there'})`,
    () => {
      const full = syncsIn(onConnection(''));
      // The control: with the setting that better-sqlite3 would choose, the count must show the difference.
      const normal = syncsIn(onConnection('NORMAL'));
      console.log(`${COMMITS} commits: ${full} syncs, with synchronous=NORMAL ${normal}`);
      expect(full).toBeGreaterThanOrEqual(COMMITS);
      // One more: the head of a new log.
      expect(full).toBeLessThanOrEqual(COMMITS + 2);
      expect(normal).toBeLessThan(COMMITS / 5);
    },
    30_000,
  );

  it.skipIf(!hasStrace)(
    `every change of a shop too (${hasStrace ? 'strace' : 'skipped: strace is not there'})`,
    async () => {
      const garage = await practiceShop();
      onTestFinished(() => rmSync(garage.folder, { recursive: true, force: true }));
      await garage.shop.close();
      const syncs = syncsIn(() => onShop(garage.folder, garage.people.get('Odile') ?? ''));
      console.log(`${COMMITS} changes of a shop: ${syncs} syncs`);
      expect(syncs).toBeGreaterThanOrEqual(COMMITS);
      // A change writes a few pages: the log may be folded into the file once or twice meanwhile.
      expect(syncs).toBeLessThanOrEqual(COMMITS + 10);
    },
    30_000,
  );

  it('no connection is opened but where this is seen to', () => {
    const db = resolve(import.meta.dirname, '../../../db');
    const files = readdirSync(db, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
    const opening = files.filter((name) => readFileSync(join(db, name), 'utf8').includes('new Database('));
    // The thread's copy sets it by itself, the lock's file is never written, and the one that verify compares with is none.
    expect(opening.map((name) => name.replaceAll('\\', '/')).sort()).toEqual([
      'file/connection.ts',
      'file/copy-thread.ts',
      'file/lock.ts',
      'verify-schema.ts',
    ]);
  });
});
