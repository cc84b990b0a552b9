import { randomUUID } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { resolve } from 'node:path';
import { z } from 'zod';
import {
  type BeginBody,
  beginBody,
  callBody,
  type DoorAnswer,
  enterBody,
  enterOutput,
  handBody,
  paperId,
  paperOutput,
} from './bodies.ts';
import { Changes } from './changes.ts';
import type { Shop } from './dispatch.ts';
import { Hands } from './hands.ts';
import { findPage, GUARDS, sendPage } from './pages.ts';
import { PLAIN_POLICY } from './plain-page.ts';
import { checkSource, readJson, readTarget, TurnedAway } from './request.ts';
import { cookie, type Entered, newSecret, type Session, Sessions, sameSecret } from './sessions.ts';
import { isPageVisit, turnedAwayPage } from './turned-away-page.ts';

const doorBody = z.strictObject({ device: z.string().min(1).max(60) });
const nothing = z.strictObject({});

export interface HostSettings {
  readonly shop: Shop;
  /** Who has which cell in hand, shared with the desktop's own window; absent: among the browsers only. */
  readonly hands?: Hands;
  /** What a window asks before there is a garage; absent: nothing is answered there. */
  readonly begin?: (body: BeginBody) => Promise<DoorAnswer>;
  /** The folder of the built window. */
  readonly root: string;
  /** Where it listens if that port is free; 0 or absent: any. */
  readonly port?: number;
  /** That port or none. */
  readonly insist?: boolean;
  /** Told of faults that nobody expected, with the id that the caller was shown. */
  readonly onFault?: (id: string, fault: unknown) => void;
}

export interface Host {
  /** http://127.0.0.1:port */
  readonly address: string;
  /** Lets its bearer make launch links: kept in a file that only this account can read. */
  readonly key: string;
  /** A link that lets one device in, once, within ten minutes. */
  newLink(device: string): string;
  /** Windows open now. */
  windows(): number;
  /** Takes no more requests, lets those in hand finish within a second, and closes every connection. */
  close(): Promise<void>;
}

/** Starts the browser host on the loopback address. */
export async function startHost(settings: HostSettings): Promise<Host> {
  const root = resolve(settings.root);
  const key = newSecret();
  const sessions = new Sessions();
  const changes = new Changes();
  const shop = settings.shop;
  const hands = settings.hands ?? new Hands();
  const tellHands = () => changes.tellEach('hands', (session) => hands.others(session));
  const stops = [shop.onChange((rooms) => changes.tell(rooms)), hands.onMove(tellHands)];
  let port = 0;

  let inHand = 0;
  const server = createServer({ headersTimeout: 10_000, requestTimeout: 60_000 }, (request, response) => {
    inHand += 1;
    response.once('close', () => {
      inHand -= 1;
    });
    answer(request, response).catch((fault: unknown) => {
      if (fault instanceof TurnedAway) return turnAway(request, response, fault);
      const id = randomUUID();
      settings.onFault?.(id, fault);
      send(response, 500, { ok: false, error: { code: 'unknown-fault', id } });
    });
  });

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { path, query } = readTarget(request.url);
    const launch = path === '/' && request.method === 'GET' ? query.get('key') : null;
    checkSource(request, port, launch !== null);
    const session = sessions.find(cookie(request.headers.cookie, cookieName()));
    if (launch !== null) return letIn(response, launch, session);
    if (path === '/door') return openDoor(request, response);
    if (session === undefined) throw new TurnedAway(401, 'session');
    if (request.method === 'POST') return post(path, request, response, session);
    if (request.method !== 'GET') throw new TurnedAway(405, 'method');
    return get(path, response, session);
  }

  const cookieName = () => `crownwheel-${port}`;

  function letIn(response: ServerResponse, launch: string, session: Session | undefined): void {
    const token = sessions.exchange(launch);
    // A browser that is in already may open its used link again: it goes on with what it has.
    if (token === null && session === undefined) throw new TurnedAway(401, 'key');
    // A page that moves on by itself, not a redirect: after a redirect that began elsewhere a strict cookie stays home.
    response.writeHead(200, {
      ...GUARDS,
      'content-type': 'text/html; charset=utf-8',
      ...(token === null ? {} : { 'set-cookie': `${cookieName()}=${token}; HttpOnly; SameSite=Strict; Path=/` }),
    });
    response.end(
      '<!doctype html><title>Crownwheel</title><link rel="icon" href="data:,"><meta http-equiv="refresh" content="0;url=/">',
    );
  }

  /** Whoever can read this account's own files may ask for another link: a second start, the command line. */
  async function openDoor(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (!sameSecret(request.headers.authorization ?? '', `Bearer ${key}`)) throw new TurnedAway(401, 'key');
    if (request.method !== 'POST') throw new TurnedAway(405, 'method');
    const { device } = parse(doorBody, await readJson(request));
    send(response, 200, { ok: true, output: { link: newLink(device) } });
  }

  async function post(path: string, request: IncomingMessage, response: ServerResponse, session: Session) {
    const body = await readJson(request);
    if (path === '/call') {
      const { operation, input, request: id, at } = parse(callBody, body);
      const caller = { personId: session.entered?.personId ?? null, device: session.device };
      const options = { ...(id === undefined ? {} : { request: id }), ...(at === undefined ? {} : { at }) };
      return send(response, 200, await shop.call(operation, input, caller, options));
    }
    if (path === '/enter') {
      const { person, code } = parse(enterBody, body);
      const entered = await shop.enter(person, code);
      hands.take(session, null);
      if (entered.ok) session.entered = enterOutput.parse(entered.output);
      return send(response, 200, entered);
    }
    // Only the window of this machine begins a garage: its link came from this account's own files.
    if (path === '/begin' && settings.begin !== undefined && session.device === 'window') {
      const answered = await settings.begin(parse(beginBody, body));
      if (answered.ok) session.entered = null;
      return send(response, 200, answered);
    }
    if (path === '/leave') {
      parse(nothing, body);
      session.entered = null;
      hands.take(session, null);
      return send(response, 200, { ok: true, output: {} });
    }
    if (path === '/hand') {
      const { cell } = parse(handBody, body);
      if (session.entered === null) throw new TurnedAway(401, 'sign-in');
      hands.take(session, cell === null ? null : { name: session.entered.name, cell });
      return send(response, 200, { ok: true, output: {} });
    }
    throw new TurnedAway(404, 'path');
  }

  async function get(path: string, response: ServerResponse, session: Session): Promise<void> {
    if (path === '/changes') {
      changes.add(response, session, () => hands.take(session, null));
      return tellHands();
    }
    if (path === '/who') {
      const output: { person: Entered | null; practice: boolean; folder: string } = {
        person: session.entered,
        practice: shop.practice,
        folder: shop.folder,
      };
      return send(response, 200, { ok: true, output });
    }
    const paper = /^\/papers\/([^/]*)\.pdf$/.exec(path)?.[1];
    if (paperId.safeParse(paper).success && paper !== undefined) return sendPaper(response, paper, session);
    const page = findPage(root, path);
    if (page === null) throw new TurnedAway(404, 'path');
    sendPage(response, page);
  }

  async function sendPaper(response: ServerResponse, id: string, session: Session): Promise<void> {
    const caller = { personId: session.entered?.personId ?? null, device: session.device };
    const read = await shop.call('paper.read', { id }, caller);
    if (!read.ok) return send(response, read.error.code === 'not-found' ? 404 : 403, read);
    const { name, base64 } = paperOutput.parse(read.output);
    const bytes = Buffer.from(base64, 'base64');
    response.writeHead(200, {
      ...GUARDS,
      // The browser's own reader of PDFs needs styles and embedding of its own; scripts stay out.
      'content-security-policy': "frame-ancestors 'self'",
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename*=UTF-8''${encodeURIComponent(name)}`,
      'content-length': bytes.length,
    });
    response.end(bytes);
  }

  function newLink(device: string): string {
    return `http://127.0.0.1:${port}/?key=${sessions.newKey(device)}`;
  }

  await listen(server, settings.port ?? 0).catch((fault: unknown) => {
    const taken = fault instanceof Error && 'code' in fault && fault.code === 'EADDRINUSE';
    if (!taken || settings.insist) throw fault;
    return listen(server, 0);
  });
  port = (server.address() as AddressInfo).port;

  return {
    address: `http://127.0.0.1:${port}`,
    key,
    newLink,
    windows: () => changes.windows,
    async close() {
      for (const stop of stops) stop();
      changes.close();
      const closed = new Promise((done) => server.close(done));
      // What is being answered may be answered; then every connection is cut.
      const patience = setTimeout(() => server.closeAllConnections(), inHand > 0 ? 1_000 : 0);
      await closed;
      clearTimeout(patience);
    },
  };
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((listening, failed) => {
    server.once('error', failed);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', failed);
      listening();
    });
  });
}

/** The body in its shape, or 400 with the fields that do not fit. */
function parse<S extends z.ZodType>(schema: S, body: unknown): z.output<S> {
  const read = schema.safeParse(body);
  if (!read.success) throw new TurnedAway(400, read.error.issues.map((issue) => issue.path.join('.')).join(' '));
  return read.data;
}

function send(response: ServerResponse, status: number, answer: DoorAnswer): void {
  if (response.headersSent) return void response.destroy();
  const text = JSON.stringify(answer);
  response.writeHead(status, {
    ...GUARDS,
    'content-type': 'application/json',
    'content-length': Buffer.byteLength(text),
  });
  response.end(text);
}

/** Answers, a person with a page and a caller with JSON, and, where the body was not read to its end, hangs up: a flood is not drained. */
function turnAway(request: IncomingMessage, response: ServerResponse, fault: TurnedAway): void {
  if (!request.complete) {
    response.setHeader('connection', 'close');
    response.once('finish', () => setTimeout(() => request.destroy(), 200).unref());
  }
  if (!isPageVisit(request) || response.headersSent) {
    send(response, fault.status, { ok: false, error: { code: 'turned-away', why: fault.message } });
    return;
  }
  const headers = { ...GUARDS, 'content-security-policy': PLAIN_POLICY, 'content-type': 'text/html; charset=utf-8' };
  response.writeHead(fault.status, headers).end(turnedAwayPage(fault.message));
}
