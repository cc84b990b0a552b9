import { spawn, spawnSync } from 'node:child_process';
import { closeSync, copyFileSync, fsyncSync, openSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import { join, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { copyShop } from '../../db/file/backup.ts';
import { openConnection } from '../../db/file/connection.ts';
import { openWithDoor } from '../../electron/open.ts';
import { passOn } from '../../electron/passing-on.ts';
import { type Measured, measure } from './measure.ts';
import type { Years } from './years.ts';

const root = resolve(import.meta.dirname, '../..');

/** The doors: an order over the host, a checked copy, the start of the process, its memory. */
export async function doorRows(years: Years, turns: number): Promise<Measured[]> {
  const rows: Measured[] = [];
  const file = join(years.folder, 'shop.sqlite');

  const open = await openWithDoor({ folder: years.folder, practice: true, port: 0 });
  const holder = { address: open.host.address, key: open.host.key } as Parameters<typeof passOn>[0];
  const session = await passOn(holder, 'bench');
  const entered = await session.post('/enter', { person: years.ownerId, code: 'owner-code' });
  if (!entered.ok) throw new Error(JSON.stringify(entered.error));
  const raw = openConnection(file);
  const read = raw.prepare('SELECT * FROM line JOIN job ON job.id = line.job_id WHERE job.work_order_id = ?');
  const bare = createServer((request, response) => {
    request.resume();
    response.setHeader('content-type', 'application/json');
    response.end(JSON.stringify(read.all(years.open[0] ?? '')));
  });
  await new Promise<void>((done) => bare.listen(0, '127.0.0.1', done));
  const at = bare.address();
  const port = at !== null && typeof at === 'object' ? at.port : 0;
  rows.push(
    await measure(
      { what: 'an order over the browser host', limit: 'raw read, bare HTTP', goal: 1.5, turns },
      () => session.post('/call', { operation: 'order.get', input: { id: years.open[0] } }),
      async () => (await fetch(`http://127.0.0.1:${port}/`, { method: 'POST', body: '{}' })).json(),
    ),
  );
  bare.closeAllConnections();
  bare.close();
  raw.close();
  await open.close();

  let n = 0;
  rows.push(
    await measure(
      { what: 'a checked copy', limit: 'plain copy and fsync', goal: 4, turns: 3 },
      () => copyShop({ from: years.folder, to: join(years.folder, `copy-${n++}`), at: years.now, zone: 'UTC' }),
      () => {
        const to = join(years.folder, `plain-${n++}`);
        copyFileSync(file, to);
        const handle = openSync(to, 'r+');
        fsyncSync(handle);
        closeSync(handle);
        rmSync(to);
      },
    ),
  );

  const started = () =>
    new Promise<number>((done, failed) => {
      const from = performance.now();
      const child = spawn(
        process.execPath,
        [join(root, 'electron/shop.ts'), 'call', 'shop.get', '{}', '--shop', years.folder],
        {
          stdio: ['ignore', 'pipe', 'ignore'],
        },
      );
      child.stdout.once('data', () => done(performance.now() - from));
      child.once('error', failed);
    });
  rows.push(
    await measure({ what: 'process start to first answer', limit: 'bare Node', goal: 1.8, turns: 8 }, started, () =>
      spawnSync(process.execPath, ['-e', 'console.log(1)']),
    ),
  );
  const memory = Number(/VmRSS:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1] ?? Number.NaN) / 1024;
  rows.push({
    what: 'memory of this process, MB',
    limit: 'told only',
    ours: memory,
    bare: 1,
    ratio: memory,
    goal: null,
  });
  return rows;
}
