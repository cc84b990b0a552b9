import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { backUp } from '../../electron/copies.ts';
import { type OpenDoor, openWithDoor } from '../../electron/open.ts';
import { practiceShop } from '../db/practice-shop.ts';

let folder = '';
let door: OpenDoor;
let cookie = '';
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'crownwheel-begin-'));
  door = await openWithDoor({ folder: join(folder, 'shop'), demo: join(folder, 'demo'), port: 0 });
  cookie = await letIn('window');
});
afterEach(async () => {
  await door.close();
  rmSync(folder, { recursive: true });
});

async function letIn(device: string): Promise<string> {
  const entry = await fetch(door.host.newLink(device));
  return entry.headers.getSetCookie()[0]?.split(';')[0] ?? '';
}
async function begin(
  body: object,
  as = cookie,
): Promise<{ status: number; ok?: boolean; output?: never; error?: never }> {
  const headers = { 'content-type': 'application/json', cookie: as };
  const answer = await fetch(`${door.host.address}/begin`, { method: 'POST', headers, body: JSON.stringify(body) });
  return { status: answer.status, ...((await answer.json()) as object) };
}
const shopGet = async () => {
  const answer = await door.standing.call('shop.get', {}, { personId: null, device: 'test' });
  return answer.ok ? (answer.output as { isSetUp: boolean; settings: { name: string } | null }) : null;
};

/** A copy of a set-up garage with papers up to invoice 1046 or none, as a folder elsewhere; `spoilt` is done to it before. */
async function copyElsewhere(spoilt?: string): Promise<string> {
  const other = await practiceShop();
  try {
    if (spoilt !== undefined) {
      const raw = new Database(join(other.folder, 'shop.sqlite'));
      raw.exec(spoilt);
      raw.close();
    }
    return (await backUp(other.folder, join(folder, 'stick'))).path;
  } finally {
    await other.end();
  }
}

test('a copy is looked into, and nothing is touched by that; then it takes the place of the empty shop, which is kept', async () => {
  const copy = await copyElsewhere();
  const before = readdirSync(join(folder, 'shop')).sort();
  expect(await begin({ what: 'look', copy })).toMatchObject({
    ok: true,
    output: { garage: 'Saltmarsh Motor Works', lastInvoice: null, trail: 1 },
  });
  expect(readdirSync(join(folder, 'shop')).sort()).toEqual(before);
  expect(await shopGet()).toMatchObject({ isSetUp: false });

  const back = await begin({ what: 'bring-back', copy, lastInvoice: 1052 });
  expect(back).toMatchObject({ ok: true, output: { said: expect.stringContaining('the next is 1053') } });
  expect(await shopGet()).toMatchObject({ isSetUp: true, settings: { name: 'Saltmarsh Motor Works' } });
  expect(readdirSync(join(folder, 'shop')).some((name) => name.startsWith('shop put aside'))).toBe(true);
  // The same window, the same door: and it is a garage now, so nothing can be brought back over it.
  expect(await begin({ what: 'bring-back', copy, lastInvoice: null })).toMatchObject({
    ok: false,
    error: { code: 'already-set-up' },
  });
});

test.each(['look', 'bring-back'] as const)(
  '%s: what is no copy is told in a sentence, and the empty shop stands',
  async (what) => {
    const more = what === 'look' ? {} : { lastInvoice: null };
    writeFileSync(join(folder, 'letter.txt'), 'not a shop at all, but a letter to the desk');
    for (const [copy, said] of [
      [join(folder, 'nowhere'), 'is not where it should be'],
      [join(folder, 'letter.txt'), 'is damaged'],
      ['../shop/shop.sqlite', 'whole path'],
    ] as const)
      expect(await begin({ what, copy, ...more }), copy).toMatchObject({
        ok: true,
        output: { wrong: expect.stringContaining(said) },
      });
    expect(await shopGet()).toMatchObject({ isSetUp: false });
    expect(readdirSync(join(folder, 'shop')).some((name) => name.includes('aside') || name.includes('looked'))).toBe(
      false,
    );
  },
);

test('a copy that is in place and could not be noted is told as both', async () => {
  const copy = await copyElsewhere(
    `CREATE TRIGGER full BEFORE INSERT ON trail BEGIN SELECT RAISE(ABORT, 'no room in the trail'); END`,
  );
  const back = await begin({ what: 'bring-back', copy, lastInvoice: 1052 });
  expect(back).toMatchObject({ ok: true, output: { said: expect.stringMatching(/^The copy is in place in /) } });
  expect(back).toMatchObject({ output: { said: expect.stringContaining('its trail does not say') } });
  expect(back).toMatchObject({ output: { said: expect.stringContaining('no room in the trail') } });
  expect(back).not.toMatchObject({ output: { said: expect.stringContaining('the next is') } });
  expect(await shopGet()).toMatchObject({ isSetUp: true, settings: { name: 'Saltmarsh Motor Works' } });
});

test('only this machine’s own window begins a garage, in the shapes that there are', async () => {
  expect((await begin({ what: 'demo' }, '')).status).toBe(401);
  expect((await begin({ what: 'demo' }, await letIn('tablet'))).status).toBe(404);
  expect((await begin({ what: 'remove', copy: '/' })).status).toBe(400);
  expect((await begin({ what: 'look', copy: '/x', more: 1 })).status).toBe(400);
  expect(await begin({ what: 'demo' })).toMatchObject({ ok: true, output: { stage: 'none' } });
});

test('the demo garage is counted while it is played, stops when asked and leaves nothing', async () => {
  expect(await begin({ what: 'play' })).toMatchObject({ ok: true, output: { stage: 'playing' } });
  await expect
    .poll(async () => (await begin({ what: 'demo' })).output, { timeout: 60_000 })
    .toMatchObject({ stage: 'playing', step: 'scenes', of: expect.any(Number), done: expect.any(Number) });
  expect(await begin({ what: 'open-demo' })).toMatchObject({ output: { stage: 'playing' } });
  expect(await begin({ what: 'stop' })).toMatchObject({ ok: true, output: { stage: 'stopped' } });
  expect(existsSync(join(folder, 'demo'))).toBe(false);
  expect(existsSync(join(folder, 'demo.unfinished'))).toBe(false);
  expect(await shopGet()).toMatchObject({ isSetUp: false });
});
