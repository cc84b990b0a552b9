/**
 * `npm test`: every suite, one after the other, and at the end one plain line over all of them.
 * Format and lint, types, unused code and the two builds count as one each; tests are counted by their own runners.
 */
import '../electron/node-version.ts';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { HOW_TO_GET_A_BROWSER } from '../electron/chromium.ts';
import { findTestBrowser } from './browser.ts';
import { prepareMachine } from './machine.ts';

interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

const root = resolve(import.meta.dirname, '..');
const reports = mkdtempSync(join(tmpdir(), 'crownwheel-tests-'));
const all = { passed: 0, failed: 0, skipped: 0 };

/** Runs a tool of this tree by its script, with the Node that runs this file. */
function run(script: string, args: readonly string[], env: Record<string, string> = {}): boolean {
  const file = join(root, 'node_modules', script);
  const ran = spawnSync(process.execPath, [file, ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  return ran.status === 0;
}

function note(suite: string, counts: Counts): void {
  all.passed += counts.passed;
  all.failed += counts.failed;
  all.skipped += counts.skipped;
  console.log(
    `${counts.failed === 0 ? 'ok  ' : 'FAIL'} ${suite}: ${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`,
  );
}

function check(suite: string, script: string, ...args: string[]): void {
  const good = run(script, args);
  note(suite, { passed: good ? 1 : 0, failed: good ? 0 : 1, skipped: 0 });
}

/** A runner's own counts. A runner that ends badly without a failed test (a file that does not load) has failed once. */
function counted(suite: string, good: boolean, report: string, read: (figures: never) => Counts): void {
  let counts: Counts = { passed: 0, failed: 0, skipped: 0 };
  if (existsSync(report)) counts = read(JSON.parse(readFileSync(report, 'utf8')) as never);
  const ran = counts.passed + counts.failed + counts.skipped > 0;
  note(suite, (good && ran) || counts.failed > 0 ? counts : { ...counts, failed: 1 });
}

prepareMachine((words) => console.log(words));

check('format and lint', '@biomejs/biome/bin/biome', 'check', '.');
check('types', 'typescript/bin/tsc', '--noEmit');
check('unused code', 'knip/bin/knip.js');
check('the window builds', 'vite/bin/vite.js', 'build', '--logLevel', 'warn');
const desktop = ['build', '--logLevel', 'warn', '--config', 'electron/vite.main.config.ts'];
check('the desktop side builds', 'vite/bin/vite.js', ...desktop);
check('the preload builds', 'vite/bin/vite.js', ...desktop, '--mode', 'preload');

const units = join(reports, 'vitest.json');
const unitsGood = run('vitest/vitest.mjs', [
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${units}`,
]);
counted('tests', unitsGood, units, (figures: Record<string, number>) => ({
  passed: figures.numPassedTests ?? 0,
  failed: figures.numFailedTests ?? 0,
  skipped: (figures.numPendingTests ?? 0) + (figures.numTodoTests ?? 0),
}));

if (findTestBrowser() === null) {
  console.log(HOW_TO_GET_A_BROWSER);
  note('end to end, in the browser host', { passed: 0, failed: 1, skipped: 0 });
} else {
  const ends = join(reports, 'playwright.json');
  const env = { PLAYWRIGHT_JSON_OUTPUT_NAME: ends };
  const endsGood = run('@playwright/test/cli.js', ['test', '--reporter=list,json'], env);
  counted('end to end, in the browser host', endsGood, ends, (figures: { stats: Record<string, number> }) => ({
    passed: (figures.stats.expected ?? 0) + (figures.stats.flaky ?? 0),
    failed: figures.stats.unexpected ?? 0,
    skipped: figures.stats.skipped ?? 0,
  }));
}

rmSync(reports, { recursive: true });
console.log(`${all.passed} passed, ${all.failed} failed, ${all.skipped} skipped`);
process.exit(all.failed === 0 ? 0 : 1);
