import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkWritable, createShopFolder, isNewShop, placeWarning } from '../../../db/file/folder.ts';
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

  it.each([
    ['/home/anna/Dropbox/shop', 'Dropbox'],
    ['/Users/anna/Library/Mobile Documents/com~apple~CloudDocs/shop', 'Mobile Documents'],
    ['/Users/anna/Library/CloudStorage/OneDrive-Garage/shop', 'CloudStorage'],
    ['/mnt/c/Users/anna/OneDrive - Garage/shop', 'OneDrive - Garage'],
    ['/home/anna/Nextcloud/shop', 'Nextcloud'],
  ])('in a synced folder is warned of: %s', (folder, sign) => {
    expect(placeWarning(folder, null)).toEqual({ kind: 'synced', sign });
  });

  it('in a synced folder of any name is known by what the service leaves there', () => {
    const top = newFolder();
    mkdirSync(join(top, '.stfolder'));
    expect(placeWarning(join(top, 'a', 'shop'))).toEqual({ kind: 'synced', sign: join(top, '.stfolder') });
  });

  it('on a network drive is warned of', () => {
    expect(placeWarning('/srv/shop', 0x6969)).toEqual({ kind: 'network', sign: 'nfs' });
    expect(placeWarning('/srv/shop', 0xff534d42)).toEqual({ kind: 'network', sign: 'cifs' });
    expect(placeWarning('\\\\server\\garage\\shop', null)?.kind).toBe('network');
  });

  it.each(['/home/anna/shop', '/home/dropboxer/shop', '/srv/onedriveway/shop', '/home/anna/synced parts/shop'])(
    'elsewhere is not: %s',
    (folder) => {
      expect(placeWarning(folder, 0xef53)).toBeNull();
    },
  );

  it('here is not', () => {
    expect(placeWarning(newFolder())).toBeNull();
  });
});
