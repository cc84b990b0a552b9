import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { markClosed, takeClosedMark } from '../../../db/file/clean-mark.ts';
import { createShopFolder } from '../../../db/file/folder.ts';
import { makeShopFile, newFolder } from './fixture.ts';

function closedShop() {
  const paths = createShopFolder(join(newFolder(), 'shop'));
  makeShopFile(paths.database, 3);
  markClosed(paths);
  return paths;
}

describe('a shop that was closed in order', () => {
  it('is known again, once', () => {
    const paths = closedShop();
    expect(takeClosedMark(paths)).toBe(true);
    expect(takeClosedMark(paths)).toBe(false);
  });

  it('is not the same after a byte of it was written, though its size is', () => {
    const paths = closedShop();
    const bytes = readFileSync(paths.database);
    bytes[5_000] = (bytes[5_000] ?? 0) ^ 1;
    writeFileSync(paths.database, bytes);
    expect(takeClosedMark(paths)).toBe(false);
  });

  it('is not the same with a log beside it, with another file in its place, or gone', () => {
    const withLog = closedShop();
    writeFileSync(`${withLog.database}-wal`, 'x');
    expect(takeClosedMark(withLog)).toBe(false);
    const replaced = closedShop();
    const bytes = readFileSync(replaced.database);
    rmSync(replaced.database);
    writeFileSync(replaced.database, bytes);
    expect(takeClosedMark(replaced)).toBe(false);
    const gone = closedShop();
    rmSync(gone.database);
    expect(takeClosedMark(gone)).toBe(false);
  });

  it('is not marked while it is open', () => {
    const paths = closedShop();
    rmSync(join(paths.folder, 'closed-whole.json'));
    writeFileSync(`${paths.database}-wal`, 'x');
    markClosed(paths);
    expect(takeClosedMark(paths)).toBe(false);
  });
});
