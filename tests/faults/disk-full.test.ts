import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, mkdtempSync, openSync, readdirSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import { expect, onTestFinished, test } from 'vitest';
import { type ShopPaths, shopPaths } from '../../db/file/folder.ts';
import { openShop, type Shop } from '../../db/shop.ts';
import { practiceShop } from '../db/practice-shop.ts';

/** A shop on a disk of its own of 40 MB, or null where none can be mounted. */
async function shopOnSmallDisk(): Promise<{ shop: Shop; owner: string; paths: ShopPaths; disk: string } | null> {
  const disk = mkdtempSync(join(tmpdir(), 'crownwheel-disk-'));
  onTestFinished(() => rmSync(disk, { recursive: true, force: true }));
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=40m', 'tmpfs', disk]).status !== 0) return null;
  onTestFinished(() => void spawnSync('umount', [disk]));
  const garage = await practiceShop();
  await garage.shop.close();
  const paths = shopPaths(join(disk, 'shop'));
  spawnSync('cp', ['-a', garage.folder, paths.folder]);
  rmSync(garage.folder, { recursive: true });
  const shop = await openShop({ folder: paths.folder });
  onTestFinished(() => shop.close());
  return { shop, owner: garage.people.get('Odile') ?? '', paths, disk };
}

/** Writes until nothing more fits; what was there stays free of it when the filler is removed. */
function fillUp(file: string): void {
  const handle = openSync(file, 'w');
  try {
    for (let size = 1_048_576; size >= 4_096; ) {
      try {
        if (writeSync(handle, Buffer.alloc(size)) < size) size /= 2;
      } catch {
        size /= 2;
      }
    }
  } finally {
    closeSync(handle);
  }
}

test('on a full disk a change is refused as such, reading goes on, and with room again so does writing', async (context) => {
  const small = await shopOnSmallDisk();
  if (small === null) {
    console.log('disk full: no small tmpfs here; tried by max_page_count only, in tests/db/file/connection.test.ts');
    return context.skip('no small tmpfs can be mounted here (needs root on Linux)');
  }
  const { shop, owner, paths, disk } = small;
  console.log('disk full: tried with a whole shop on a tmpfs');
  const caller = { personId: owner, device: 'test' };
  const add = (n: number) =>
    shop.call('customer.add', { name: `Customer ${n} ${'of a long name '.repeat(5)}` }, caller);
  expect(await add(0)).toMatchObject({ ok: true });
  expect(existsSync(paths.ballast)).toBe(true);

  fillUp(join(disk, 'filler'));
  let kept = 1;
  let answer = await add(kept);
  for (; answer.ok && kept < 5_000; answer = await add(kept)) kept += 1;
  expect(answer).toEqual({ ok: false, error: { code: 'disk-full' } });
  expect(existsSync(paths.ballast)).toBe(false);

  const listed = await shop.call('today.get', {}, caller);
  expect(listed.ok).toBe(true);
  // What the ballast took is room for the next change, for an invoice that has to go out.
  expect(await add(kept)).toMatchObject({ ok: true });
  kept += 1;

  rmSync(join(disk, 'filler'));
  expect(await add(kept)).toMatchObject({ ok: true });
  shop.settle();
  expect(existsSync(paths.ballast)).toBe(true);
  expect(await shop.call('care.verify', {}, caller)).toMatchObject({ ok: true, output: { sound: true } });
});

test('a shop on a full disk opens by letting its ballast go, and says so', async (context) => {
  const small = await shopOnSmallDisk();
  if (small === null) return context.skip('no small tmpfs can be mounted here (needs root on Linux)');
  await small.shop.close();
  fillUp(join(small.disk, 'filler'));
  const shop = await openShop({ folder: small.paths.folder });
  onTestFinished(() => shop.close());
  expect(shop.warnings).toEqual([{ what: 'no-ballast', with: {} }]);
  expect(await shop.call('today.get', {}, { personId: small.owner, device: 'test' })).toMatchObject({ ok: true });
  await shop.close();
  // Without ballast there is nothing to let go of: then the start says why.
  fillUp(join(small.disk, 'more'));
  await expect(openShop({ folder: small.paths.folder })).rejects.toMatchObject({ code: 'disk-full' });
});

test('a photo that does not fit is refused whole: no row, and no piece of a file', async (context) => {
  const small = await shopOnSmallDisk();
  if (small === null) return context.skip('no small tmpfs can be mounted here (needs root on Linux)');
  const { shop, owner, paths, disk } = small;
  const caller = { personId: owner, device: 'test' };
  const booked = await shop.call(
    'order.book',
    {
      customer: { add: { name: 'Ilse' } },
      car: { add: { words: 'Van', unit: 'km' } },
      complaint: 'Leaks.',
      here: true,
    },
    caller,
  );
  if (!booked.ok) throw new Error(JSON.stringify(booked.error));
  const { id: orderId } = booked.output as { id: string };
  const picture = createCanvas(40, 30).toBuffer('image/jpeg', 80);
  const base64 = Buffer.concat([picture, Buffer.alloc(7_500_000, 7)]).toString('base64');
  const keep = () => shop.call('photo.keep', { orderId, of: { what: 'order', id: orderId }, base64 }, caller);

  fillUp(join(disk, 'filler'));
  expect(await keep()).toEqual({ ok: false, error: { code: 'disk-full' } });
  expect(readdirSync(paths.photos)).toEqual([]);
  expect(await shop.call('photo.list', { orderId }, caller)).toMatchObject({ ok: true, output: { rows: [] } });

  rmSync(join(disk, 'filler'));
  expect(await keep()).toMatchObject({ ok: true, output: { again: false } });
  expect(readdirSync(paths.photos)).toHaveLength(1);
  expect(await shop.call('care.verify', {}, caller)).toMatchObject({ ok: true, output: { sound: true } });
});
