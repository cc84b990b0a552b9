import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { ShopCopy } from '../db/file/backup.ts';
import { GUARDS } from './pages.ts';
import { PLAIN_POLICY } from './plain-page.ts';
import { checkSource, readTarget, TurnedAway } from './request.ts';
import { cookie, Sessions } from './sessions.ts';
import { broughtBackPage, troublePage } from './trouble-page.ts';
import { turnedAwayPage } from './turned-away-page.ts';

export interface TroubleSettings {
  /** Why the shop cannot be opened, in words. */
  readonly why: string;
  /** The copies that may be brought back now, newest first. */
  copies(): readonly ShopCopy[];
  /**
   * Brings a copy back and opens the shop. Returns what to say and the link into the shop; what it throws is shown in
   * words by `say`.
   */
  bringBack(copy: ShopCopy, lastInvoice: number | null): Promise<{ readonly said: string; readonly link: string }>;
  say(fault: unknown): string;
}

export interface Trouble {
  /** Lets one browser in, once. */
  readonly link: string;
  /** Resolves once a copy is back and its page was sent. */
  readonly mended: Promise<void>;
  close(): Promise<void>;
}

const FORM_LIMIT = 4_096;

/** A page on the loopback address that says why the shop cannot be opened, and offers its copies. */
export async function openTrouble(settings: TroubleSettings): Promise<Trouble> {
  const sessions = new Sessions();
  let port = 0;
  let mend = () => {};
  const mended = new Promise<void>((done) => {
    mend = done;
  });

  const server = createServer({ headersTimeout: 10_000, requestTimeout: 60_000 }, (request, response) => {
    answer(request, response).catch((fault: unknown) => {
      if (fault instanceof TurnedAway) return send(response, fault.status, turnedAwayPage(fault.message));
      send(response, 500, troublePage({ ...told(), wrong: settings.say(fault) }));
    });
  });
  const told = () => ({ why: settings.why, copies: settings.copies() });

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { path, query } = readTarget(request.url);
    const key = path === '/' && request.method === 'GET' ? query.get('key') : null;
    checkSource(request, port, key !== null);
    const name = `crownwheel-${port}`;
    if (key !== null) {
      const token = sessions.exchange(key);
      if (token === null) throw new TurnedAway(401, 'key');
      return send(response, 200, troublePage(told()), {
        'set-cookie': `${name}=${token}; HttpOnly; SameSite=Strict; Path=/`,
      });
    }
    if (sessions.find(cookie(request.headers.cookie, name)) === undefined) throw new TurnedAway(401, 'session');
    if (request.method === 'GET' && path === '/') return send(response, 200, troublePage(told()));
    if (request.method !== 'POST' || path !== '/bring-back') throw new TurnedAway(404, 'path');
    const { copy, lastInvoice } = readChoice(await readForm(request), settings.copies());
    const { said, link } = await settings.bringBack(copy, lastInvoice);
    response.once('finish', mend);
    send(response, 200, broughtBackPage(said, link));
  }

  await new Promise<void>((listening, failed) => {
    server.once('error', failed).listen(0, '127.0.0.1', listening);
  });
  port = (server.address() as AddressInfo).port;
  return {
    link: `http://127.0.0.1:${port}/?key=${sessions.newKey('window')}`,
    mended,
    async close() {
      const closed = new Promise((done) => server.close(done));
      server.closeAllConnections();
      await closed;
    },
  };
}

function send(response: ServerResponse, status: number, text: string, headers: Record<string, string> = {}): void {
  response.writeHead(status, {
    ...GUARDS,
    'content-security-policy': PLAIN_POLICY,
    // Without a referrer a form's origin would be "null", and be turned away as somebody else's.
    'referrer-policy': 'same-origin',
    'content-type': 'text/html; charset=utf-8',
    ...headers,
  });
  response.end(text);
}

async function readForm(request: IncomingMessage): Promise<URLSearchParams> {
  const type = (request.headers['content-type'] ?? '').split(';')[0]?.trim().toLowerCase();
  if (type !== 'application/x-www-form-urlencoded') throw new TurnedAway(415, 'type');
  let text = '';
  for await (const part of request) {
    text += String(part);
    if (text.length > FORM_LIMIT) throw new TurnedAway(413, 'size');
  }
  return new URLSearchParams(text);
}

function readChoice(form: URLSearchParams, copies: readonly ShopCopy[]) {
  const copy = copies.find(({ name }) => name === form.get('copy'));
  const typed = form.get('lastInvoice')?.trim() ?? '';
  if (copy === undefined || !/^\d{0,12}$/.test(typed)) throw new TurnedAway(400, 'form');
  return { copy, lastInvoice: Number(typed) > 0 ? Number(typed) : null };
}
