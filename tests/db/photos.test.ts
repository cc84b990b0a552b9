import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

/** A picture of one colour, as another program writes it. */
const picture = (kind: 'image/jpeg' | 'image/png' | 'image/webp', colour = '#885511'): string => {
  const canvas = createCanvas(40, 30);
  const pen = canvas.getContext('2d');
  pen.fillStyle = colour;
  pen.fillRect(0, 0, 40, 30);
  return kind === 'image/png' ? canvas.toBuffer(kind).toString('base64') : canvas.toBuffer(kind, 80).toString('base64');
};

let garage: PracticeShop;
let order = { id: '', carId: '' };
let findingId = '';

beforeAll(async () => {
  garage = await practiceShop();
  order = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Per Halloran' } },
    car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    ...{ complaint: 'Pulls left.', here: true },
  });
  const found = { text: 'Drop link loose', place: 'rear left', part: 'drop link' };
  findingId = (await garage.did('Runa', 'finding.add', { orderId: order.id, ...found })).id;
});
afterAll(() => garage.end());

const keep = (of: { what: 'car' | 'finding' | 'order' | 'mark'; id: string }, base64: string, words = '') =>
  garage.did('Runa', 'photo.keep', { orderId: order.id, of, words, base64 });

test('a photo lies in photos/ under the hash of its content, comes back as it was, and stands in the list', async () => {
  const base64 = picture('image/jpeg');
  const kept = await keep({ what: 'finding', id: findingId }, base64, 'link');
  const bytes = Buffer.from(base64, 'base64');
  expect(kept.hash).toBe(createHash('sha256').update(bytes).digest('hex'));
  expect(readFileSync(join(garage.folder, 'photos', `${kept.hash}.jpg`)).equals(bytes)).toBe(true);
  const read = await garage.did('Desk', 'photo.read', { id: kept.id });
  expect(read).toMatchObject({ kind: 'jpeg', words: 'link', base64 });
  const { rows } = await garage.did('Desk', 'photo.list', { orderId: order.id });
  expect(rows).toMatchObject([{ of: { what: 'finding', id: findingId }, by: 'Runa', printed: false, revision: 1 }]);
  expect(await garage.did('Desk', 'photo.list', { carId: order.carId })).toEqual({ rows });
});

test('the same picture of the same thing is kept once; of another thing it is a row more and no file more', async () => {
  const base64 = picture('image/png');
  const first = await keep({ what: 'car', id: order.carId }, base64);
  expect(await keep({ what: 'car', id: order.carId }, base64)).toEqual({ ...first, again: true });
  const files = readdirSync(join(garage.folder, 'photos')).length;
  const other = await keep({ what: 'order', id: order.id }, base64);
  expect(other).toMatchObject({ hash: first.hash, again: false });
  expect(readdirSync(join(garage.folder, 'photos'))).toHaveLength(files);
});

test('what is no picture, what is too large and what is of another order is refused', async () => {
  const of = { what: 'order', id: order.id };
  const refused = (input: object) => garage.refused('Runa', 'photo.keep', { orderId: order.id, of, ...input });
  const problem = (name: string, figures?: object) => ({
    code: 'bad-input',
    fields: [{ path: 'base64', problem: name, ...(figures ? { with: figures } : {}) }],
  });
  const html = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>').toString('base64');
  expect(await refused({ base64: html })).toEqual(problem('not-a-photo'));
  expect(await refused({ base64: '%%%%' })).toEqual(problem('wrong-form'));
  const large = Buffer.concat([Buffer.from(picture('image/png'), 'base64'), Buffer.alloc(8_000_001)]);
  expect(await refused({ base64: large.toString('base64') })).toEqual(problem('photo-too-large', { most: 8 }));
  const base64 = picture('image/png');
  const elsewhere = await garage.did('Desk', 'order.book', {
    ...{ customer: { add: { name: 'Ilse' } }, car: { add: { words: 'Van', unit: 'km' as const } } },
    ...{ complaint: 'Leaks.', here: true },
  });
  for (const of of [
    { what: 'order', id: elsewhere.id },
    { what: 'car', id: elsewhere.carId },
    { what: 'finding', id: 'none' },
    { what: 'step', id: 'none', step: 1 },
  ])
    expect(await refused({ of, base64 })).toMatchObject({ code: 'not-found' });
});

test('a photo can be marked to be printed and taken out, by its revision; WebP cannot be printed', async () => {
  const { id } = await keep({ what: 'order', id: order.id }, picture('image/jpeg', '#114455'));
  expect(await garage.did('Runa', 'photo.print', { id, revision: 1, printed: true })).toEqual({ id, revision: 2 });
  expect(await garage.refused('Desk', 'photo.takeOut', { id, revision: 1, takenOut: true })).toMatchObject({
    ...{ code: 'changed-meanwhile', now: { printed: true, takenOut: false } },
  });
  await garage.did('Desk', 'photo.takeOut', { id, revision: 2, takenOut: true });
  const webp = await keep({ what: 'order', id: order.id }, picture('image/webp'));
  expect(await garage.refused('Desk', 'photo.print', { id: webp.id, revision: 1, printed: true })).toEqual({
    ...{ code: 'held', reasons: [{ what: 'photo-not-printable', with: {} }] },
  });
});

test('verify names a photo whose file was changed or is gone, and reading it says that it is damaged', async () => {
  const { id, hash } = await keep({ what: 'order', id: order.id }, picture('image/png', '#00ff00'));
  const path = join(garage.folder, 'photos', `${hash}.png`);
  const before = readFileSync(path);
  expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
  writeFileSync(path, Buffer.concat([before, Buffer.from('x')]));
  const faults = async () => (await garage.did('Odile', 'care.verify', {})).faults;
  expect(await faults()).toEqual([{ what: 'photo-changed', table: 'photo', row: id, detail: `${hash}.png` }]);
  expect(await garage.refused('Desk', 'photo.read', { id })).toMatchObject({ code: 'damaged' });
  rmSync(path);
  expect(await faults()).toEqual([{ what: 'photo-missing', table: 'photo', row: id, detail: `${hash}.png` }]);
  expect(await garage.refused('Desk', 'photo.read', { id })).toMatchObject({ code: 'damaged' });
  writeFileSync(path, before);
  expect(await faults()).toEqual([]);
});

test('a photo that is taken again puts a damaged file right', async () => {
  const base64 = picture('image/png', '#0000ff');
  const of = { what: 'order' as const, id: order.id };
  const { hash } = await keep(of, base64);
  writeFileSync(join(garage.folder, 'photos', `${hash}.png`), 'broken');
  expect((await keep(of, base64)).again).toBe(true);
  expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
});
