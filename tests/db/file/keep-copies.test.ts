import { existsSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { listCopies, type ShopCopy } from '../../../db/file/backup.ts';
import { copyName } from '../../../db/file/copy-name.ts';
import { createShopFolder } from '../../../db/file/folder.ts';
import { keepCopy } from '../../../db/file/keep-copies.ts';
import { sortCopies, thinCopies } from '../../../db/file/thin-copies.ts';
import { AT, makeShopFile, newFolder, opened, ZONE } from './fixture.ts';

const HOUR = 3_600_000;

describe('a copy is kept', () => {
  function shop() {
    const paths = createShopFolder(join(newFolder(), 'shop'));
    makeShopFile(paths.database, 3);
    const raw = opened(paths.database);
    let hour = 0;
    const did = (n: number, hash: string) => raw.prepare('INSERT INTO trail VALUES (?, ?)').run(n, hash);
    const keep = (notWithin = 0) => {
      hour += 1;
      return keepCopy({ folder: paths.folder, at: AT + hour * HOUR, zone: ZONE, notWithin });
    };
    return { paths, raw, did, keep };
  }

  it('once for what was done, and not again while nothing is', async () => {
    const { paths, did, keep } = shop();
    expect(await keep()).toBeNull();
    did(1, 'a');
    expect(await keep()).toMatchObject({ name: 'shop 2026-11-20 18.42 trail 1', trail: 1 });
    expect(await keep()).toBeNull();
    did(2, 'b');
    expect((await keep())?.trail).toBe(2);
    expect(listCopies(paths.backups).map((copy) => copy.trail)).toEqual([2, 1]);
  });

  it('again where the same number stands for something else, or the copy cannot be read', async () => {
    const { raw, did, keep } = shop();
    did(1, 'a');
    const first = await keep();
    raw.exec("DELETE FROM trail; INSERT INTO trail VALUES (1, 'another')");
    const second = await keep();
    expect(second?.trail).toBe(1);
    for (const copy of [first, second]) truncateSync(copy?.path ?? '', 100);
    expect((await keep())?.trail).toBe(1);
  });

  it('not while the last one is young, where that is wished', async () => {
    const { did, keep } = shop();
    did(1, 'a');
    expect(await keepsNow(keep)).toBe(true);
    did(2, 'b');
    expect(await keep(Number.MAX_SAFE_INTEGER)).toBeNull();
    expect(await keepsNow(keep)).toBe(true);
  });

  const keepsNow = async (keep: () => Promise<ShopCopy | null>) => (await keep()) !== null;
});

describe('which copies stay', () => {
  const named = (name: string): ShopCopy => ({ path: `/b/${name}.sqlite`, name, trail: null, bytes: 1, sha256: '' });

  it('the ten newest, the last of each of 24 hours, 30 days, 26 weeks, and of every month', () => {
    // Two years of hourly copies, 8 to 17 every day, twice an hour; newest first.
    const copies: ShopCopy[] = [];
    const LAST = Date.UTC(2026, 10, 20);
    for (let back = 0; back < 730; back += 1) {
      const day = new Date(LAST - back * 24 * HOUR).toISOString().slice(0, 10);
      for (let hour = 17; hour >= 8; hour -= 1)
        for (const minute of ['50', '20']) copies.push(named(`shop ${day} ${String(hour).padStart(2, '0')}.${minute}`));
    }
    const { stay, go } = sortCopies(copies);
    expect(stay.length + go.length).toBe(copies.length);
    expect(stay.slice(0, 10)).toEqual(copies.slice(0, 10));
    const names = stay.map((copy) => copy.name);
    const lastOfDays = names.filter((name) => name.endsWith(' 17.50'));
    // 24 hours of 10 a day reach into the third day; of its ten hours the last four are among them.
    expect(names.filter((name) => name.endsWith('50'))).toHaveLength(lastOfDays.length + 9 + 9 + 3);
    expect(lastOfDays.slice(0, 30)).toEqual(
      Array.from(
        { length: 30 },
        (_, back) => `shop ${new Date(LAST - back * 24 * HOUR).toISOString().slice(0, 10)} 17.50`,
      ),
    );
    const older = lastOfDays.slice(30).map((name) => name.slice(5, 15));
    const sundays = older.filter((day) => new Date(day).getUTCDay() === 0);
    const monthEnds = older.filter((day) => new Date(Date.parse(day) + 24 * HOUR).getUTCDate() === 1);
    expect(new Set([...sundays, ...monthEnds])).toEqual(new Set(older));
    // Week 1 is the present one; the 30 days cover five of the 26.
    expect(sundays.length).toBeGreaterThanOrEqual(21);
    expect(monthEnds.length).toBeGreaterThanOrEqual(22);
    expect(older.at(-1)).toBe('2024-11-30');
  });

  it('nothing of the owner goes: only copies that this program finished and hashed', () => {
    const paths = createShopFolder(newFolder());
    for (let n = 0; n < 12; n += 1) {
      const path = join(paths.backups, `${copyName(AT + n * 60_000, ZONE)}.sqlite`);
      writeFileSync(path, 'copy');
      writeFileSync(`${path}.sha256`, `${'a'.repeat(64)}  copy\n`);
    }
    writeFileSync(join(paths.backups, 'shop 2026-11-20 10.00.sqlite'), 'put here by hand');
    const gone = thinCopies(paths.backups);
    expect(gone.map((copy) => copy.name)).toEqual(['shop 2026-11-20 16.43', 'shop 2026-11-20 16.42']);
    expect(listCopies(paths.backups)).toHaveLength(10);
    expect(existsSync(join(paths.backups, 'shop 2026-11-20 10.00.sqlite'))).toBe(true);
  });
});
