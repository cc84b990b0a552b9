import { existsSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkWritable, createShopFolder, isNewShop } from '../../../db/file/folder.ts';
import { newFolder } from './fixture.ts';

describe("a shop's folder", () => {
  it('is new only while nothing of a shop is in it', () => {
    const paths = createShopFolder(newFolder());
    expect(isNewShop(paths)).toBe(true);
    writeFileSync(paths.database, '');
    expect(isNewShop(paths)).toBe(true);
    for (const left of [
      paths.database,
      paths.note,
      `${paths.database}-wal`,
      join(paths.backups, 'shop 2026-11-20 16.42.sqlite'),
    ]) {
      writeFileSync(left, 'x');
      expect(isNewShop(paths)).toBe(false);
      rmSync(left);
    }
    expect(isNewShop(paths)).toBe(true);
  });

  it('is made with its parts, and again without harm', () => {
    const folder = join(newFolder(), 'garage', 'shop');
    createShopFolder(folder);
    const paths = createShopFolder(folder);
    for (const part of [paths.papers, paths.photos, paths.backups]) expect(existsSync(part)).toBe(true);
    checkWritable(paths);
    expect(readdirSync(folder).sort()).toEqual(['backups', 'papers', 'photos']);
  });

  it('that it makes cannot be read by other accounts', () => {
    const paths = createShopFolder(join(newFolder(), 'shop'));
    if (process.platform !== 'win32') expect(statSync(paths.folder).mode & 0o077).toBe(0);
  });
});
