import { createCanvas } from '@napi-rs/canvas';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { newId } from '../../db/id.ts';
import { readPages, textOf } from '../paper/read-back.ts';
import { type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
let orderId = '';
let checkListId = '';

// An invented limit.
const tread = { what: 'tread', unit: 'mm', least: 1600, most: null, source: 'local rule: look it up' };
const items = [
  { words: 'Lights' },
  { words: 'Tyre', place: 'front left', measure: tread },
  { words: 'Brake hoses' },
  { words: 'Exhaust' },
];

beforeAll(async () => {
  garage = await practiceShop();
  const order = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Per Halloran' } },
    car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    ...{ complaint: 'Before the trip.', here: true },
  });
  orderId = order.id;
  checkListId = (await garage.did('Desk', 'checkList.add', { title: 'Walk-round', kind: 'walk-round', items })).id;
});
afterAll(() => garage.end());

test('each unsafe, soon and watch becomes a finding with what was measured', async () => {
  const findingId = newId();
  const { id, findings } = await garage.did('Runa', 'check.record', {
    ...{ orderId, checkListId },
    answers: [
      { item: 2, seen: 'unsafe', words: 'cracked to the cords' },
      { item: 0, seen: 'fine' },
      { item: 1, seen: 'soon', value: 2100, findingId },
      { item: 3, seen: 'not-seen', words: 'too hot' },
    ],
  });
  expect(findings.map(({ item }) => item)).toEqual([1, 2]);
  const order = await garage.did('Runa', 'order.get', { id: orderId });
  expect(order.findings).toMatchObject([
    { id: findingId, text: 'Tyre', urgency: 'soon', place: 'front left', measured: { ...tread, value: 2100 } },
    { text: 'Brake hoses: cracked to the cords', urgency: 'unsafe', measured: null },
  ]);
  // The list as it then was.
  await garage.did('Desk', 'checkList.change', {
    id: checkListId,
    revision: 1,
    change: { items: [{ words: 'Wipers' }] },
  });
  const { rows } = await garage.did('Desk', 'check.list', { orderId });
  expect(rows).toMatchObject([{ id, title: 'Walk-round', kind: 'walk-round', by: 'Runa' }]);
  expect(rows[0]?.answers.map(({ words, seen, said }) => [words, seen, said])).toEqual([
    ['Lights', 'fine', ''],
    ['Tyre', 'soon', ''],
    ['Brake hoses', 'unsafe', 'cracked to the cords'],
    ['Exhaust', 'not-seen', 'too hot'],
  ]);
});

test('the customer gets it on paper, with the photos that are to be printed', async () => {
  const { rows } = await garage.did('Desk', 'check.list', { orderId });
  const findingId = rows[0]?.answers.find(({ seen }) => seen === 'unsafe')?.findingId ?? '';
  const base64 = createCanvas(40, 30).toBuffer('image/jpeg', 80).toString('base64');
  const of = { what: 'finding' as const, id: findingId };
  const photo = await garage.did('Runa', 'photo.keep', { orderId, of, words: 'hose, left', base64 });
  const read = async (paper: { base64: string }) =>
    (await readPages(new Uint8Array(Buffer.from(paper.base64, 'base64')))).map(textOf).join('\n');
  const ask = () => garage.did('Desk', 'check.paper', { id: rows[0]?.id ?? '' });
  expect((await garage.did('Desk', 'photo.paper', { orderId })).photos).toBe(0);
  expect(await read(await ask())).not.toContain('hose, left');
  await garage.did('Desk', 'photo.print', { id: photo.id, revision: 1, printed: true });
  const paper = await ask();
  expect(paper.name).toMatch(/^What we saw \d+\.pdf$/);
  const text = await read(paper);
  for (const part of ['Practice', 'Unsafe now', 'cracked to the cords', 'tread 2.1 mm (at least 1.6 mm', 'hose, left'])
    expect(text).toContain(part);
  const photos = await garage.did('Desk', 'photo.paper', { orderId });
  expect(photos.photos).toBe(1);
  expect(await read(photos)).toContain('hose, left');
  await garage.did('Desk', 'photo.takeOut', { id: photo.id, revision: 2, takenOut: true });
  expect((await garage.did('Desk', 'photo.paper', { orderId })).photos).toBe(0);
  expect(await garage.refused('Desk', 'check.paper', { id: 'none' })).toMatchObject({ code: 'not-found' });
});

test('a new shop begins with a walk-round and a final list, both without limits', async () => {
  const { rows } = await garage.did('Runa', 'checkList.list', {});
  const begun = rows.filter(({ title }) => ['Before it leaves', 'Walk-round'].includes(title));
  expect(new Set(begun.map(({ kind }) => kind))).toEqual(new Set(['final', 'walk-round']));
  for (const { items: all } of begun.filter(({ revision }) => revision === 1))
    expect(all.every(({ measure }) => measure === null)).toBe(true);
});

test('every item is answered, once, and measured only where the list measures', async () => {
  const { id } = await garage.did('Desk', 'checkList.add', { title: 'Four', kind: 'final', items });
  const fine = items.map((_, item) => ({ item, seen: 'fine' as const }));
  const refused = (answers: object[]) => garage.refused('Runa', 'check.record', { orderId, checkListId: id, answers });
  expect(await refused(fine.slice(1))).toMatchObject({ fields: [{ path: 'answers', problem: 'row-missing' }] });
  expect(await refused([...fine, { item: 0, seen: 'soon' }])).toMatchObject({
    fields: [{ path: 'answers.4.item', problem: 'same-row-twice' }],
  });
  expect(await refused([...fine.slice(1), { item: 4, seen: 'fine' }])).toMatchObject({
    fields: [{ path: 'answers.3.item', problem: 'out-of-range' }],
  });
  expect(await refused([{ item: 0, seen: 'fine', value: 3 }, ...fine.slice(1)])).toMatchObject({
    fields: [{ path: 'answers.0.value', problem: 'not-measured-here' }],
  });
  expect(await garage.refused('Runa', 'checkList.add', { title: 'Mine', kind: 'final', items })).toMatchObject({
    code: 'not-allowed',
  });
});
