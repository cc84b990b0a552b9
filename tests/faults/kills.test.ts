import { spawn } from 'node:child_process';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openShop } from '../../db/shop.ts';
import { practiceShop } from '../db/practice-shop.ts';

const KILLS = 200;
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
  script = 'busy-shop.ts',
  end: string | null = null,
): Promise<{ answered: Answered[]; error: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(import.meta.dirname, script), ...args], {
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

test(`${KILLS} kills at any moment: nothing answered is lost, nothing half there`, { timeout: 1_200_000 }, async () => {
  const garage = await practiceShop();
  const shop = await garage.did('Odile', 'shop.get', {});
  await garage.shop.close();
  const args = [
    garage.folder,
    garage.people.get('Odile') ?? '',
    garage.people.get('Runa') ?? '',
    shop.bays[0]?.id ?? '',
  ];
  const next = random(20_261_125);
  const kinds = new Set<string>();
  let answers = 0;
  let lastSeen: Answered | undefined;
  for (let kill = 0; kill < KILLS; kill += 1) {
    const { answered, error } = await killedAtSomeMoment(args, 1 + Math.floor(next() * 40), Math.floor(next() * 12));
    expect(error).toBe('');
    const again = new Database(join(garage.folder, 'shop.sqlite'), { readonly: true });
    const row = again.prepare<[string], { answer: string }>('SELECT answer FROM request WHERE id = ?');
    for (const one of answered) {
      kinds.add(one.operation);
      answers += 1;
      expect(
        JSON.parse(row.get(one.request)?.answer ?? 'null'),
        `${one.operation} was answered and is not there`,
      ).toEqual(one.output);
    }
    again.close();
    lastSeen = answered.at(-1) ?? lastSeen;
    if (kill % 20 !== 19) continue;
    const opened = await openShop({ folder: garage.folder });
    const verified = await opened.call('care.verify', {}, { personId: args[1] ?? '', device: 'test' });
    expect(verified).toMatchObject({ ok: true, output: { sound: true } });
    await opened.close();
  }
  console.log(`${KILLS} kills, ${answers} answers checked, ${kinds.size} kinds of do`);
  expect(kinds.size).toBeGreaterThanOrEqual(20);

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
const untilAllIsDone = (args: readonly string[]) => killedAtSomeMoment(args, 0, 0, 'busy-every.ts', '\n\n');

test('a do of nearly every kind, killed at any moment: nothing answered is lost', { timeout: 600_000 }, async () => {
  const next = random(20_261_126);
  const kinds = new Set<string>();
  let most = 0;
  for (let kill = 0; kill < 25; kill += 1) {
    const garage = await practiceShop();
    await garage.shop.close();
    // The first one is let go to its end: its length is known then, and every kind was answered once.
    const people = JSON.stringify([...garage.people]);
    const { answered, error } = await (kill === 0
      ? untilAllIsDone([garage.folder, people])
      : killedAtSomeMoment(
          [garage.folder, people],
          1 + Math.floor(next() * most),
          Math.floor(next() * 12),
          'busy-every.ts',
        ));
    expect(error).toBe('');
    most = Math.max(most, answered.length);
    const raw = new Database(join(garage.folder, 'shop.sqlite'), { readonly: true });
    const row = raw.prepare<[string], { answer: string }>('SELECT answer FROM request WHERE id = ?');
    for (const one of answered) {
      kinds.add(one.operation);
      const kept = JSON.parse(row.get(one.request)?.answer ?? 'null');
      expect(kept, `${one.operation} was answered and is not there`).toEqual(one.output);
    }
    raw.close();
    garage.shop = await openShop({ folder: garage.folder });
    expect(await garage.did('Odile', 'care.verify', {})).toMatchObject({ sound: true });
    await garage.end();
  }
  console.log(`25 kills, ${kinds.size} kinds of do, ${most} answers in one going through`);
  expect(kinds.size).toBeGreaterThanOrEqual(45);
});
