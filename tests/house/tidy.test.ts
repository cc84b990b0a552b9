import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

/** No file grows past what a reader can hold. */
const MOST_LINES = 400;

const files = execFileSync('git', ['ls-files', 'core', 'db', 'electron', 'renderer', 'tests', 'demo-shop'], {
  cwd: root,
  encoding: 'utf8',
})
  .split('\n')
  .filter((file) => /\.(ts|tsx|css)$/.test(file))
  .flatMap((file) => {
    try {
      return [{ file, text: readFileSync(join(root, file), 'utf8') }];
    } catch {
      return []; // Listed and just now taken away.
    }
  })
  .map((each) => ({ ...each, lines: each.text.split('\n').length - 1 }))
  .sort((a, b) => b.lines - a.lines);

test('there are files to look at', () => {
  expect(files.length).toBeGreaterThan(50);
});

test(`no file is longer than ${MOST_LINES} lines`, () => {
  console.log(
    files
      .slice(0, 8)
      .map(({ file, lines }) => `${lines} ${file}`)
      .join('\n'),
  );
  expect(files.filter(({ lines }) => lines > MOST_LINES).map(({ file, lines }) => `${file}: ${lines}`)).toEqual([]);
});

test('files are named for what they are about', () => {
  const vague = /(utils?|helpers?|manager|service|misc|common)\b/i;
  expect(files.filter(({ file }) => vague.test(basename(file))).map(({ file }) => file)).toEqual([]);
});

test('nothing goes around the checks', () => {
  // Put together, so that this file does not find itself.
  const around = new RegExp(`@ts-${'ignore'}|@ts-${'expect-error'}|@ts-${'nocheck'}|biome-${'ignore'}`);
  expect(files.filter(({ text }) => around.test(text)).map(({ file }) => file)).toEqual([]);
});
