import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { findTestBrowser, SHELL } from './browser.ts';

/** Outside programs that some tests ask, with Debian's package for each. Without one its tests are skipped, and say so. */
const TOOLS: readonly (readonly [tool: string, ask: string, debian: string])[] = [
  ['qpdf', '--version', 'qpdf'],
  ['pdftotext', '-v', 'poppler-utils'],
  ['strace', '-V', 'strace'],
];

const missingTools = () => TOOLS.filter(([tool, ask]) => spawnSync(tool, [ask]).error !== undefined);

const install = (name: string) =>
  spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', name], { stdio: 'ignore' });

/**
 * Gets what the tests want of the machine where that is possible by itself: on Debian, for root, a browser and the outside
 * programs are installed. Says what was installed and what is still missing.
 */
export function prepareMachine(say: (words: string) => void): void {
  const browsers = findTestBrowser()?.endsWith(SHELL) ? [] : [SHELL];
  const wanted = [...browsers, ...missingTools().map(([, , debian]) => debian)];
  if (wanted.length > 0 && existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    say(`Not here: ${wanted.join(', ')}. Installing from Debian.`);
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'ignore' });
    // One by one: a package that cannot be had must not keep the others away.
    for (const name of wanted) install(name);
    if (findTestBrowser() === null) install('chromium');
  }
  const missing = missingTools();
  if (missing.length > 0) say(`Tests that ask ${missing.map(([tool]) => tool).join(', ')} are skipped: not here.`);
}
