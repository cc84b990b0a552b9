import { execFileSync } from 'node:child_process';
import { appendFileSync, existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { copyShop, copyUnchanged, listCopies } from '../../../db/file/backup.ts';
import { checkContent, openConnection } from '../../../db/file/connection.ts';
import { copyName } from '../../../db/file/copy-name.ts';
import { ShopDatabase } from '../../../db/file/dialect.ts';
import { createShopFolder } from '../../../db/file/folder.ts';
import { migrate, schemaVersion } from '../../../db/file/migrate.ts';
import type { CopyProgress } from '../../../db/file/run-copy.ts';
import { AT, count, makeShopFile, migrations, newFolder, opened, type SmallTables, ZONE } from './fixture.ts';

function shop(lines = 300) {
  const paths = createShopFolder(join(newFolder(), 'shop'));
  makeShopFile(paths.database, lines);
  return paths;
}

describe('a copy', () => {
  it("is named by the shop's own clock", () => {
    expect(copyName(AT, ZONE)).toBe('shop 2026-11-20 16.42');
    expect(copyName(AT, ZONE, 1204)).toBe('shop 2026-11-20 16.42 trail 1204');
    expect(copyName(Date.UTC(2026, 0, 1, 4, 5), 'America/New_York')).toBe('shop 2025-12-31 23.05');
    expect(copyName(Date.UTC(2026, 5, 1, 22, 0), ZONE)).toBe('shop 2026-06-02 00.00');
  });

  it('is whole, is one file, and carries its hash as sha256sum writes it', async () => {
    const paths = shop();
    const live = opened(paths.database);
    live.exec("INSERT INTO trail VALUES (1, 'still in the log')");
    const copy = await copyShop({ from: paths.folder, to: paths.backups, at: AT, zone: ZONE });
    expect(readdirSync(paths.backups).sort()).toEqual([
      'shop 2026-11-20 16.42 trail 1.sqlite',
      'shop 2026-11-20 16.42 trail 1.sqlite.sha256',
    ]);
    expect(copy.bytes).toBe(statSync(copy.path).size);
    const sum = execFileSync('sha256sum', ['-c', `${copy.path}.sha256`], { cwd: paths.backups, encoding: 'utf8' });
    expect(sum).toContain('OK');
    expect(listCopies(paths.backups)).toEqual([copy]);
    const read = opened(copy.path, { readonly: true });
    checkContent(read, 'whole');
    expect(count(read, 'trail')).toBe(1);
    expect(count(read, 'line')).toBe(300);
    expect(existsSync(`${copy.path}-wal`)).toBe(false);
  });

  it('of the same minute gets a number, and none is written over', async () => {
    const paths = shop(3);
    const options = { from: paths.folder, to: paths.backups, at: AT, zone: ZONE };
    for (let n = 0; n < 3; n += 1) await copyShop(options);
    expect(listCopies(paths.backups).map((copy) => copy.name)).toEqual([
      'shop 2026-11-20 16.42 (3)',
      'shop 2026-11-20 16.42 (2)',
      'shop 2026-11-20 16.42',
    ]);
  });

  it('is seen when a byte of it changes later', async () => {
    const paths = shop(3);
    const copy = await copyShop({ from: paths.folder, to: paths.backups, at: AT, zone: ZONE });
    expect(copyUnchanged(copy.path)).toBe(true);
    appendFileSync(copy.path, 'x');
    expect(copyUnchanged(copy.path)).toBe(false);
  });

  it('with papers and photos is a whole shop folder', async () => {
    const paths = shop(3);
    writeFileSync(join(paths.papers, 'invoice 1001.pdf'), 'paper');
    writeFileSync(join(paths.photos, 'ab12.jpg'), 'photo');
    const to = join(newFolder(), 'stick');
    const copy = await copyShop({ from: paths.folder, to, at: AT, zone: ZONE, withFiles: true });
    expect(copy.path).toBe(join(to, 'shop 2026-11-20 16.42', 'shop.sqlite'));
    expect(readdirSync(to)).toEqual(['shop 2026-11-20 16.42']);
    expect(readFileSync(join(to, copy.name, 'papers', 'invoice 1001.pdf'), 'utf8')).toBe('paper');
    expect(readFileSync(join(to, copy.name, 'photos', 'ab12.jpg'), 'utf8')).toBe('photo');
    expect(listCopies(to)).toEqual([copy]);
  });

  it('of a damaged shop fails, names it and leaves nothing', async () => {
    const paths = shop();
    const bytes = readFileSync(paths.database);
    bytes.fill(0xff, bytes.length - 8_192, bytes.length - 8_000);
    writeFileSync(paths.database, bytes);
    const failing = copyShop({ from: paths.folder, to: paths.backups, at: AT, zone: ZONE });
    await expect(failing).rejects.toMatchObject({ name: 'ShopDamaged', found: 'damaged-page' });
    expect(readdirSync(paths.backups)).toEqual([]);
    expect(readFileSync(paths.database).equals(bytes)).toBe(true);
  });

  it('of nothing says so', async () => {
    const paths = createShopFolder(newFolder());
    const failing = copyShop({ from: paths.folder, to: paths.backups, at: AT, zone: ZONE });
    await expect(failing).rejects.toMatchObject({ name: 'ShopMissing' });
  });

  it('tells how far it is, and leaves nothing when it is stopped', async () => {
    const paths = shop(20_000);
    const phases: CopyProgress['phase'][] = [];
    const options = { from: paths.folder, to: paths.backups, at: AT, zone: ZONE };
    await copyShop({ ...options, onProgress: ({ phase }) => phases.push(phase) });
    expect([...new Set(phases)].slice(-2)).toEqual(['check', 'hash']);
    const stop = new AbortController();
    const stopped = copyShop({ ...options, signal: stop.signal, onProgress: () => stop.abort() });
    await expect(stopped).rejects.toMatchObject({ name: 'AbortError' });
    expect(readdirSync(paths.backups)).toHaveLength(2);
    await expect(copyShop({ ...options, signal: stop.signal })).rejects.toMatchObject({ name: 'AbortError' });
  });

  it('is whole though 50 commands are written meanwhile, and none of them waits for it', async () => {
    const paths = shop(20_000);
    const raw = openConnection(paths.database);
    const database = new ShopDatabase<SmallTables>(raw);
    let done = false;
    const copying = copyShop({ from: paths.folder, to: paths.backups, at: AT, zone: ZONE }).finally(() => {
      done = true;
    });
    let during = 0;
    for (let n = 1; n <= 50; n += 1) {
      await database.transaction(async (tx) => {
        await tx
          .insertInto('line')
          .values({ id: 100_000 + n, work_order_id: 1, words: 'oil' })
          .execute();
        await tx
          .insertInto('trail')
          .values({ n, hash: `h${n}` })
          .execute();
      });
      if (!done) during += 1;
      await new Promise((resolve) => setTimeout(resolve, 2));
    }
    const copy = await copying;
    const read = opened(copy.path, { readonly: true });
    checkContent(read, 'whole');
    // One moment of the shop: of each command both rows or neither.
    expect(count(read, 'line') - 20_000).toBe(count(read, 'trail'));
    expect(count(raw, 'trail')).toBe(50);
    expect(during).toBeGreaterThan(0);
    console.log(`copy beside a writer: ${during} of 50 commands while it ran, ${count(read, 'trail')} of them in it`);
    await database.close();
  });

  it('is made and checked before a shop with data is migrated', async () => {
    const paths = shop(30);
    const raw = opened(paths.database);
    const copyFirst = () => copyShop({ from: paths.folder, to: paths.backups, at: AT, zone: ZONE, depth: 'whole' });
    await migrate(raw, migrations, { at: AT, copyFirst });
    expect(schemaVersion(raw)).toBe(2);
    const [copy] = listCopies(paths.backups);
    expect(schemaVersion(opened(copy?.path ?? '', { readonly: true }))).toBe(1);
  });
});
