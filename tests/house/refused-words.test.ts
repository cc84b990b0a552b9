import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { sayNotAllowed } from '../../electron/not-allowed-words.ts';
import { errorSentence } from '../../renderer/words/error-sentence.ts';

/** The reasons that the sources give for not allowing something. */
function reasons(): string[] {
  const root = resolve(import.meta.dirname, '../..');
  const names = new Set<string>();
  for (const folder of ['db', 'electron']) {
    for (const entry of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })) {
      if (!entry.endsWith('.ts')) continue;
      const text = readFileSync(join(root, folder, entry), 'utf8');
      for (const [, name] of text.matchAll(/notAllowed\([^')]*'([^']+)'/g)) names.add(name ?? '');
      for (const [, name] of text.matchAll(/code: 'not-allowed', why: '([^']+)'/g)) names.add(name ?? '');
    }
  }
  return [...names];
}

test('whatever is not allowed says why, at the command line and in the window', () => {
  const all = reasons();
  expect(all).toEqual(expect.arrayContaining(['code', 'last-owner', 'others-clock', 'role']));
  const plain = errorSentence({ code: 'not-allowed', why: 'nothing that there is' });
  for (const why of all) {
    const sentence = sayNotAllowed(why, { needs: 'owner', person: 'Runa' });
    expect(sentence, why).toMatch(/^[A-Z][^{}]+\.$/);
    expect(sentence, why).not.toBe(sayNotAllowed('nothing that there is', {}));
    // Only the command line asks for codes by name.
    if (why !== 'no-code')
      expect(errorSentence({ code: 'not-allowed', why, with: { needs: 'owner' } }), why).not.toBe(plain);
  }
});
