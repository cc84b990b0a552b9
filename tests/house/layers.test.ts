import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const biome = join(createRequire(import.meta.url).resolve('@biomejs/biome/package.json'), '../bin/biome');

let house: string;

beforeEach(() => {
  house = mkdtempSync(join(tmpdir(), 'crownwheel-house-'));
  for (const file of ['biome.json', '.gitignore']) copyFileSync(join(root, file), join(house, file));
});

afterEach(() => rmSync(house, { recursive: true }));

/** What our linter, with our rules, says of this text in this place. */
function lint(file: string, text: string): { good: boolean; said: string } {
  const place = join(house, file);
  mkdirSync(dirname(place), { recursive: true });
  writeFileSync(place, text);
  const ran = spawnSync(process.execPath, [biome, 'lint', '--colors=off', file], { cwd: house, encoding: 'utf8' });
  return { good: ran.status === 0, said: `${ran.stdout}${ran.stderr}` };
}

const use = (from: string) => `import { x } from '${from}';\nexport const y = x;\n`;
const later = (from: string) => `export const y = import('${from}');\n`;
const pass = (from: string) => `export { x } from '${from}';\n`;

test.each([
  ['core/money/bad.ts', 'node:fs'],
  ['core/money/bad.ts', 'fs'],
  ['core/money/bad.ts', 'kysely'],
  ['core/money/bad.ts', 'react'],
  ['core/money/bad.ts', '../../db/shop.ts'],
  ['core/money/bad.ts', '../../electron/host.ts'],
  ['core/money/bad.ts', '../../renderer/state/call.ts'],
  ['db/bad.ts', '../electron/host.ts'],
  ['db/operations/bad.ts', '../../renderer/state/call.ts'],
  ['renderer/places/bad.ts', '../../db/shop.ts'],
  ['renderer/places/bad.ts', '../../electron/host.ts'],
  ['renderer/places/bad.ts', 'node:fs'],
  ['renderer/places/bad.ts', 'better-sqlite3'],
  ['demo-shop/bad.ts', '../db/shop.ts'],
  ['demo-shop/bad.ts', 'better-sqlite3'],
])('%s may not import %s, in whatever way', (file, from) => {
  for (const text of [use(from), later(from), pass(from)]) {
    const { good, said } = lint(file, text);
    expect(said, text).toContain('noRestrictedImports');
    expect(good, text).toBe(false);
  }
});

test.each([
  ['core/money/good.ts', './money.ts'],
  ['core/money/good.ts', '../order/yes.ts'],
  ['core/contract/good.ts', 'zod'],
  ['db/good.ts', '../core/contract/index.ts'],
  ['db/good.ts', 'node:fs'],
  ['renderer/places/good.ts', '../../core/money/money.ts'],
  ['electron/good.ts', '../db/shop.ts'],
])('%s may import %s', (file, from) => {
  const { good, said } = lint(file, use(from));
  expect(said).not.toContain('noRestrictedImports');
  expect(good).toBe(true);
});

test.each([
  ['any', 'export const x = (y: any) => y;\n', 'noExplicitAny'],
  ['a non-null mark', 'export const x = (y: string | null) => y!.length;\n', 'noNonNullAssertion'],
])('%s is refused', (_name, text, rule) => {
  const { good, said } = lint('db/bad.ts', text);
  expect(said).toContain(rule);
  expect(good).toBe(false);
});
