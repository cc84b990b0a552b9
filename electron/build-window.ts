import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { isStale } from './fresh-build.ts';

/** What is built, from which sources, and how. */
export interface Built {
  /** How it is called while it is being built. */
  readonly name: string;
  /** The file that is there once it is built. */
  readonly file: string;
  /** Its sources, in the tree. */
  readonly sources: readonly string[];
  /** The arguments of each run of vite. */
  readonly runs: readonly (readonly string[])[];
}

/**
 * Builds what is missing or older than its sources, in the same tree's vite, and says so while it goes on. An install
 * without sources is left as it is. Throws when it could not be built; what is wrong then stands on standard error.
 */
export async function buildIfStale(root: string, { name, file, sources, runs }: Built): Promise<void> {
  const present = sources.map((source) => join(root, source)).filter((source) => existsSync(source));
  if (present.length === 0 || !isStale(file, present)) return;
  const tell = (words: string) => process.stderr.write(words);
  const vite = join(createRequire(import.meta.url).resolve('vite/package.json'), '../bin/vite.js');
  const since = Date.now();
  tell(`Building ${name} (${existsSync(file) ? 'its sources changed' : 'it is the first time'}) `);
  const beat = setInterval(() => tell('.'), 500);
  try {
    for (const args of runs) {
      const code = await new Promise<number | null>((ended) =>
        spawn(process.execPath, [vite, 'build', '--logLevel', 'error', ...args], {
          cwd: root,
          stdio: ['ignore', 2, 2],
        }).once('close', ended),
      );
      if (code !== 0) throw new Error('The window could not be built; what is wrong stands above.');
    }
  } finally {
    clearInterval(beat);
  }
  tell(` built in ${((Date.now() - since) / 1000).toFixed(1)} s.\n`);
}
