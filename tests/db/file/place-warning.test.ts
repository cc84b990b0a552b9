import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { placeWarning } from '../../../db/file/place-warning.ts';
import { newFolder } from './fixture.ts';

const EXT4 = 0xef53;

describe("a shop's folder", () => {
  it.each(['.sync', '.sync_1f2e.db', '._sync_1f2e.db', '.files-sync.log'])('below %s is synced', (mark) => {
    const top = newFolder();
    writeFileSync(join(top, mark), '');
    const folder = join(top, 'garage', 'shop');
    mkdirSync(folder, { recursive: true });
    expect(placeWarning(folder, EXT4)).toEqual({ kind: 'synced', sign: join(top, mark) });
  });

  it.each(['shop (conflicted copy 2026-11-20).sqlite', 'shop.sync-conflict-20261120.sqlite'])(
    'with %s in it is synced',
    (name) => {
      const folder = newFolder();
      writeFileSync(join(folder, name), '');
      expect(placeWarning(folder, EXT4)).toEqual({ kind: 'synced', sign: join(folder, name) });
    },
  );

  it('in the folder that macOS keeps for file providers is synced', () => {
    const folder = '/Users/anna/Library/CloudStorage/Somewhere/shop';
    expect(placeWarning(folder, null)).toEqual({ kind: 'synced', sign: 'CloudStorage' });
  });

  it.each([
    [0x6969, 'nfs'],
    [0xff534d42, 'cifs'],
    [0x65735546, 'fuse'],
  ])('on a file system of type 0x%s is on a network drive', (type, sign) => {
    expect(placeWarning('/srv/shop', type)).toEqual({ kind: 'network', sign });
  });

  it('behind a share of Windows is on a network drive', () => {
    expect(placeWarning('\\\\server\\garage\\shop', null)?.kind).toBe('network');
  });

  it.each(['.rsync-filter', 'sync', '.bashrc', 'conflict list.txt', 'sync.log'])('beside %s is on its own', (name) => {
    const folder = newFolder();
    writeFileSync(join(folder, name), '');
    expect(placeWarning(folder, EXT4)).toBeNull();
  });

  it('here is on its own', () => {
    expect(placeWarning(newFolder())).toBeNull();
  });
});
