import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Host, startHost } from '../../electron/host.ts';
import { FakeShop } from './fake-shop.ts';

let folder: string;
let host: Host;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'crownwheel-turned-'));
  mkdirSync(join(folder, 'dist'));
  writeFileSync(join(folder, 'dist', 'index.html'), '<!doctype html><title>window</title>');
  host = await startHost({ shop: new FakeShop(), root: join(folder, 'dist') });
});
afterEach(async () => {
  await host.close();
  rmSync(folder, { recursive: true });
});

/** As a person's browser asks for a page; `cookie` of a session. */
const visit = async (where: string, cookie = '') => {
  const answer = await fetch(new URL(where, host.address), {
    headers: { accept: 'text/html,application/xhtml+xml,*/*;q=0.8', cookie },
  });
  return { status: answer.status, headers: answer.headers, text: await answer.text() };
};
const usedUp = async () => {
  const link = host.newLink('desk');
  return { link, cookie: ((await visit(link)).headers.get('set-cookie') ?? '').split(';')[0] ?? '' };
};

test('a person whose link is used up reads what to do, on a page whose style its policy lets through', async () => {
  const again = await visit((await usedUp()).link);
  expect(again.status).toBe(401);
  expect(again.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect(again.headers.get('set-cookie')).toBeNull();
  expect(again.text).toContain('This link was used before, or is too old');
  expect(again.text).toContain('start Crownwheel again');
  const style = /<style>([^<]*)<\/style>/.exec(again.text)?.[1] ?? '';
  const hash = createHash('sha256').update(style).digest('base64');
  expect(again.headers.get('content-security-policy')).toContain(`style-src 'sha256-${hash}'`);
  expect(again.text).not.toContain('<script');
});

test('each reason has its words; a caller gets JSON for the same', async () => {
  const { link, cookie } = await usedUp();
  const said = async (where: string, as = '') => (await visit(where, as)).text;
  expect(await said('/')).toContain('This window is not let in');
  expect(await said('/no.such', cookie)).toContain('There is nothing at this address');
  const caller = async (where: string, headers: Record<string, string>) =>
    (await fetch(new URL(where, host.address), { headers })).json();
  const away = (why: string) => ({ ok: false, error: { code: 'turned-away', why } });
  expect(await caller(link, { accept: '*/*' })).toEqual(away('key'));
  expect(await caller('/who', { accept: 'application/json' })).toEqual(away('session'));
  const posted = await fetch(new URL('/call', host.address), { method: 'POST', headers: { accept: 'text/html' } });
  expect(await posted.json()).toEqual(away('session'));
});

test('a browser that is in already goes on with what it has when it opens its used link again', async () => {
  const { link, cookie } = await usedUp();
  const known = await visit(link, cookie);
  expect(known.status).toBe(200);
  expect(known.headers.get('set-cookie')).toBeNull();
  expect(known.text).toContain('content="0;url=/"');
  expect((await visit('/', cookie)).text).toContain('<title>window</title>');
  expect((await visit(link, `${cookie}x`)).status).toBe(401);
});
