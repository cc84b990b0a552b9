import { afterAll, beforeAll, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

/** One Monday at the desk, in the order of the clock: 2026-03-09, a shop with two mechanics and one bay. */
const MONDAY = '2026-03-09';
const THURSDAY = '2026-03-12';
let garage: PracticeShop;
let bayId = '';
beforeAll(async () => {
  garage = await practiceShop();
  bayId = (await garage.did('Desk', 'shop.get', {})).bays[0]?.id ?? '';
});
afterAll(() => garage.end());

type Booked = { id: string; customerId: string; carId: string };
const book = (name: string, plate: string, complaint: string, from?: string): Promise<Booked> =>
  garage.did('Desk', 'order.book', {
    ...{ customer: { add: { name } }, car: { add: { plate, words: 'Brackwater Hauler', unit: 'km' } } },
    ...{ complaint, here: from === undefined },
    booking: from === undefined ? null : { bayId, day: MONDAY, from, hours: 2000 },
  });
/** What three characters and more lead to. */
const found = async (text: string) =>
  (await garage.did('Desk', 'find.line', { text })).hits.map(({ kind, id, headline }) => [kind, id, headline]);
const ordersOf = async (text: string) =>
  (await garage.did('Desk', 'order.page', { filter: { which: 'all', text } })).rows.map(({ id }) => id).toSorted();
const free = async () =>
  (await garage.did('Desk', 'booking.capacity', { from: MONDAY, to: MONDAY })).days[0]?.free ?? Number.NaN;

test('two do not come: their hours are free again, and whoever waits is told so', async () => {
  garage.now = at('2026-03-06T10:00');
  const orders = [
    await book('Ada Rind', 'RIN 40', 'Squeals', '08:00'),
    await book('Bo Falk', 'FLK 9', 'Smokes', '10:00'),
  ];
  const before = await free();
  garage.now = at(`${MONDAY}T11:00`);
  for (const { id } of orders) {
    const { revision } = await garage.did('Desk', 'order.get', { id });
    await garage.did('Desk', 'booking.noShow', { orderId: id, revision });
    expect((await garage.did('Desk', 'order.get', { id })).next.what).toBe('was-expected');
  }
  expect(await free()).toBe(before + 4000);
  const { customer } = await garage.did('Desk', 'order.get', { id: orders[0]?.id ?? '' });
  expect((await garage.did('Desk', 'customer.get', { id: customer.id })).noShows).toBe(1);
  expect(await found('squ')).toMatchObject([['order', orders[0]?.id, expect.anything()]]);
});

test('a mechanic is ill: the day holds less, and what was promised turns soon and late by itself', async () => {
  garage.now = at(`${MONDAY}T08:00`);
  const order = await book('Cleo Marsh', 'MRS 12', 'Clunks');
  const job = await garage.did('Desk', 'job.add', {
    orderId: order.id,
    job: { title: 'Ball joint' },
    lines: [{ kind: 'labour', words: 'Swap', quantity: 3000, unitPrice: 9600 }],
  });
  const { revision, sums } = await garage.did('Desk', 'order.get', { id: order.id });
  const promiseAt = at(`${MONDAY}T10:00`);
  await garage.did('Desk', 'order.change', { id: order.id, revision, change: { promiseAt } });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId: order.id, jobs: [{ jobId: job.id, answer: 'yes' }], upTo: { total: sums?.gross ?? 0 } },
    ...{ spoken: { name: 'Cleo Marsh', role: 'customer' }, way: 'person' },
  });
  await garage.did('Runa', 'clock.on', { jobId: job.id });
  await garage.did('Piet', 'clock.on', { jobId: job.id });
  const row = async () => (await garage.did('Desk', 'today.get', {})).rows.find((one) => one.orderId === order.id);
  // Three hours by two: done at half past nine.
  expect(await row()).toMatchObject({ expected: { doneAt: at(`${MONDAY}T09:30`), people: 2, late: false } });
  const before = await free();
  garage.now = at(`${MONDAY}T08:10`);
  await garage.did('Piet', 'clock.off', {});
  const ill = { personId: garage.people.get('Piet') ?? '', from: MONDAY, to: MONDAY, words: 'ill' };
  await garage.did('Desk', 'absence.add', ill);
  // Eight hours less, at the planned share of 85 %.
  expect(await free()).toBe(before - 6800);
  // Twenty man-minutes are done, 160 are left for one: ten to eleven, and that is after ten.
  expect(await row()).toMatchObject({
    expected: { doneAt: at(`${MONDAY}T10:50`), leftMinutes: 160, people: 1, late: true },
  });
  garage.now = at(`${MONDAY}T09:00`);
  expect((await row())?.next.promise).toBe('soon');
  garage.now = at(`${MONDAY}T10:01`);
  expect((await row())?.next.promise).toBe('late');
});

test('a mechanic is ill whom a job was given to: the others have all of it, and its promise turns', async () => {
  garage.now = at(`${THURSDAY}T08:00`);
  const order = await book('Ivo Tarn', 'TRN 8', 'Leaks');
  const both = ['Runa', 'Piet'].map((name) => ({ personId: garage.people.get(name) ?? '', hours: 1500 }));
  const job = await garage.did('Desk', 'job.add', {
    ...{ orderId: order.id, job: { title: 'Radiator' } },
    lines: [{ kind: 'labour', words: 'Swap', quantity: 3000, unitPrice: 9600, people: both }],
  });
  const { revision, sums } = await garage.did('Desk', 'order.get', { id: order.id });
  const promiseAt = at(`${THURSDAY}T10:00`);
  await garage.did('Desk', 'order.change', { id: order.id, revision, change: { promiseAt } });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId: order.id, jobs: [{ jobId: job.id, answer: 'yes' }], upTo: { total: sums?.gross ?? 0 } },
    ...{ spoken: { name: 'Ivo Tarn', role: 'customer' }, way: 'person' },
  });
  const expected = async () =>
    (await garage.did('Desk', 'today.get', {})).rows.find((one) => one.orderId === order.id)?.expected;
  const ill = (hours: number | null) =>
    garage.did('Desk', 'absence.add', {
      ...{ personId: garage.people.get('Runa') ?? '', from: THURSDAY, to: THURSDAY, hours, words: 'ill' },
    });
  // Three hours by two.
  expect(await expected()).toMatchObject({ doneAt: at(`${THURSDAY}T09:30`), people: 2, late: false });
  // An hour at the dentist leaves the job hers.
  const { ids } = await ill(1000);
  expect(await expected()).toMatchObject({ people: 2, late: false });
  await garage.did('Desk', 'absence.takeOut', { id: ids[0] ?? '' });
  const day = (await ill(null)).ids[0] ?? '';
  expect(await expected()).toMatchObject({ doneAt: at(`${THURSDAY}T11:00`), people: 1, late: true });
  // Here after all.
  await garage.did('Desk', 'absence.takeOut', { id: day });
  expect(await expected()).toMatchObject({ people: 2, late: false });
});

test('a van by the plate it wore last year; its orders too', async () => {
  garage.now = at('2025-05-01T09:00');
  const { id, carId } = await book('Gull Street Bakery', 'GSB 481', 'Rattles');
  const { revision } = await garage.did('Desk', 'car.get', { id: carId });
  garage.now = at('2025-06-01T09:00');
  await garage.did('Desk', 'car.plate', { id: carId, revision, plate: 'WXY 700', from: '2025-06-01' });
  garage.now = at(`${MONDAY}T11:00`);
  for (const piece of ['481', 'gsb', '700', 'wxy'])
    expect((await found(piece))[0]?.slice(0, 2)).toEqual(['car', carId]);
  for (const piece of ['481', 'wxy', 'gull', 'rat']) expect([piece, ...(await ordersOf(piece))]).toEqual([piece, id]);
});

test('a customer who stood here twice: either name leads to the one, and to all that was done', async () => {
  garage.now = at('2025-03-03T09:00');
  const one = await book('Lena Osker', 'LEN 1', 'Pulls left');
  const other = await book('Helene Wiborg', 'WIB 2', 'Pulls right');
  const revisionOf = async (id: string) => (await garage.did('Desk', 'customer.get', { id })).revision;
  garage.now = at(`${MONDAY}T11:30`);
  await garage.did('Desk', 'customer.join', {
    ...{ fromId: other.customerId, fromRevision: await revisionOf(other.customerId) },
    ...{ intoId: one.customerId, intoRevision: await revisionOf(one.customerId) },
  });
  for (const piece of ['osk', 'wib', 'helene']) {
    expect(await found(piece)).toContainEqual(['customer', one.customerId, 'Lena Osker']);
    expect([piece, ...(await ordersOf(piece))]).toEqual([piece, ...[one.id, other.id].toSorted()]);
  }
});

test('a car that was sold: by its plate with its owner of now, by the name of either its visits', async () => {
  garage.now = at('2025-09-01T09:00');
  const first = await book('Tilda Brok', 'TBK 555', 'Hums');
  garage.now = at(`${MONDAY}T12:00`);
  const buyer = await garage.did('Desk', 'customer.add', { name: 'Jon Averin' });
  const { revision } = await garage.did('Desk', 'car.get', { id: first.carId });
  await garage.did('Desk', 'car.owner', { id: first.carId, revision, customerId: buyer.id, from: MONDAY });
  const second = await garage.did('Desk', 'order.book', {
    ...{ customer: { id: buyer.id }, car: { id: first.carId }, complaint: 'Hums still', here: true },
  });
  const { hits } = await garage.did('Desk', 'find.line', { text: '555' });
  expect(hits[0]).toMatchObject({ kind: 'car', id: first.carId, headline: 'TBK 555' });
  expect(hits[0]?.detail).toContain('Jon Averin');
  expect(hits[0]?.detail).not.toContain('Brok');
  expect(await ordersOf('tbk')).toEqual([first.id, second.id].toSorted());
  expect(await ordersOf('brok')).toEqual([first.id]);
  expect(await ordersOf('ave')).toEqual([second.id]);
  const { orders } = await garage.did('Desk', 'customer.get', { id: buyer.id });
  expect(orders.map(({ id }) => id)).toEqual([second.id]);
});
