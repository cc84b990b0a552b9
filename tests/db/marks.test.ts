import { afterEach, beforeEach, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.end();
});

const booked = async (car: { id: string } | { add: { plate: string; words: string; unit: 'km' } } | { none: true }) =>
  garage.did('Desk', 'order.book', {
    ...{ customer: { add: { name: 'Ilse Vandermeer' } }, car, complaint: 'It whines.', here: true },
  });
const corvane = { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' as const } };
const scratch = { view: 'right' as const, x: 820, y: 410, words: 'Scratch, right rear quarter, 30 cm' };
const dent = { view: 'top' as const, x: 500, y: 80, words: 'Dent, left door, coin size' };

test('marks of one visit are carried to the next: still so, gone, and there after all', async () => {
  const first = await booked(corvane);
  const { ids } = await garage.did('Runa', 'mark.walkRound', {
    ...{ orderId: first.id, outline: 'coupe', add: [scratch, dent] },
  });
  expect(await garage.did('Runa', 'mark.list', { carId: first.carId })).toMatchObject({
    outline: 'coupe',
    rows: [
      { ...scratch, id: ids[0], first: { number: first.number }, last: { number: first.number }, gone: null },
      { ...dent, id: ids[1] },
    ],
  });
  garage.now = at('2026-05-04T08:00');
  const second = await booked({ id: first.carId });
  const walk = { orderId: second.id, still: [ids[0] ?? ''], gone: [ids[1] ?? ''] };
  await garage.did('Desk', 'mark.walkRound', walk);
  // Once more is the same walk.
  await garage.did('Desk', 'mark.walkRound', walk);
  const { rows, outline } = await garage.did('Desk', 'mark.list', { carId: first.carId });
  expect(outline).toBe('coupe');
  expect(rows[0]).toMatchObject({
    first: { orderId: first.id },
    last: { orderId: second.id },
    gone: null,
    revision: 1,
  });
  expect(rows[1]).toMatchObject({ last: { orderId: first.id }, gone: { number: second.number }, revision: 2 });

  const back = { id: ids[1] ?? '', revision: 2, change: { goneOrderId: null, words: 'Dent, left door, 2 cm' } };
  await garage.did('Desk', 'mark.change', back);
  expect((await garage.did('Desk', 'mark.list', { carId: first.carId })).rows[1]).toMatchObject({
    ...{ gone: null, words: 'Dent, left door, 2 cm', x: dent.x, revision: 3 },
  });
  expect(await garage.refused('Desk', 'mark.change', back)).toMatchObject({
    ...{ code: 'changed-meanwhile', now: { words: 'Dent, left door, 2 cm' } },
  });
});

test('a mark belongs to its own car, and a sale over the counter has none', async () => {
  const one = await booked(corvane);
  const other = await booked({ add: { plate: 'HLM 93', words: 'Oriel Estate', unit: 'km' } });
  const { ids } = await garage.did('Desk', 'mark.walkRound', { orderId: one.id, add: [scratch] });
  const id = ids[0] ?? '';
  for (const wrong of [{ still: [id] }, { gone: [id] }])
    expect(await garage.refused('Desk', 'mark.walkRound', { orderId: other.id, ...wrong })).toMatchObject({
      ...{ code: 'not-found', what: 'mark' },
    });
  const change = { id, revision: 1, change: { goneOrderId: other.id } };
  expect(await garage.refused('Desk', 'mark.change', change)).toMatchObject({ code: 'not-found', what: 'order' });
  const sale = await booked({ none: true });
  expect(await garage.refused('Desk', 'mark.walkRound', { orderId: sale.id, add: [scratch] })).toMatchObject({
    ...{ code: 'not-found', what: 'car' },
  });
  const outside = { orderId: one.id, add: [{ ...scratch, x: 1001 }] };
  expect(await garage.refused('Desk', 'mark.walkRound', outside)).toMatchObject({ code: 'bad-input' });
});
