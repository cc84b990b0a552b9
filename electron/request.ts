import type { IncomingMessage } from 'node:http';

/** The largest body that is read, in bytes: a photo as text fits, a flood does not. */
export const BODY_LIMIT = 16 * 1024 * 1024;

/** A request that is turned away at the door, with the HTTP status that says why. */
export class TurnedAway extends Error {
  readonly status: number;
  constructor(status: number, reason: string) {
    super(reason);
    this.status = status;
  }
}

/**
 * Whether the request comes from this program's own pages: the Host is ours (no rebinding of names), the Origin is
 * ours or absent, and the browser does not say that another site caused it. `fromOutside` lets in the one navigation
 * that opens the window, which a local file starts.
 */
export function checkSource(request: IncomingMessage, port: number, fromOutside: boolean): void {
  const host = request.headers.host ?? '';
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`) throw new TurnedAway(403, 'host');
  const origin = request.headers.origin;
  if (origin !== undefined && origin !== `http://${host}`) throw new TurnedAway(403, 'origin');
  const site = request.headers['sec-fetch-site'];
  const own = site === undefined || site === 'same-origin' || site === 'none';
  const opening = fromOutside && request.headers['sec-fetch-mode'] === 'navigate';
  if (!own && !opening) throw new TurnedAway(403, 'site');
}

/** The path, percent-decoded once, and the query. Throws 400 where it cannot be decoded. */
export function readTarget(url: string | undefined): { path: string; query: URLSearchParams } {
  if (!url?.startsWith('/')) throw new TurnedAway(400, 'target');
  const mark = url.indexOf('?');
  const raw = mark < 0 ? url : url.slice(0, mark);
  let path: string;
  try {
    path = decodeURIComponent(raw);
  } catch {
    throw new TurnedAway(400, 'target');
  }
  if (path.includes('\0')) throw new TurnedAway(400, 'target');
  return { path, query: new URLSearchParams(mark < 0 ? '' : url.slice(mark + 1)) };
}

/** The body as JSON. Throws 415, 413 or 400. Counts what really arrives, whatever the length header says. */
export async function readJson(request: IncomingMessage, limit = BODY_LIMIT): Promise<unknown> {
  const type = (request.headers['content-type'] ?? '').split(';')[0]?.trim().toLowerCase();
  if (type !== 'application/json') throw new TurnedAway(415, 'type');
  if (Number(request.headers['content-length'] ?? 0) > limit) throw new TurnedAway(413, 'size');
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length;
    if (size > limit) throw new TurnedAway(413, 'size');
    parts.push(part);
  }
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts)));
  } catch {
    throw new TurnedAway(400, 'json');
  }
}
