/**
 * `npm test`: every suite, one after the other, and at the end one plain line over all of them.
 * Format, lint and types count as one check each; the tests are counted as vitest counts them.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const root = new URL('..', import.meta.url).pathname;
let passed = 0;
let failed = 0;
let skipped = 0;

/** Runs a tool of this tree by its script, with the Node that runs this file. */
function run(script: string, args: string[]): boolean {
  return (
    spawnSync(process.execPath, [join(root, 'node_modules', script), ...args], { cwd: root, stdio: 'inherit' })
      .status === 0
  );
}

function check(name: string, script: string, args: string[]): void {
  const good = run(script, args);
  console.log(`${good ? 'ok  ' : 'FAIL'} ${name}`);
  if (good) passed += 1;
  else failed += 1;
}

check('format and lint', '@biomejs/biome/bin/biome', ['check', '.']);
check('types', 'typescript/bin/tsc', ['--noEmit']);
check('the window builds', 'vite/bin/vite.js', ['build', '--logLevel', 'warn']);

const report = join(tmpdir(), `crownwheel-tests-${process.pid}.json`);
const green = run('vitest/vitest.mjs', ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`]);
try {
  const counts = JSON.parse(readFileSync(report, 'utf8')) as Record<string, number>;
  passed += counts.numPassedTests ?? 0;
  failed += counts.numFailedTests ?? 0;
  skipped += (counts.numPendingTests ?? 0) + (counts.numTodoTests ?? 0);
  // A file that does not even load has no failed test of its own.
  if (!green && counts.numFailedTests === 0) failed += 1;
} catch {
  console.log('FAIL vitest left no report');
  failed += 1;
}
rmSync(report, { force: true });

console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
process.exit(failed === 0 ? 0 : 1);
