import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { KEY_MAP, keyName, PLACE_KEYS } from '../../renderer/frame/key-map.ts';
import { PLACES } from '../../renderer/frame/router.ts';

/**
 * No key acts that the sheet under ? does not list: the one file that reads what was pressed answers with a key of the map
 * or with nothing, and the types hold what is done with its answer.
 */

const root = resolve(import.meta.dirname, '../..');
const READS = 'renderer/frame/keys.ts';
/** Reading the key itself, its code or its number, also taken apart where the event is handed in. */
const READING =
  /\b(?:event|e|pressed|nativeEvent|native)\??\.(?:key|code|keyCode|which|charCode)\b|\bgetModifierState\b|\{[^{}=]*\b(?:key|code|keyCode)\b[^{}=]*\}\s*:\s*(?:React\.)?KeyboardEvent|onKey(?:Down|Up|Press)(?:Capture)?=\{\(\{/;

const sources = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', 'renderer'], {
  cwd: root,
  encoding: 'utf8',
})
  .split('\n')
  .filter((file) => /\.tsx?$/.test(file))
  .flatMap((file) => {
    try {
      return [{ file, text: readFileSync(join(root, file), 'utf8') }];
    } catch {
      return []; // Listed and just now taken away.
    }
  });

test('what was pressed is read in one file alone', () => {
  expect(sources.filter(({ text }) => READING.test(text)).map(({ file }) => file)).toEqual([READS]);
});

test('whoever listens to keys asks that file', () => {
  const listens = sources.filter(({ text }) => /onKey(?:Down|Up|Press)|addEventListener\('key/.test(text));
  expect(listens.length).toBeGreaterThan(5);
  expect(listens.filter(({ text }) => !text.includes('comboOf(')).map(({ file }) => file)).toEqual([]);
  // A browser's own short ways around it.
  expect(sources.filter(({ text }) => /\baccessKey\b/.test(text)).map(({ file }) => file)).toEqual([]);
});

test('the reading is seen however it is written', () => {
  for (const bad of [
    "if (event.key === 'x') go();",
    'const { which } = event; event.which;',
    'const onKey = ({ key, target }: KeyboardEvent) => key;',
    'onKeyDown={({ key }) => key}',
  ])
    expect([bad, READING.test(bad)]).toEqual([bad, true]);
  expect(READING.test('rows.map((row) => row.key)')).toBe(false);
});

test('the map names each thing once, and every place has its key', () => {
  const does = KEY_MAP.flatMap(({ rows }) => rows.map((row): string => row.does));
  expect(does.length).toBe(new Set(does).size);
  expect(Object.keys(PLACE_KEYS)).toEqual([...PLACES]);
});

test('a key is told as it stands on the keyboard', () => {
  expect((['Ctrl+Enter', 'PageDown', 'ArrowUp', 'Alt+ArrowDown', 'N'] as const).map(keyName)).toEqual([
    ...['Ctrl Enter', 'Page Down', 'Up', 'Alt Down', 'N'],
  ]);
});
