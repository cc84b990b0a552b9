import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PROBLEMS, type Problem } from '../../core/contract/problems.ts';
import { sayProblem } from '../../electron/problem-words.ts';
import { problemSentence } from '../../renderer/words/error-sentence.ts';
import { tMaybe } from '../../renderer/words/t.ts';

const problems = Object.keys(PROBLEMS) as Problem[];
const figures = (problem: Problem) => Object.fromEntries(PROBLEMS[problem].map((name) => [name, `‹${name}›`]));

describe.each(problems)('%s', (problem) => {
  test('has its sentence in the window, and no figure is asked for that does not come', () => {
    expect(tMaybe(`errors.problem-${problem}`)).not.toBeNull();
    expect(problemSentence(problem, figures(problem))).not.toMatch(/[{}]/);
  });

  test('has its sentence at the command line', () => {
    expect(sayProblem(problem, figures(problem))).not.toMatch(/[{}]/);
    expect(sayProblem(problem)).not.toBe(problem === 'needed' ? '' : problem);
  });
});

/** The names that the sources give to what does not fit: in operations, and in checks of the contract. */
function namesInSources(): Set<string> {
  const root = resolve(import.meta.dirname, '../..');
  const names = new Set<string>();
  for (const folder of ['core/contract', 'db', 'electron']) {
    for (const entry of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })) {
      if (!entry.endsWith('.ts')) continue;
      const text = readFileSync(join(root, folder, entry), 'utf8');
      for (const [, name] of text.matchAll(/badInput\(\s*[^,]+,\s*'([^']+)'/g)) names.add(name ?? '');
      for (const [, name] of text.matchAll(/(?:problem: |error: )'([a-z-]+)'/g)) names.add(name ?? '');
    }
  }
  return names;
}

test('every name that is given is one of them', () => {
  const names = namesInSources();
  expect(names.size).toBeGreaterThan(20);
  expect([...names].filter((name) => !problems.includes(name as Problem))).toEqual([]);
});
