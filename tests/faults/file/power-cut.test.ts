import { spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { checkContent, openConnection } from '../../../db/file/connection.ts';
import { createShopFolder, type ShopPaths } from '../../../db/file/folder.ts';
import { compareNote, NoteFile, type NoteFinding, readNote, type TrailNote } from '../../../db/file/note.ts';

const SCHEMA = `CREATE TABLE line (id INTEGER PRIMARY KEY, words TEXT NOT NULL) STRICT;
  CREATE TABLE trail (n INTEGER PRIMARY KEY, hash TEXT NOT NULL) STRICT`;

function newShop(): ShopPaths {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-power-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return createShopFolder(folder);
}

/** Opens as a start does: whole, each command there with both its rows or not at all, and the note compared. */
function start(paths: ShopPaths): { readonly trail: number; readonly note: NoteFinding } {
  const raw = openConnection(paths.database);
  try {
    checkContent(raw, 'whole');
    const trail = raw.prepare<[], TrailNote>('SELECT n, hash FROM trail ORDER BY n').all();
    const lines = raw.prepare<[], { n: number }>('SELECT count(*) AS n FROM line').get()?.n;
    expect(lines).toBe(trail.length);
    const hashAt = (n: number) => trail.find((row) => row.n === n)?.hash ?? null;
    return { trail: trail.length, note: compareNote(readNote(paths), trail.at(-1) ?? null, hashAt) };
  } finally {
    raw.close();
  }
}

describe('the power goes', () => {
  // The log's layout as in "WAL-mode File Format", sqlite.org/walformat.html: a head of 32 bytes, frames of 24 + a page.
  const HEAD = 32;
  const FRAME = 24 + 4_096;
  const COMMANDS = 12;

  /** A shop whose commands are all in the log, with the log's length after each of them. */
  function shopInLog() {
    const paths = newShop();
    const raw = openConnection(paths.database, { create: true });
    raw.exec(SCHEMA);
    raw.pragma('wal_checkpoint(TRUNCATE)');
    const note = new NoteFile(paths);
    const frames: number[] = [0];
    for (let n = 1; n <= COMMANDS; n += 1) {
      raw.transaction(() => {
        raw.prepare('INSERT INTO line (words) VALUES (?)').run('gear oil '.repeat(400));
        raw.prepare('INSERT INTO trail VALUES (?, ?)').run(n, `hash ${n}`);
      })();
      note.write({ n, hash: `hash ${n}` });
      frames.push((readFileSync(`${paths.database}-wal`).length - HEAD) / FRAME);
    }
    note.close();
    // What is on the disk at this moment, as it would be found after the cut.
    const found = newShop();
    for (const [from, to] of [
      [paths.database, found.database],
      [`${paths.database}-wal`, `${found.database}-wal`],
      [paths.note, found.note],
    ] as const) {
      copyFileSync(from, to);
    }
    raw.close();
    return { found, frames };
  }

  it('and the log ends at any frame: whole commands up to there, and the note says how many are lost', () => {
    const { found, frames } = shopInLog();
    const log = readFileSync(`${found.database}-wal`);
    const file = readFileSync(found.database);
    const total = frames.at(-1) ?? 0;
    expect(total).toBeGreaterThan(COMMANDS);
    for (let kept = total; kept >= 0; kept -= 1) {
      writeFileSync(found.database, file);
      rmSync(`${found.database}-shm`, { force: true });
      writeFileSync(`${found.database}-wal`, log);
      truncateSync(`${found.database}-wal`, HEAD + kept * FRAME);
      const whole = frames.findLastIndex((each) => each <= kept);
      const { trail, note } = start(found);
      expect(trail).toBe(whole);
      if (whole === COMMANDS) expect(note).toEqual({ found: 'agrees' });
      else expect(note).toMatchObject({ found: 'note-ahead', lost: COMMANDS - whole });
    }
  });

  it('and the log is gone altogether: SQLite opens without a word, the note does not', () => {
    const { found } = shopInLog();
    rmSync(`${found.database}-wal`);
    expect(start(found)).toMatchObject({ trail: 0, note: { found: 'note-ahead', lost: COMMANDS } });
  });

  it('and the note is behind: normal', () => {
    const { found } = shopInLog();
    const note = new NoteFile(found);
    note.write({ n: 9, hash: 'hash 9' });
    note.close();
    expect(start(found)).toEqual({ trail: COMMANDS, note: { found: 'note-behind', by: 3 } });
  });
});

describe('the process is killed', () => {
  const connection = new URL('../../../db/file/connection.ts', import.meta.url).href;

  it.each([1, 40, 90])('after %i answers: what was answered is there', async (answers) => {
    const paths = newShop();
    // The answer is written with a blocking call after the commit, so none is told before it is durable.
    const script = `const { openConnection } = await import(${JSON.stringify(connection)});
      const { writeSync } = await import('node:fs');
      const raw = openConnection(${JSON.stringify(paths.database)}, { create: true });
      raw.exec(${JSON.stringify(SCHEMA)});
      for (let n = 1; ; n += 1) {
        raw.transaction(() => {
          raw.prepare('INSERT INTO line (words) VALUES (?)').run('gear oil');
          raw.prepare('INSERT INTO trail VALUES (?, ?)').run(n, 'hash ' + n);
        })();
        writeSync(1, n + '\\n');
      }`;
    const child = spawn(process.execPath, ['--input-type=module', '-e', script], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    onTestFinished(() => void child.kill('SIGKILL'));
    let told = '';
    const gone = new Promise((resolve) => child.once('exit', resolve));
    child.stdout.on('data', (text: Buffer) => {
      told += text.toString();
      if (told.split('\n').length > answers) child.kill('SIGKILL');
    });
    await gone;
    const last = Number(told.trimEnd().split('\n').at(-1));
    expect(last).toBeGreaterThanOrEqual(answers);
    expect(existsSync(`${paths.database}-wal`)).toBe(true);
    // One more may have been written than was told.
    expect(start(paths).trail - last).toBeGreaterThanOrEqual(0);
  });
});
