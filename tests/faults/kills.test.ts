import { spawn } from 'node:child_process';
import { join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { build } from 'vite';
import { beforeAll, expect, test } from 'vitest';
import { openShop } from '../../db/shop.ts';
import { practiceShop } from '../db/practice-shop.ts';

const KILLS = 200;

const root = resolve(import.meta.dirname, '../..');
/** The children, each as one piece: hundreds are started, and most of a start would go into reading hundreds of files. */
const pieces = join(root, 'node_modules/.cache/kills');

beforeAll(async () => {
  const child = (name: string) => join(import.meta.dirname, `${name}.ts`);
  await build({
    ...{ root, configFile: false, logLevel: 'warn' },
    ssr: { noExternal: true },
    build: {
      ...{ ssr: true, target: 'node24', outDir: pieces, emptyOutDir: true },
      rollupOptions: {
        external: ['better-sqlite3'],
        input: { 'busy-shop': child('busy-shop'), 'busy-every': child('busy-every') },
        output: { entryFileNames: '[name].js' },
      },
    },
  });
}, 120_000);

interface Answered {
  request: string;
  operation: string;
  personId: string;
  input: unknown;
  output: unknown;
}

/** Starts the busy child, kills it after a random number of answers and a random moment more; returns what it had answered. */
function killedAtSomeMoment(
  args: readonly string[],
  answers: number,
  more: number,
  script = 'busy-shop.js',
  end: string | null = null,
): Promise<{ answered: Answered[]; error: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(pieces, script), ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let text = '';
    let error = '';
    let lines = 0;
    let armed = false;
    child.stderr.on('data', (data: Buffer) => {
      error += data;
    });
    child.stdout.on('data', (data: Buffer) => {
      text += data;
      lines += data.toString().split('\n').length - 1;
      if (end === null ? lines < answers || armed : armed || !text.endsWith(end)) return;
      armed = true;
      // Counted in turns of the loop rather than milliseconds: a kill may fall anywhere in the next operations.
      setTimeout(() => child.kill('SIGKILL'), more);
    });
    // What was written before the kill is still in the pipe: read to its end.
    child.on('close', () => {
      const whole = text
        .slice(0, text.lastIndexOf('\n') + 1)
        .split('\n')
        .filter((line) => line !== '');
      resolve({ answered: whole.map((line) => JSON.parse(line) as Answered), error });
    });
  });
}

// Seeded, so that a failing run can be run again.
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** What was answered before the kill is in the file. */
function expectAllThere(folder: string, answered: readonly Answered[]): void {
  const raw = new Database(join(folder, 'shop.sqlite'), { readonly: true });
  const row = raw.prepare<[string], { answer: string }>('SELECT answer FROM request WHERE id = ?');
  for (const one of answered) {
    const kept = JSON.parse(row.get(one.request)?.answer ?? 'null');
    expect(kept, `${one.operation} was answered and is not there`).toEqual(one.output);
  }
  raw.close();
}

/** What one lane of kills has seen. */
interface Lane {
  readonly garage: Awaited<ReturnType<typeof practiceShop>>;
  readonly kinds: ReadonlySet<string>;
  readonly answers: number;
  readonly last: Answered | undefined;
}

/** One shop that is killed so many times, each time in the middle of its work. */
async function killAgainAndAgain(kills: number, seed: number): Promise<Lane> {
  const garage = await practiceShop();
  const shop = await garage.did('Odile', 'shop.get', {});
  await garage.shop.close();
  const args = [
    garage.folder,
    garage.people.get('Odile') ?? '',
    garage.people.get('Runa') ?? '',
    shop.bays[0]?.id ?? '',
  ];
  const next = random(seed);
  const kinds = new Set<string>();
  let answers = 0;
  let last: Answered | undefined;
  for (let kill = 0; kill < kills; kill += 1) {
    const { answered, error } = await killedAtSomeMoment(args, 1 + Math.floor(next() * 40), Math.floor(next() * 12));
    expect(error).toBe('');
    expectAllThere(garage.folder, answered);
    for (const one of answered) kinds.add(one.operation);
    answers += answered.length;
    last = answered.at(-1) ?? last;
    if (kill % 20 !== 19) continue;
    const opened = await openShop({ folder: garage.folder });
    const verified = await opened.call('care.verify', {}, { personId: args[1] ?? '', device: 'test' });
    expect(verified).toMatchObject({ ok: true, output: { sound: true } });
    await opened.close();
  }
  return { garage, kinds, answers, last };
}

test(`${KILLS} kills at any moment: nothing answered is lost, nothing half there`, { timeout: 1_200_000 }, async () => {
  // Two shops side by side: a child that starts up keeps one processor, and the rest of the machine need not wait.
  const lanes = await Promise.all([20_261_125, 20_261_127].map((seed) => killAgainAndAgain(KILLS / 2, seed)));
  const kinds = new Set(lanes.flatMap((lane) => [...lane.kinds]));
  const answers = lanes.reduce((sum, lane) => sum + lane.answers, 0);
  console.log(`${KILLS} kills, ${answers} answers checked, ${kinds.size} kinds of do`);
  expect(kinds.size).toBeGreaterThanOrEqual(20);
  const [one, two] = lanes;
  if (!one || !two) throw new Error('there are two lanes');
  await two.garage.end();
  const { garage, last: lastSeen } = one;

  // Negative control: the same check finds a commit that is really lost.
  const raw = new Database(join(garage.folder, 'shop.sqlite'));
  raw.exec('DROP TRIGGER request_no_delete');
  raw.prepare('DELETE FROM request WHERE id = ?').run(lastSeen?.request);
  expect(raw.prepare('SELECT answer FROM request WHERE id = ?').get(lastSeen?.request)).toBeUndefined();
  raw.close();
  garage.shop = await openShop({ folder: garage.folder });
  expect((await garage.did('Odile', 'care.verify', {})).faults).toContainEqual(
    expect.objectContaining({ what: 'row-missing', table: 'request', row: lastSeen?.request }),
  );
  await garage.end();
});

/** Lets the child go to its end, and kills it there. */
const untilAllIsDone = (args: readonly string[]) => killedAtSomeMoment(args, 0, 0, 'busy-every.js', '\n\n');

/** One shop that is worked through with a do of nearly every kind, and killed on the way. */
async function killedOnTheWay(
  answers: number | null,
  more: number,
): Promise<{ kinds: readonly string[]; count: number }> {
  const garage = await practiceShop();
  await garage.shop.close();
  const args = [garage.folder, JSON.stringify([...garage.people])];
  const { answered, error } = await (answers === null
    ? untilAllIsDone(args)
    : killedAtSomeMoment(args, answers, more, 'busy-every.js'));
  expect(error).toBe('');
  expectAllThere(garage.folder, answered);
  garage.shop = await openShop({ folder: garage.folder });
  expect(await garage.did('Odile', 'care.verify', {})).toMatchObject({ sound: true });
  await garage.end();
  return { kinds: answered.map((one) => one.operation), count: answered.length };
}

test('a do of nearly every kind, killed at any moment: nothing answered is lost', { timeout: 600_000 }, async () => {
  const next = random(20_261_126);
  // The first one is let go to its end: its length is known then, and every kind was answered once.
  const whole = await killedOnTheWay(null, 0);
  const kinds = new Set(whole.kinds);
  for (let pair = 0; pair < 12; pair += 1) {
    const moments = [1, 2].map(() => [1 + Math.floor(next() * whole.count), Math.floor(next() * 12)] as const);
    const seen = await Promise.all(moments.map(([answers, more]) => killedOnTheWay(answers, more)));
    for (const one of seen) for (const kind of one.kinds) kinds.add(kind);
  }
  console.log(`25 kills, ${kinds.size} kinds of do, ${whole.count} answers in one going through`);
  expect(kinds.size).toBeGreaterThanOrEqual(45);
});
