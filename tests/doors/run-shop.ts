import { spawn } from 'node:child_process';
import { resolve } from 'node:path';

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs `npm run shop --` as a process of its own, on the shop in `folder`. */
export function runShop(
  folder: string,
  args: readonly string[],
  { code, input = '' }: { readonly code?: string; readonly input?: string } = {},
): Promise<Ran> {
  const { SHOP_CODE: _, ...env } = process.env;
  const file = resolve(import.meta.dirname, '../../electron/shop.ts');
  const child = spawn(process.execPath, [file, ...args], {
    env: { ...env, CROWNWHEEL_SHOP: folder, ...(code === undefined ? {} : { SHOP_CODE: code }) },
  });
  let [out, err] = ['', ''];
  child.stdout.on('data', (part) => (out += String(part)));
  child.stderr.on('data', (part) => (err += String(part)));
  child.stdin.on('error', () => undefined).end(input);
  return new Promise((done) => child.on('close', (exit) => done({ code: exit, out, err })));
}
