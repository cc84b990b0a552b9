import { existsSync, mkdirSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { statementWords } from '../../core/paper/statement-words.ts';

/** Where the files of a run lie: beside the papers, a folder a run. Its files alone say how far the run is. */
export const runFolder = (folder: string, until: string, runId: string): string =>
  join(folder, 'papers', 'statements', `${until} ${runId.slice(-8)}`);

/** The file of the n-th statement, for the eye and for the order of the printer. */
export const ownFile = (n: number, name: string): string =>
  `${String(n).padStart(4, '0')} ${name.replace(/[^\p{L}\p{M}\p{N} ,.-]/gu, '').slice(0, 60)}`.trim().concat('.pdf');

/** The file that holds the statements from the n-th to the m-th. */
export const joinedFile = (language: 'en' | 'de', until: string, from: number, to: number): string =>
  `${String(from).padStart(4, '0')}-${String(to).padStart(4, '0')} ${statementWords(language).title} ${until}.pdf`;

/** The files of a run, in the order of what they hold. */
export const filesOf = (folder: string): readonly string[] =>
  existsSync(folder)
    ? readdirSync(folder)
        .filter((name) => /^\d{4,}(-\d{4,})? .*\.pdf$/.test(name))
        .sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10))
    : [];

/** In which file each statement of a run stands, by its number from 1. */
export function fileByNumber(files: readonly string[]): ReadonlyMap<number, string> {
  const found = new Map<number, string>();
  for (const name of files) {
    const [, from = '', to] = /^(\d+)(?:-(\d+))? /.exec(name) ?? [];
    for (let n = Number(from); n <= Number(to ?? from); n += 1) found.set(n, name);
  }
  return found;
}

/** Writes a file whole or not at all. */
export function writeWhole(folder: string, name: string, bytes: Uint8Array): void {
  mkdirSync(folder, { recursive: true });
  const part = join(folder, `${name}.part`);
  writeFileSync(part, bytes);
  renameSync(part, join(folder, name));
}
