import { statSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createShopFolder } from '../../../db/file/folder.ts';
import { compareNote, NoteFile, readNote } from '../../../db/file/note.ts';
import { newFolder } from './fixture.ts';

const hash = (n: number) => String(n % 10).repeat(64);
const trail = (last: number) => (n: number) => (n >= 1 && n <= last ? hash(n) : null);
const row = (n: number) => ({ n, hash: hash(n) });

describe("the trail's note outside", () => {
  it('keeps the last that was written, in a place of fixed length', () => {
    const paths = createShopFolder(newFolder());
    expect(readNote(paths)).toBeNull();
    const note = new NoteFile(paths);
    note.write(row(1_000_000));
    note.write(row(7));
    note.close();
    expect(readNote(paths)).toEqual(row(7));
    expect(statSync(paths.note).size).toBe(128);
    const again = new NoteFile(paths);
    again.write(row(8));
    again.close();
    expect(readNote(paths)).toEqual(row(8));
  });

  it.each(['', '{"n":1', '{"n":"1","hash":"a"}', '[]', 'null'])('is no note when it reads %j', (text) => {
    const paths = createShopFolder(newFolder());
    writeFileSync(paths.note, text);
    expect(readNote(paths)).toBeNull();
  });

  it.each([
    ['no note', null, 5, { found: 'no-note' }],
    ['the same', row(5), 5, { found: 'agrees' }],
    ['behind: normal', row(3), 5, { found: 'note-behind', by: 2 }],
    ['ahead: commits are lost', row(8), 5, { found: 'note-ahead', lost: 3, note: row(8) }],
    ['ahead of an empty trail', row(2), 0, { found: 'note-ahead', lost: 2, note: row(2) }],
    ['another hash', { n: 3, hash: 'x' }, 5, { found: 'differs', note: { n: 3, hash: 'x' }, hash: hash(3) }],
  ])('compared with the trail: %s', (_what, note, last, finding) => {
    expect(compareNote(note, last === 0 ? null : row(last), trail(last))).toEqual(finding);
  });
});
