import { createReadStream, statSync } from 'node:fs';
import type { ServerResponse } from 'node:http';
import { extname, isAbsolute, relative, resolve } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};

/** What the window may do, the same in the browser and on the desktop: its own files, its own door, nothing else. */
export const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "frame-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Headers of every answer. */
export const GUARDS: Readonly<Record<string, string>> = {
  'content-security-policy': CONTENT_POLICY,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=()',
  'cache-control': 'no-store',
};

export interface Page {
  readonly file: string;
  readonly type: string;
  /** The name carries the content's hash, so it never changes. */
  readonly lasting: boolean;
  readonly size: number;
}

/** The built file that a decoded path names, inside the root, or null. A path without an ending is the window itself. */
export function findPage(root: string, path: string): Page | null {
  const file = resolve(root, `.${extname(path) === '' ? '/index.html' : path}`);
  const inside = relative(root, file);
  if (inside.startsWith('..') || isAbsolute(inside)) return null;
  const type = TYPES[extname(file)];
  const found = statSync(file, { throwIfNoEntry: false });
  if (type === undefined || !found?.isFile()) return null;
  return { file, type, lasting: /^assets[\\/]/.test(inside), size: found.size };
}

export function sendPage(response: ServerResponse, page: Page): void {
  const caching: Record<string, string> = page.lasting
    ? { 'cache-control': 'private, max-age=31536000, immutable' }
    : {};
  response.writeHead(200, { ...GUARDS, ...caching, 'content-type': page.type, 'content-length': page.size });
  createReadStream(page.file)
    .on('error', () => response.destroy())
    .pipe(response);
}
