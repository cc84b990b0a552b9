import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as httpRequest, type IncomingHttpHeaders } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Host, startHost } from '../../electron/host.ts';
import { BODY_LIMIT } from '../../electron/request.ts';
import { FakeShop } from './fake-shop.ts';

let folder: string;
let shop: FakeShop;
let host: Host;
let port: number;
const faults: unknown[] = [];

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'crownwheel-host-'));
  mkdirSync(join(folder, 'dist', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'dist', 'index.html'), '<!doctype html><title>window</title>');
  writeFileSync(join(folder, 'dist', 'assets', 'main-1a2b.js'), 'export {};');
  writeFileSync(join(folder, 'secret.json'), '{"secret":true}');
  shop = new FakeShop();
  faults.length = 0;
  host = await startHost({ shop, root: join(folder, 'dist'), onFault: (_id, fault) => faults.push(fault) });
  port = Number(new URL(host.address).port);
});

afterEach(async () => {
  await host.close();
  rmSync(folder, { recursive: true });
});

interface Reply {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

interface Sent {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string | Buffer | readonly Buffer[];
}

/** A request as a stranger could write it: the path goes out as it stands, and Host and Origin can be anything. */
function send(path: string, { method = 'GET', headers = {}, body }: Sent = {}): Promise<Reply> {
  return new Promise((done, failed) => {
    const outgoing = httpRequest({ host: '127.0.0.1', port, path, method, headers }, (answer) => {
      let text = '';
      answer.setEncoding('utf8');
      answer.on('data', (part: string) => {
        text += part;
      });
      answer.on('end', () => done({ status: answer.statusCode ?? 0, headers: answer.headers, text }));
    });
    outgoing.on('error', failed);
    if (typeof body === 'string' || Buffer.isBuffer(body)) outgoing.end(body);
    else {
      for (const part of body ?? []) outgoing.write(part);
      outgoing.end();
    }
  });
}

async function letIn(): Promise<string> {
  const link = new URL(host.newLink('desk'));
  const entry = await send(`${link.pathname}${link.search}`);
  return (entry.headers['set-cookie']?.[0] ?? '').split(';')[0] ?? '';
}

const json = { 'content-type': 'application/json' };
const post = (path: string, cookie: string, body: unknown, headers: Record<string, string> = {}) =>
  send(path, { method: 'POST', headers: { ...json, cookie, ...headers }, body: JSON.stringify(body) });
const call = (cookie: string, operation: string, input: unknown = {}, headers: Record<string, string> = {}) =>
  post('/call', cookie, { operation, input }, headers);

test('it listens on the loopback address only', () => {
  expect(new URL(host.address).hostname).toBe('127.0.0.1');
});

test.each(['/', '/index.html', '/assets/main-1a2b.js', '/who', '/changes', '/papers/paper-1.pdf', '/nothing'])(
  'without a session %s says nothing',
  async (path) => {
    const answer = await send(path);
    expect(answer.status).toBe(401);
    expect(answer.text).not.toContain('window');
    expect((await send(path, { headers: { cookie: `crownwheel-${port}=guessed` } })).status).toBe(401);
  },
);

test('without a session nothing is called, entered or left', async () => {
  for (const path of ['/call', '/enter', '/leave']) expect((await post(path, '', {})).status).toBe(401);
  expect(shop.made).toEqual([]);
});

test('a launch key lets in once; its cookie is kept from scripts and from other sites', async () => {
  const link = new URL(host.newLink('desk'));
  const entry = await send(`/${link.search}`);
  expect(entry.status).toBe(200);
  expect(entry.headers['set-cookie']?.[0]).toMatch(/; HttpOnly; SameSite=Strict; Path=\/$/);
  const cookie = (entry.headers['set-cookie']?.[0] ?? '').split(';')[0] ?? '';
  expect((await send('/', { headers: { cookie } })).text).toContain('<title>window</title>');
  const again = await send(`/${link.search}`);
  expect(again.status).toBe(401);
  expect(again.headers['set-cookie']).toBeUndefined();
  expect((await send('/?key=')).status).toBe(401);
});

test('a launch link may be followed from a local file, as a whole page only', async () => {
  const follow = (mode: string) => {
    const { search } = new URL(host.newLink('desk'));
    return send(`/${search}`, { headers: { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': mode } });
  };
  expect((await follow('navigate')).status).toBe(200);
  expect((await follow('no-cors')).status).toBe(403);
});

test('only the holder of the key gets another link', async () => {
  const ask = (authorization: string) =>
    send('/door', { method: 'POST', headers: { ...json, authorization }, body: '{"device":"second"}' });
  expect((await ask('Bearer wrong')).status).toBe(401);
  const good = await ask(`Bearer ${host.key}`);
  expect(good.status).toBe(200);
  expect(good.text).toContain(`${host.address}/?key=`);
});

test('somebody enters, works under that name, and leaves', async () => {
  const cookie = await letIn();
  await call(cookie, 'today.get');
  expect((await post('/enter', cookie, { person: 'Nadja', code: 'wrong' })).text).toContain('not-allowed');
  expect((await post('/enter', cookie, { person: 'Nadja', code: '4711' })).text).toContain('id-Nadja');
  expect(JSON.parse((await send('/who', { headers: { cookie } })).text)).toEqual({
    ok: true,
    output: {
      person: { personId: 'id-Nadja', name: 'Nadja', role: 'desk' },
      practice: true,
      folder: '/somewhere/shop',
    },
  });
  await post('/call', cookie, { operation: 'today.get', input: { a: 1 }, request: 'r1', at: 5 });
  await post('/leave', cookie, {});
  await call(cookie, 'today.get');
  expect(shop.made.map((made) => made.caller)).toEqual([
    { personId: null, device: 'desk' },
    { personId: 'id-Nadja', device: 'desk' },
    { personId: null, device: 'desk' },
  ]);
  expect(shop.made[1]).toMatchObject({ input: { a: 1 }, options: { request: 'r1', at: 5 } });
});

test('two windows have sessions of their own', async () => {
  const [one, other] = [await letIn(), await letIn()];
  await post('/enter', one, { person: 'Nadja', code: '4711' });
  expect((await send('/who', { headers: { cookie: other } })).text).toContain('"person":null');
});

test.each([
  ['another host', { host: 'shop.example' }],
  ['a name bound to this machine', { host: 'rebound.example:80' }],
  ['another port in the host', { host: '127.0.0.1:1' }],
  ['another origin', { origin: 'http://evil.example' }],
  ['an opaque origin', { origin: 'null' }],
  ['the same machine, another port', { origin: 'http://127.0.0.1:1' }],
  ['another site', { 'sec-fetch-site': 'cross-site' }],
  ['a page of another port', { 'sec-fetch-site': 'same-site' }],
])('%s is turned away, session or not', async (_name, headers) => {
  const cookie = await letIn();
  const sent: Record<string, string> = { host: `127.0.0.1:${port}`, ...headers };
  expect((await call(cookie, 'today.get', {}, sent)).status).toBe(403);
  expect((await send('/who', { headers: { cookie, ...sent } })).status).toBe(403);
  expect(shop.made).toEqual([]);
});

test('our own origin is let through', async () => {
  const cookie = await letIn();
  const own = { origin: host.address, 'sec-fetch-site': 'same-origin' };
  expect((await call(cookie, 'today.get', {}, own)).status).toBe(200);
});

test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', ''])(
  'a body of type "%s" is no call',
  async (type) => {
    const cookie = await letIn();
    const answer = await send('/call', {
      method: 'POST',
      headers: { cookie, ...(type === '' ? {} : { 'content-type': type }) },
      body: '{"operation":"today.get","input":{}}',
    });
    expect(answer.status).toBe(415);
    expect(shop.made).toEqual([]);
  },
);

test.each(['{', '', '[]', 'null', '{"operation":1}', '{"operation":"a.b","input":{},"personId":"x"}'])(
  'the body %s is answered with 400',
  async (body) => {
    const cookie = await letIn();
    expect((await send('/call', { method: 'POST', headers: { ...json, cookie }, body })).status).toBe(400);
    expect(shop.made).toEqual([]);
  },
);

test('text that is not UTF-8 is answered with 400', async () => {
  const cookie = await letIn();
  const body = Buffer.from([0x22, 0xff, 0xfe, 0x22]);
  expect((await send('/call', { method: 'POST', headers: { ...json, cookie }, body })).status).toBe(400);
});

test('a body that announces too much is turned away before it is read', async () => {
  const cookie = await letIn();
  const answer = await new Promise<string>((done, failed) => {
    const line = connect(port, '127.0.0.1', () =>
      line.write(
        `POST /call HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${cookie}\r\nContent-Type: application/json\r\nContent-Length: ${BODY_LIMIT + 1}\r\n\r\n{`,
      ),
    );
    line.once('data', (data) => {
      done(data.toString());
      line.destroy();
    });
    line.once('error', failed);
  });
  expect(answer).toMatch(/^HTTP\/1\.1 413 /);
});

test('a body that grows too large in pieces is turned away while it comes', async () => {
  const cookie = await letIn();
  const piece = Buffer.alloc(1024 * 1024, 0x20);
  const answer = await new Promise<string>((done, failed) => {
    let heard = '';
    const line = connect(port, '127.0.0.1', () => {
      line.write(
        `POST /call HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${cookie}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n`,
      );
      for (let sent = 0; sent <= BODY_LIMIT; sent += piece.length) {
        line.write(`${piece.length.toString(16)}\r\n`);
        line.write(piece);
        line.write('\r\n');
      }
    });
    line.on('data', (data) => {
      heard += data.toString();
    });
    line.once('close', () => done(heard));
    line.once('error', (fault) => (heard === '' ? failed(fault) : done(heard)));
  });
  expect(answer).toMatch(/^HTTP\/1\.1 413 /);
  expect(shop.made).toEqual([]);
  expect((await call(cookie, 'today.get')).status).toBe(200);
});

test.each(['/%zz', '/%', '/a%c3', '/%00', '/assets/%zz.js'])('the path %s is answered with 400', async (path) => {
  const cookie = await letIn();
  expect((await send(path, { headers: { cookie } })).status).toBe(400);
});

test.each([
  '/../secret.json',
  '/..%2fsecret.json',
  '/%2e%2e/secret.json',
  '/%2e%2e%2fsecret.json',
  '/assets/..%2f..%2fsecret.json',
  '/..%5csecret.json',
  '/assets/../../secret.json',
  '//etc/passwd',
])('%s stays inside the window folder', async (path) => {
  const cookie = await letIn();
  const answer = await send(path, { headers: { cookie } });
  expect(answer.text).not.toContain('secret');
  expect(answer.text).not.toContain('root:');
  if (path.endsWith('.json')) expect(answer.status).toBe(404);
});

test('a target that is no path is answered with 400', async () => {
  const cookie = await letIn();
  expect((await send('http://evil.example/', { headers: { cookie } })).status).toBe(400);
});

test('other methods are not served', async () => {
  const cookie = await letIn();
  for (const method of ['PUT', 'DELETE', 'OPTIONS', 'PATCH']) {
    expect((await send('/', { method, headers: { cookie } })).status).toBe(405);
  }
});

test('every page carries the policy, and nothing is cached but files named by their content', async () => {
  const cookie = await letIn();
  const page = await send('/orders', { headers: { cookie } });
  expect(page.headers['content-security-policy']).toContain("default-src 'none'");
  expect(page.headers['content-security-policy']).not.toContain('unsafe');
  expect(page.headers['x-content-type-options']).toBe('nosniff');
  expect(page.headers['cache-control']).toBe('no-store');
  expect((await send('/assets/main-1a2b.js', { headers: { cookie } })).headers['cache-control']).toContain('immutable');
});

test('a paper is shown inline under its name, to whoever may read it', async () => {
  const cookie = await letIn();
  expect((await send('/papers/paper-1.pdf', { headers: { cookie } })).status).toBe(403);
  await post('/enter', cookie, { person: 'Nadja', code: '4711' });
  const paper = await send('/papers/paper-1.pdf', { headers: { cookie } });
  expect(paper.status).toBe(200);
  expect(paper.text).toBe('%PDF-1.7 x');
  expect(paper.headers['content-type']).toBe('application/pdf');
  expect(paper.headers['content-disposition']).toBe(
    "inline; filename*=UTF-8''Rechnung%207%20%E2%80%93%20K%C3%B6hler.pdf",
  );
  expect((await send('/papers/paper-2.pdf', { headers: { cookie } })).status).toBe(404);
  expect((await send('/papers/..%2f..%2fsecret.pdf', { headers: { cookie } })).status).toBe(404);
});

test('an unforeseen fault is noted under an id, and shows nothing of itself', async () => {
  const cookie = await letIn();
  const answer = await call(cookie, 'break.it');
  expect(answer.status).toBe(500);
  expect(answer.text).toContain('unknown-fault');
  expect(answer.text).not.toContain('secret');
  expect(faults).toHaveLength(1);
});

/** Reads server-sent events until `count` have come. */
async function listen(cookie: string, count: number, event = 'change'): Promise<() => Promise<string[]>> {
  const stop = new AbortController();
  const stream = await fetch(`${host.address}/changes`, { headers: { cookie }, signal: stop.signal });
  expect(stream.headers.get('content-type')).toBe('text/event-stream');
  return async () => {
    const seen: string[] = [];
    let text = '';
    for await (const part of stream.body ?? []) {
      text += Buffer.from(part).toString();
      seen.splice(
        0,
        seen.length,
        ...[...text.matchAll(new RegExp(`^event: ${event}\\ndata: (.*)\\n\\n`, 'gm'))].map((found) => found[1] ?? ''),
      );
      if (seen.length >= count) break;
    }
    stop.abort();
    return seen;
  };
}

test('every open window is told what changed', async () => {
  const [one, other] = [await letIn(), await letIn()];
  const [atOne, atOther] = [await listen(one, 1), await listen(other, 1)];
  expect(host.windows()).toBe(2);
  await call(one, 'today.get');
  await call(one, 'customer.add');
  expect(await atOne()).toEqual(['["customer"]']);
  expect(await atOther()).toEqual(['["customer"]']);
});

test('every other window is told who has which cell in hand, until it is let go or the window goes', async () => {
  const [one, other] = [await letIn(), await letIn()];
  expect((await post('/hand', one, { cell: 'line-1 price' })).status).toBe(401);
  await post('/enter', one, { person: 'Nadja', code: '4711' });
  await post('/enter', other, { person: 'Ole', code: '1234' });
  // Nothing is in hand as it opens; taken; the same again is no news; let go; taken; its window goes.
  const atOther = await listen(other, 6, 'hands');
  const stop = new AbortController();
  const stream = await fetch(`${host.address}/changes`, { headers: { cookie: one }, signal: stop.signal });
  for (const cell of ['line-1 price', 'line-1 price', null, 'line-2 price'])
    expect((await post('/hand', one, { cell })).status).toBe(200);
  for (const wrong of [{}, { cell: '' }, { cell: 7 }, { cell: 'x'.repeat(121) }, { cell: 'a', name: 'Ole' }])
    expect((await post('/hand', one, wrong)).status).toBe(400);
  stop.abort();
  await stream.text().catch(() => '');
  const told = await atOther();
  expect(told.filter((data, at) => data !== told[at - 1])).toEqual([
    '[]',
    '[{"name":"Nadja","cell":"line-1 price"}]',
    '[]',
    '[{"name":"Nadja","cell":"line-2 price"}]',
    '[]',
  ]);
});

test('closing ends open streams at once and leaves the shop to its owner', async () => {
  const cookie = await letIn();
  const stream = await fetch(`${host.address}/changes`, { headers: { cookie } });
  await host.close();
  await expect(stream.text().catch(() => 'cut')).resolves.toMatch(/cut|retry/);
  await expect(fetch(host.address)).rejects.toThrow();
  expect(shop.closed).toBe(0);
  host = await startHost({ shop, root: join(folder, 'dist') });
});
