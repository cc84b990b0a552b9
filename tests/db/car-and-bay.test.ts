import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
let bayId = '';
beforeEach(async () => {
  garage = await practiceShop();
  bayId = (await garage.did('Desk', 'shop.get', {})).bays[0]?.id ?? '';
});
afterEach(async () => {
  await garage.end();
});

const book = (plate: string, booking: { day: string; from: string; hours: number } | null) =>
  garage.did('Desk', 'order.book', {
    customer: { add: { name: `Owner of ${plate}` } },
    car: { add: { plate, words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    here: false,
    booking: booking && { ...booking, bayId },
  });

describe('a car keeps its plates and owners', () => {
  test('a new plate and a new owner from a day; both plates are found; a slip of the pen is put right', async () => {
    const { carId, customerId } = await book('KTB 4471', null);
    garage.now = at('2026-03-20T08:00');
    const plate = { id: carId, revision: 1, plate: 'jjd 311', from: '2026-03-18' };
    expect(await garage.did('Desk', 'car.plate', plate)).toEqual({ id: carId, revision: 2 });
    const next = await garage.did('Desk', 'customer.add', { name: 'Agnes Pell' });
    await garage.did('Desk', 'car.owner', { id: carId, revision: 2, customerId: next.id, from: '2026-03-19' });
    const car = await garage.did('Desk', 'car.get', { id: carId });
    expect(car.plates).toEqual([
      { plate: 'KTB 4471', from: '2026-03-10', to: '2026-03-18' },
      { plate: 'JJD 311', from: '2026-03-18', to: null },
    ]);
    expect(car).toMatchObject({ revision: 3, fields: { plate: 'JJD 311' }, owner: { name: 'Agnes Pell' } });
    expect(car.owners).toMatchObject([{ to: '2026-03-19' }, { name: 'Agnes Pell', to: null }]);
    expect((await garage.did('Desk', 'customer.get', { id: customerId })).cars).toEqual([]);
    const found = async (text: string) => (await garage.did('Desk', 'find.line', { text })).hits.map((hit) => hit.id);
    expect(await found('KTB4471')).toContain(carId);
    expect(await found('JJD311')).toContain(carId);

    await garage.did('Desk', 'car.change', { id: carId, revision: 3, change: { plate: 'JJD 312' } });
    expect((await garage.did('Desk', 'car.get', { id: carId })).plates.at(-1)).toEqual({
      plate: 'JJD 312',
      from: '2026-03-18',
      to: null,
    });
    expect(await found('JJD312')).toContain(carId);
  });

  test('a day before the last plate, a day to come and a stale revision are refused, and nothing is written', async () => {
    const { carId } = await book('KTB 4471', null);
    const plate = { id: carId, revision: 1, plate: 'JJD 311', from: '2026-03-09' };
    expect(await garage.refused('Desk', 'car.plate', plate)).toMatchObject({
      fields: [{ problem: 'before-the-last' }],
    });
    expect(await garage.refused('Desk', 'car.plate', { ...plate, from: '2026-03-11' })).toMatchObject({
      fields: [{ problem: 'in-the-future' }],
    });
    expect(await garage.refused('Desk', 'car.plate', { ...plate, revision: 7 })).toMatchObject({
      code: 'changed-meanwhile',
      now: { plate: 'KTB 4471' },
      yours: { plate: 'JJD 311' },
    });
    expect((await garage.did('Desk', 'car.get', { id: carId })).plates).toHaveLength(1);
  });
});

test('a car says whether it is here, since when and where the plan has it, until it is fetched or called off', async () => {
  const booking = { day: '2026-03-10', from: '08:15', hours: 2000 };
  const { id, carId } = await book('KTB 4471', booking);
  const open = async () => (await garage.did('Desk', 'car.get', { id: carId })).visits.map((visit) => visit.open);
  const place = { bay: 'Bay 1', day: '2026-03-10', from: '08:15' };
  expect(await open()).toEqual([{ arrivedAt: null, booking: place }]);
  garage.now = at('2026-03-10T08:20');
  const { revision } = await garage.did('Desk', 'order.arrive', { id, revision: 1, mileage: null });
  expect(await open()).toEqual([{ arrivedAt: garage.now, booking: place }]);
  const off = await garage.did('Desk', 'order.cancel', { id, revision, why: 'sold' });
  // Called off, it still stands here.
  expect(await open()).toEqual([{ arrivedAt: garage.now, booking: place }]);
  await garage.did('Desk', 'order.handOver', { id, revision: off.revision, to: '' });
  expect(await open()).toEqual([null]);

  const gone = await book('JJD 311', null);
  await garage.did('Desk', 'order.cancel', { id: gone.id, revision: 1, why: 'another garage' });
  expect((await garage.did('Desk', 'car.get', { id: gone.carId })).visits[0]?.open).toBe(null);
});

describe('bays', () => {
  test('a clash in a bay is told, not forbidden; one after the other is none', async () => {
    const first = await book('KTB 4471', { day: '2026-03-12', from: '08:00', hours: 2000 });
    const second = await book('JJD 311', { day: '2026-03-12', from: '10:00', hours: 1500 });
    const none = await garage.did('Desk', 'booking.list', { from: '2026-03-12', to: '2026-03-12' });
    expect(none.rows.map((row) => [row.number, row.from, row.clashes.length])).toEqual([
      [1187, '08:00', 0],
      [1188, '10:00', 0],
    ]);
    expect(none.days).toEqual([{ day: '2026-03-12', hours: 3500 }]);
    const moved = await garage.did('Desk', 'booking.change', {
      orderId: second.id,
      revision: 1,
      booking: { bayId, day: '2026-03-12', from: '09:30', hours: 1500 },
    });
    expect(moved).toMatchObject({ revision: 2, clashes: [{ number: 1187, plate: 'KTB 4471', from: '08:00' }] });
    const list = await garage.did('Runa', 'booking.list', { from: '2026-03-01', to: '2026-03-31' });
    expect(list.rows.map((row) => row.clashes)).toEqual([[second.id], [first.id]]);
    expect(
      await garage.refused('Desk', 'booking.change', {
        orderId: second.id,
        revision: 1,
        booking: { bayId, day: '2026-03-13', from: '08:00', hours: 1000 },
      }),
    ).toMatchObject({ code: 'changed-meanwhile', now: { from: '09:30' } });
  });

  test('an order without a place gets one; a cancelled one gives its place up; 25:00 is no time', async () => {
    const { id } = await book('KTB 4471', null);
    const booking = { bayId, day: '2026-03-12', from: '08:00', hours: 1000 };
    expect(
      await garage.refused('Desk', 'booking.change', {
        orderId: id,
        revision: 1,
        booking: { ...booking, from: '25:00' },
      }),
    ).toMatchObject({ code: 'bad-input' });
    const { revision } = await garage.did('Desk', 'booking.change', { orderId: id, revision: 1, booking });
    const days = { from: '2026-03-12', to: '2026-03-12' };
    expect((await garage.did('Desk', 'booking.list', days)).rows).toHaveLength(1);
    await garage.did('Desk', 'order.cancel', { id, revision, why: 'sold' });
    expect((await garage.did('Desk', 'booking.list', days)).rows).toHaveLength(0);
  });
});

test('a part is changed on its revision; its number stays its own', async () => {
  const part = (number: string) => ({ number, words: 'Seal', unit: '', price: 1500, cost: 600, onHand: 2000 });
  const seal = await garage.did('Desk', 'part.add', part('OS-1'));
  await garage.did('Desk', 'part.add', part('OS-2'));
  const change = { price: 1700, keepAtLeast: 4000 };
  expect(await garage.did('Desk', 'part.change', { ...seal, change })).toEqual({ id: seal.id, revision: 2 });
  expect((await garage.did('Desk', 'part.list', { text: 'OS-1' })).rows).toMatchObject([
    { revision: 2, price: 1700, keepAtLeast: 4000, onHand: 2000, words: 'Seal' },
  ]);
  expect(await garage.refused('Odile', 'part.change', { ...seal, change: { price: 1600 } })).toMatchObject({
    code: 'changed-meanwhile',
    now: { price: 1700 },
    yours: { price: 1600 },
  });
  expect(
    await garage.refused('Desk', 'part.change', { id: seal.id, revision: 2, change: { number: 'OS-2' } }),
  ).toMatchObject({ fields: [{ problem: 'number-taken' }] });
});
