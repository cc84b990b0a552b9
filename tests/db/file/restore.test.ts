import { appendFileSync, existsSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { copyShop } from '../../../db/file/backup.ts';
import { checkContent, openConnection } from '../../../db/file/connection.ts';
import { createShopFolder } from '../../../db/file/folder.ts';
import { holdShop } from '../../../db/file/lock.ts';
import { NoteFile, readNote } from '../../../db/file/note.ts';
import { restoreShop } from '../../../db/file/restore.ts';
import { AT, count, makeShopFile, newFolder, opened, ZONE } from './fixture.ts';

/** A shop of which a copy was made with 3 lines and an empty trail; one trail row has come since. */
async function shopWithCopy(withFiles = false) {
  const paths = createShopFolder(join(newFolder(), 'shop'));
  makeShopFile(paths.database, 3);
  writeFileSync(join(paths.papers, 'invoice 1001.pdf'), 'as issued');
  const copy = await copyShop({ from: paths.folder, to: paths.backups, at: AT, zone: ZONE, withFiles });
  const raw = openConnection(paths.database);
  raw.exec("INSERT INTO trail VALUES (1, 'since the copy')");
  raw.close();
  const lock = holdShop(paths.folder, { at: AT });
  onTestFinished(() => lock.release());
  const options = { lock, copy: copy.path, knownVersion: 2, at: AT + 3_600_000, zone: ZONE };
  return { paths, copy, options };
}

/** Leaves the shop as a power cut does: the last command only in the log. */
function leaveLog(database: string): void {
  const raw = openConnection(database);
  raw.exec("INSERT INTO trail VALUES (2, 'only in the log')");
  const [file, log] = [readFileSync(database), readFileSync(`${database}-wal`)];
  raw.close();
  writeFileSync(database, file);
  writeFileSync(`${database}-wal`, log);
}

describe('restoring', () => {
  it('puts the copy in the place and the former file aside, whole', async () => {
    const { paths, options } = await shopWithCopy();
    const note = new NoteFile(paths);
    note.write({ n: 1, hash: 'since the copy' });
    note.close();
    const restored = await restoreShop(options);
    expect(restored.aside).toBe(join(paths.folder, 'shop put aside 2026-11-20 17.42.sqlite'));
    expect(count(opened(paths.database), 'trail')).toBe(0);
    expect(count(opened(restored.aside ?? ''), 'trail')).toBe(1);
    // The note went along with the file that it was written for.
    expect(readNote(paths)).toBeNull();
    expect(existsSync(`${restored.aside}.note.json`)).toBe(true);
  });

  it('is not turned back by a log that was left behind, and the log is not lost', async () => {
    const { paths, options } = await shopWithCopy();
    leaveLog(paths.database);
    const { aside } = await restoreShop(options);
    const raw = opened(paths.database);
    checkContent(raw, 'whole');
    expect(count(raw, 'trail')).toBe(0);
    expect(count(opened(aside ?? ''), 'trail')).toBe(2);
  });

  it('over a damaged file keeps it with its log, byte for byte', async () => {
    const { paths, options } = await shopWithCopy();
    leaveLog(paths.database);
    const log = readFileSync(`${paths.database}-wal`);
    writeFileSync(paths.database, 'not a database at all '.repeat(400));
    const { aside } = await restoreShop(options);
    expect(readFileSync(aside ?? '', 'utf8')).toContain('not a database at all');
    expect(readFileSync(`${aside}-wal`).equals(log)).toBe(true);
    const raw = opened(paths.database);
    expect(count(raw, 'trail')).toBe(0);
    expect(count(raw, 'line')).toBe(3);
  });

  it('works where the file is gone and only its log is left', async () => {
    const { paths, options } = await shopWithCopy();
    leaveLog(paths.database);
    rmSync(paths.database);
    expect((await restoreShop(options)).aside).toBeNull();
    expect(count(opened(paths.database), 'trail')).toBe(0);
    expect(readdirSync(paths.folder).some((name) => name.startsWith('shop.sqlite-wal 2026-11-20'))).toBe(true);
  });

  it('brings papers back from a folder copy and writes over none', async () => {
    const { paths, copy, options } = await shopWithCopy(true);
    rmSync(join(paths.papers, 'invoice 1001.pdf'));
    const folder = join(paths.backups, copy.name);
    expect((await restoreShop({ ...options, copy: folder })).files).toBe(1);
    expect(readFileSync(join(paths.papers, 'invoice 1001.pdf'), 'utf8')).toBe('as issued');
    writeFileSync(join(paths.papers, 'invoice 1001.pdf'), 'present');
    expect((await restoreShop({ ...options, copy: folder })).files).toBe(0);
    expect(readFileSync(join(paths.papers, 'invoice 1001.pdf'), 'utf8')).toBe('present');
  });

  describe('refuses, and the shop is as it was', () => {
    const unchanged = async (shop: Awaited<ReturnType<typeof shopWithCopy>>, work: Promise<unknown>, error: object) => {
      const before = readdirSync(shop.paths.folder).filter((name) => !/-(wal|shm)$/.test(name));
      await expect(work).rejects.toMatchObject(error);
      expect(readdirSync(shop.paths.folder).filter((name) => !/-(wal|shm)$/.test(name))).toEqual(before);
      expect(count(opened(shop.paths.database), 'trail')).toBe(1);
    };

    it('a copy that is not what it was', async () => {
      const shop = await shopWithCopy();
      appendFileSync(shop.copy.path, 'x');
      await unchanged(shop, restoreShop(shop.options), { name: 'ShopDamaged', found: 'changed' });
    });

    it('a damaged copy without a hash', async () => {
      const shop = await shopWithCopy();
      rmSync(`${shop.copy.path}.sha256`);
      truncateSync(shop.copy.path, 8_192);
      await unchanged(shop, restoreShop(shop.options), { name: 'ShopDamaged' });
    });

    it('a copy of a later program', async () => {
      const shop = await shopWithCopy();
      await unchanged(shop, restoreShop({ ...shop.options, knownVersion: 0 }), { name: 'ShopNewer', version: 1 });
    });

    it('a copy that is not there', async () => {
      const shop = await shopWithCopy();
      await unchanged(shop, restoreShop({ ...shop.options, copy: '/nowhere' }), { name: 'ShopMissing' });
    });

    it('a database of something else', async () => {
      const shop = await shopWithCopy();
      const other = join(newFolder(), 'other.sqlite');
      opened(other, { create: true }).exec('CREATE TABLE recipe (id INTEGER)');
      await unchanged(shop, restoreShop({ ...shop.options, copy: other }), { found: 'not-a-shop' });
    });

    it('while something has the database open', async () => {
      const shop = await shopWithCopy();
      opened(shop.paths.database);
      await unchanged(shop, restoreShop(shop.options), { name: 'ShopStillOpen' });
    });
  });
});
