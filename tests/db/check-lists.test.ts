import { afterAll, beforeAll, expect, test } from 'vitest';
import { newId } from '../../db/id.ts';
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
