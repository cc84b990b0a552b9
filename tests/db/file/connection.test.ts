import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { dropBallast, layBallast } from '../../../db/file/ballast.ts';
import { checkContent, closeConnection, openConnection } from '../../../db/file/connection.ts';
import { ShopDatabase } from '../../../db/file/dialect.ts';
import { mapSqliteError, ShopDiskFull } from '../../../db/file/errors.ts';
import { checkWritable, createShopFolder } from '../../../db/file/folder.ts';
import { count, makeShopFile, newFolder, opened, type SmallTables } from './fixture.ts';

function file(lines = 300) {
  const path = join(newFolder(), 'shop.sqlite');
  makeShopFile(path, lines);
  return path;
}

/** What a function throws. */
function thrown(work: () => unknown): unknown {
  try {
    work();
  } catch (error) {
    return error;
  }
  throw new Error('nothing was thrown');
}

describe('every connection', () => {
  it.each([false, true])('has what must hold, read-only %s', (readonly) => {
    const raw = opened(file(1), { readonly });
    const pragma = (name: string) => raw.pragma(name, { simple: true });
    expect(pragma('journal_mode')).toBe('wal');
    // 2 is FULL (sqlite.org/pragma.html#pragma_synchronous); better-sqlite3 alone gives 1, NORMAL.
    expect(pragma('synchronous')).toBe(2);
    expect(pragma('foreign_keys')).toBe(1);
    expect(pragma('trusted_schema')).toBe(0);
    expect(pragma('cache_size')).toBe(-65_536);
    expect(pragma('busy_timeout')).toBe(5_000);
  });

  it('leaves one file behind when it is closed', () => {
    const path = file();
    const raw = openConnection(path);
    raw.exec("INSERT INTO trail VALUES (1, 'a')");
    expect(statSync(`${path}-wal`).size).toBeGreaterThan(0);
    closeConnection(raw);
    expect(existsSync(`${path}-wal`)).toBe(false);
    expect(count(opened(path), 'trail')).toBe(1);
  });
});

describe('a file that is not whole is named and left as it is', () => {
  const found = (path: string, what: string, detail: RegExp) => {
    const before = readFileSync(path);
    const error = thrown(() => checkContent(opened(path), 'whole'));
    expect(error).toMatchObject({ name: 'ShopDamaged', found: what });
    expect((error as Error).message).toMatch(detail);
    expect(readFileSync(path).equals(before)).toBe(true);
  };

  it('missing', () => {
    expect(thrown(() => openConnection('/nowhere/shop.sqlite'))).toMatchObject({ name: 'ShopMissing' });
  });

  it('empty', () => {
    const path = join(newFolder(), 'shop.sqlite');
    writeFileSync(path, '');
    found(path, 'empty', /0 bytes/);
  });

  it.each([['Dear customer,\n'], ['Dear customer,\n'.repeat(2_000)]])('not a database', (text) => {
    const path = join(newFolder(), 'shop.sqlite');
    writeFileSync(path, text);
    found(path, 'not-a-database', new RegExp(`${text.length} bytes`));
  });

  it('truncated', () => {
    const path = file();
    const { size } = statSync(path);
    truncateSync(path, size - 8_192);
    found(path, 'truncated', new RegExp(`${size - 8_192} bytes of ${size}`));
  });

  it('a damaged page', () => {
    const path = file();
    const raw = openConnection(path);
    const line = raw.prepare<[], { rootpage: number }>("SELECT rootpage FROM sqlite_schema WHERE name = 'line'").get();
    closeConnection(raw);
    const page = line?.rootpage ?? 0;
    const bytes = readFileSync(path);
    bytes.fill(0xff, (page - 1) * 4_096, (page - 1) * 4_096 + 64);
    writeFileSync(path, bytes);
    found(path, 'damaged-page', new RegExp(`page ${page}|malformed`));
  });

  it('an index that does not agree with its table: seen whole, not quick', () => {
    const path = file();
    const raw = opened(path);
    raw.unsafeMode(true);
    raw.pragma('writable_schema = ON');
    raw.exec("UPDATE sqlite_schema SET sql = 'CREATE INDEX line_order ON line (words)' WHERE name = 'line_order'");
    raw.close();
    const again = opened(path);
    expect(() => checkContent(again, 'quick')).not.toThrow();
    expect(thrown(() => checkContent(again, 'whole'))).toMatchObject({ found: 'damaged-page' });
  });

  it('a row that points at nothing', () => {
    const path = file();
    const raw = opened(path);
    raw.pragma('foreign_keys = OFF');
    raw.exec("INSERT INTO line VALUES (9001, 77, 'stray')");
    expect(thrown(() => checkContent(raw, 'whole'))).toMatchObject({
      found: 'broken-references',
      detail: 'line row 9001 points at a work_order that is not there (1 in all)',
    });
  });
});

describe('a shop that cannot be written', () => {
  // As root a file without write permission is writable all the same: the immutable flag is what stops root.
  const immutable = (on: boolean, paths: readonly string[]) => {
    const change = spawnSync('chattr', [on ? '+i' : '-i', ...paths]);
    return change.status === 0;
  };
  const isRoot = process.getuid?.() === 0;

  const lockDown = (on: boolean, paths: readonly string[]) =>
    isRoot ? immutable(on, paths) : spawnSync('chmod', [on ? 'a-w' : 'u+w', ...paths]).status === 0;

  it.skipIf(process.platform === 'win32')('is told at once, file and folder', (context) => {
    const paths = createShopFolder(newFolder());
    makeShopFile(paths.database, 3);
    onTestFinished(() => void lockDown(false, [paths.folder, paths.database]));
    if (!lockDown(true, [paths.database])) context.skip('chattr +i does not work on this file system');
    console.log(`read-only: tried ${isRoot ? 'as root with chattr +i' : 'with chmod a-w'}`);
    expect(thrown(() => openConnection(paths.database))).toMatchObject({ name: 'ShopReadOnly', path: paths.database });
    lockDown(true, [paths.folder]);
    expect(thrown(() => openConnection(paths.database))).toMatchObject({ name: 'ShopReadOnly', path: paths.database });
    expect(thrown(() => checkWritable(paths))).toMatchObject({ name: 'ShopReadOnly', path: paths.folder });
    lockDown(false, [paths.folder, paths.database]);
    expect(() => checkWritable(paths)).not.toThrow();
    expect(count(opened(paths.database), 'line')).toBe(3);
  });
});

describe('a full disk', () => {
  const fill = async (database: ShopDatabase<SmallTables>) => {
    let kept = 0;
    for (let n = 1; n < 3_000; n += 1) {
      try {
        await database.transaction(async (tx) => {
          await tx
            .insertInto('line')
            .values({ id: 10_000 + n, work_order_id: 1, words: 'x'.repeat(2_000) })
            .execute();
          await tx.insertInto('trail').values({ n, hash: 'h' }).execute();
        });
        kept = n;
      } catch (error) {
        return { kept, error };
      }
    }
    throw new Error('it never got full');
  };

  it('by the most pages a file may have: an error of our own, and all that was answered is there', async () => {
    const path = file(10);
    const raw = opened(path);
    raw.pragma(`max_page_count = ${Number(raw.pragma('page_count', { simple: true })) + 20}`);
    const database = new ShopDatabase<SmallTables>(raw);
    const { kept, error } = await fill(database);
    expect(error).toBeInstanceOf(ShopDiskFull);
    expect(raw.inTransaction).toBe(false);
    await database.close();
    const again = opened(path);
    checkContent(again, 'whole');
    expect(count(again, 'trail')).toBe(kept);
    expect(count(again, 'line')).toBe(10 + kept);
  });

  it('by a disk of 4 MB: the same, and letting the ballast go gives room for the next', async (context) => {
    const disk = newFolder();
    if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=4m', 'tmpfs', disk]).status !== 0) {
      context.skip('no small tmpfs can be mounted here (needs root on Linux)');
    }
    onTestFinished(() => void spawnSync('umount', [disk]));
    const paths = createShopFolder(join(disk, 'shop'));
    makeShopFile(paths.database, 10);
    layBallast(paths);
    const raw = openConnection(paths.database);
    const database = new ShopDatabase<SmallTables>(raw);
    const { kept, error } = await fill(database);
    expect(error).toBeInstanceOf(ShopDiskFull);
    expect(count(raw, 'trail')).toBe(kept);
    expect(thrown(() => layBallast({ ...paths, ballast: `${paths.ballast}2` }))).toBeInstanceOf(ShopDiskFull);
    expect(existsSync(`${paths.ballast}2`)).toBe(false);
    expect(dropBallast(paths)).toBe(true);
    expect(dropBallast(paths)).toBe(false);
    await database.transaction((tx) => tx.insertInto('trail').values({ n: 9_999, hash: 'h' }).execute());
    checkContent(raw, 'whole');
    expect(count(raw, 'trail')).toBe(kept + 1);
    expect(count(raw, 'line')).toBe(10 + kept);
    raw.close();
    console.log(`disk full: tried on a tmpfs of 4 MB, after ${kept} commands, as ${codeOfCause(error)}`);
  });

  it('maps the words of SQLite and of the system', () => {
    const coded = (code: string) => mapSqliteError(Object.assign(new Error('x'), { code }));
    for (const code of ['SQLITE_FULL', 'SQLITE_IOERR_WRITE', 'ENOSPC'])
      expect(coded(code)).toBeInstanceOf(ShopDiskFull);
    expect(coded('SQLITE_READONLY_DBMOVED')).toMatchObject({ name: 'ShopReadOnly' });
    expect(coded('EACCES')).toMatchObject({ name: 'ShopReadOnly' });
    expect(coded('SQLITE_CORRUPT_INDEX')).toMatchObject({ name: 'ShopDamaged', found: 'damaged-page' });
    expect(coded('SQLITE_BUSY')).toMatchObject({ code: 'SQLITE_BUSY' });
    expect(mapSqliteError('text')).toBe('text');
  });
});

const codeOfCause = (error: unknown) =>
  error instanceof Error ? (error.cause as { code?: string } | undefined)?.code : '';
