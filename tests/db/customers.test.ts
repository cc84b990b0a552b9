import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.end();
});

const visit = (name: string, phone: string, plate: string) =>
  garage.did('Desk', 'order.book', {
    customer: { add: { name, phone } },
    car: { add: { plate, words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    here: true,
  });
const invoiced = async (orderId: string, role: 'customer' | 'payer' = 'customer') => {
  const job = await garage.did('Desk', 'job.add', {
    orderId,
    job: { title: 'Look' },
    lines: [{ kind: 'labour', words: 'Look', quantity: 1000, unitPrice: 10_000 }],
  });
  await garage.did('Desk', 'decision.record', {
    orderId,
    jobs: [{ jobId: job.id, answer: 'yes' }],
    upTo: { total: 50_000 },
    spoken: { name: 'They', role },
    way: 'person',
  });
  return garage.did('Odile', 'invoice.issue', { orderId });
};
const revisionOf = async (id: string) => (await garage.did('Desk', 'customer.get', { id })).revision;

describe('doubles', () => {
  test('are found while typing: by the name turned round, a number with its country, an e-mail', async () => {
    const { customerId } = await visit('Łukasz Bjørn', '0171 555 0101', 'A 1');
    await visit('Bjørn Lian', '0171 555 0199', 'A 2');
    const doubles = async (typed: { name?: string; phones?: string[] }) =>
      (await garage.did('Desk', 'customer.doubles', typed)).rows.map(({ id, by, cars }) => ({ id, by, cars }));
    const mine = { id: customerId, cars: ['A 1 Corvane R'] };
    expect(await doubles({ name: 'bjorn lukasz' })).toEqual([{ ...mine, by: ['name'] }]);
    expect(await doubles({ name: 'Lukasz, Bjorn' })).toEqual([{ ...mine, by: ['name'] }]);
    expect(await doubles({ name: 'L', phones: ['+49 171 5550101'] })).toEqual([{ ...mine, by: ['phone'] }]);
    expect(await doubles({ name: 'Bjørn' })).toEqual([]);
    expect(await doubles({})).toEqual([]);
    const { rows } = await garage.did('Desk', 'customer.doubles', { name: 'Łukasz Bjørn', exceptId: customerId });
    expect(rows).toEqual([]);
  });

  test('are joined: cars and open work go over, the past is read together, papers keep their name; parted again', async () => {
    const old = await visit('P. Halloran', '555-0101', 'A 1');
    const paid = await invoiced(old.id);
    const open = await garage.did('Desk', 'order.book', {
      ...{ customer: { id: old.customerId }, car: { id: old.carId }, complaint: 'Clunks.', here: true },
    });
    const { customerId: into } = await visit('Per Halloran', '555-0177', 'A 2');
    const join = {
      ...{ fromId: old.customerId, fromRevision: await revisionOf(old.customerId) },
      ...{ intoId: into, intoRevision: await revisionOf(into) },
    };
    const { joinId, cars, orders } = await garage.did('Desk', 'customer.join', join);
    expect({ cars, orders }).toEqual({ cars: 1, orders: 1 });
    const whole = await garage.did('Desk', 'customer.get', { id: into });
    expect(whole.cars.map((car) => car.plate).toSorted()).toEqual(['A 1', 'A 2']);
    expect(whole.orders.map((order) => order.number).toSorted()).toEqual([1187, 1188, 1189]);
    expect(whole).toMatchObject({ owed: 12_600, joined: [{ joinId, id: old.customerId, name: 'P. Halloran' }] });
    expect((await garage.did('Desk', 'order.get', { id: open.id })).customer.name).toBe('Per Halloran');
    const papers = await garage.did('Desk', 'paper.list', { kind: 'invoice' });
    expect(papers.rows).toMatchObject([{ id: paid.paperId, customerId: old.customerId }]);
    // The old entry is nowhere to be picked, and its name leads to the new one.
    expect((await garage.did('Desk', 'customer.list', {})).rows.map((row) => row.name)).toEqual(['Per Halloran']);
    expect((await garage.did('Desk', 'find.line', { text: 'P. Hall' })).hits.map((hit) => hit.id)).toContain(into);
    const again = await garage.did('Desk', 'order.book', {
      ...{ customer: { id: old.customerId }, car: { id: old.carId }, complaint: 'Squeals.', here: true },
    });
    expect(again.customerId).toBe(into);
    expect(await garage.refused('Desk', 'customer.join', { ...join, fromRevision: 2 })).toMatchObject({
      fields: [{ path: 'fromId', problem: 'joined-already' }],
    });

    await garage.did('Desk', 'customer.part', { joinId });
    expect(await garage.did('Desk', 'customer.get', { id: into })).toMatchObject({
      ...{ joined: [], cars: [{ plate: 'A 2' }], owed: 0 },
    });
    const back = await garage.did('Desk', 'customer.get', { id: old.customerId });
    expect(back).toMatchObject({ joinedInto: null, cars: [{ plate: 'A 1' }], owed: 12_600 });
    // What was booked while they were joined stays where it was booked.
    expect(back.orders.map((order) => order.number).toSorted()).toEqual([1187, 1188]);
    expect(await garage.refused('Desk', 'customer.part', { joinId })).toMatchObject({
      fields: [{ problem: 'parted-already' }],
    });
    expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
  });

  test('a third entry: who was joined before goes along, and comes back', async () => {
    const [a, b, c] = [await visit('A', '', 'A 1'), await visit('B', '', 'B 1'), await visit('C', '', 'C 1')];
    const join = async (fromId: string, intoId: string) =>
      garage.did('Desk', 'customer.join', {
        ...{ fromId, fromRevision: await revisionOf(fromId), intoId, intoRevision: await revisionOf(intoId) },
      });
    await join(a.customerId, b.customerId);
    const second = await join(b.customerId, c.customerId);
    const names = async (id: string) =>
      (await garage.did('Desk', 'customer.get', { id })).joined.map((one) => one.name);
    expect((await names(c.customerId)).toSorted()).toEqual(['A', 'B']);
    await garage.did('Desk', 'customer.part', { joinId: second.joinId });
    expect(await names(b.customerId)).toEqual(['A']);
    expect(await names(c.customerId)).toEqual([]);
    const plates = (await garage.did('Desk', 'customer.get', { id: b.customerId })).cars.map((car) => car.plate);
    expect(plates.toSorted()).toEqual(['A 1', 'B 1']);
  });

  test('joining on a stale revision, and an entry into itself, are refused', async () => {
    const [a, b] = [await visit('A', '', 'A 1'), await visit('B', '', 'B 1')];
    const join = { fromId: a.customerId, fromRevision: 1, intoId: b.customerId, intoRevision: 7 };
    expect(await garage.refused('Desk', 'customer.join', join)).toMatchObject({ code: 'changed-meanwhile' });
    expect(await garage.refused('Desk', 'customer.join', { ...join, intoId: a.customerId })).toMatchObject({
      fields: [{ problem: 'same-row-twice' }],
    });
    expect((await garage.did('Desk', 'customer.get', { id: a.customerId })).joinedInto).toBe(null);
  });
});

test('language and consents are kept; a change of one leaves the others', async () => {
  const { id } = await garage.did('Desk', 'customer.add', {
    name: 'Ilse Vandermeer',
    language: 'de',
    consents: { reminders: true, photos: null, history: false },
  });
  await garage.did('Desk', 'customer.change', { id, revision: 1, change: { phone: '555-0144' } });
  expect((await garage.did('Desk', 'customer.get', { id })).fields).toMatchObject({
    ...{ language: 'de', consents: { reminders: true, photos: null, history: false }, phone: '555-0144' },
  });
});

test('who pays for a customer is asked for once; an order takes it over unless it names another', async () => {
  const fleet = await garage.did('Desk', 'customer.add', { name: 'Northgate Gears' });
  const { id } = await garage.did('Desk', 'customer.add', { name: 'Ilse Vandermeer', invoiceTo: fleet.id });
  const car = { add: { plate: 'A 1', words: 'Corvane R', unit: 'km' as const } };
  const book = (payerId: string | null) =>
    garage.did('Desk', 'order.book', { ...{ customer: { id }, car, complaint: 'x', here: true }, payerId });
  const payer = async (orderId: string) => (await garage.did('Desk', 'order.get', { id: orderId })).payer?.name ?? null;
  expect(await payer((await book(null)).id)).toBe('Northgate Gears');
  const other = await garage.did('Desk', 'customer.add', { name: 'Per Halloran' });
  expect(await payer((await book(other.id)).id)).toBe('Per Halloran');
  const self = { id, revision: 1, change: { invoiceTo: id } };
  expect(await garage.refused('Desk', 'customer.change', self)).toMatchObject({ fields: [{ path: 'invoiceTo' }] });
  await garage.did('Desk', 'customer.change', { id, revision: 1, change: { invoiceTo: null } });
  expect(await payer((await book(null)).id)).toBe(null);
});

describe('a sale over the counter', () => {
  test('goes the whole way without a car: yes, invoice without a car on it, payment', async () => {
    const sale = () =>
      garage.did('Desk', 'order.book', {
        ...{ customer: { add: { name: 'Walk-in' } }, car: { none: true }, complaint: 'Two litres of oil', here: true },
      });
    const { id, carId } = await sale();
    const invoice = await invoiced(id);
    const order = await garage.did('Desk', 'order.get', { id });
    expect(order).toMatchObject({ counterSale: true, mileageIn: null, arrivedAt: garage.now });
    await garage.did('Desk', 'payment.take', { orderId: id, kind: 'payment', way: 'cash', amount: invoice.toPay });
    const { base64 } = await garage.did('Desk', 'paper.read', { id: invoice.paperId });
    expect(Buffer.from(base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-');
    // One row stands for no car, and it is found nowhere.
    expect((await sale()).carId).toBe(carId);
    expect((await garage.did('Desk', 'car.list', {})).rows).toEqual([]);
    expect((await garage.did('Desk', 'find.line', { text: '—' })).hits).toEqual([]);
    const theirs = { customer: { add: { name: 'B' } }, car: { id: carId }, complaint: 'x', here: true };
    expect(await garage.refused('Desk', 'order.book', theirs)).toMatchObject({ code: 'not-found' });
    expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
  });
});

describe('keys and storage', () => {
  test('keys given out are told with whom', async () => {
    const { id } = await visit('A', '', 'A 1');
    await garage.did('Desk', 'key.handOut', { orderId: id, toWhom: 'Tow driver', words: 'spare key' });
    expect((await garage.did('Runa', 'key.list', { orderId: id })).rows).toMatchObject([
      { toWhom: 'Tow driver', words: 'spare key', by: 'Desk', at: garage.now },
    ]);
  });

  // T39 (only where it was told in writing at intake; a local rule may forbid or limit it).
  test('storage after three free working days, from the ready notice to the day of collection', async () => {
    garage.now = at('2026-03-09T08:00');
    const { id } = await garage.did('Desk', 'order.book', {
      customer: { add: { name: 'A' } },
      car: { add: { plate: 'A 1', words: 'Corvane R', unit: 'km' } },
      ...{ complaint: 'It whines.', here: true },
      door: { storageTold: true, storage: { perDay: 1500, freeWorkingDays: 3 } },
    });
    const get = () => garage.did('Desk', 'storage.get', { orderId: id, on: '2026-03-18' });
    expect(await get()).toMatchObject({ told: true, notice: null, days: 0, gross: 0 });
    garage.now = at('2026-03-10T16:00');
    const { customer } = await garage.did('Desk', 'order.get', { id });
    const told = { customerId: customer.id, orderId: id, about: 'ready' as const, words: 'Ready' };
    await garage.did('Desk', 'message.record', { ...told, way: 'phone', reached: false });
    expect((await get()).notice).toBe(null);
    await garage.did('Desk', 'message.record', { ...told, way: 'mail', reached: true });
    expect(await get()).toEqual({
      ...{ told: true, perDay: 1500, freeWorkingDays: 3, notice: '2026-03-10', until: '2026-03-18' },
      ...{ firstCharged: '2026-03-14', days: 5, net: 7500, tax: 1500, gross: 9000 },
      ...{ agreedAt: at('2026-03-09T08:00'), chargedUntil: null, standsOn: null },
      ...{ invoicedUntil: null, ownOrder: false, visit: null },
    });
    expect(await garage.did('Desk', 'storage.get', { orderId: id, on: '2026-03-13' })).toMatchObject({ days: 0 });
  });

  // The same car: on the sheet once, with its reckoning, by the yes that was given at the door; later brought up to the day.
  test('what came to be is put on the sheet by what was agreed, once a day', async () => {
    garage.now = at('2026-03-09T08:00');
    const { id, customerId } = await garage.did('Desk', 'order.book', {
      customer: { add: { name: 'Ansel Pell' } },
      car: { add: { plate: 'A 1', words: 'Corvane R', unit: 'km' } },
      ...{ complaint: 'It whines.', here: true },
      door: { storageTold: true, storage: { perDay: 1500, freeWorkingDays: 3 } },
    });
    const work = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Whine' },
      lines: [{ kind: 'labour', words: 'Mend', quantity: 1000, unitPrice: 10_000 }],
    });
    await garage.did('Desk', 'decision.record', {
      ...{ orderId: id, jobs: [{ jobId: work.id, answer: 'yes' }], upTo: { total: 12_600 } },
      ...{ spoken: { name: 'Ansel Pell', role: 'customer' }, way: 'person' },
    });
    const before = await garage.did('Desk', 'order.get', { id });
    const charge = (until: string | null) => ({ orderId: id, until });
    const why = async (until: string) => garage.refused('Desk', 'storage.charge', charge(until));
    expect(await why('2026-03-09')).toMatchObject({ code: 'held', reasons: [{ what: 'storage-none-due' }] });
    garage.now = at('2026-03-10T16:00');
    await garage.did('Desk', 'message.record', {
      ...{ customerId, orderId: id, about: 'ready', way: 'mail', reached: true, words: 'Ready' },
    });
    const stored = async () => (await garage.did('Desk', 'today.get', {})).waiting.stored;
    garage.now = at('2026-03-13T10:00');
    expect(await stored()).toEqual([]);
    garage.now = at('2026-03-17T10:00');
    expect(await stored()).toMatchObject([{ car: 'A 1', customer: 'Ansel Pell', notice: '2026-03-10', gross: 7200 }]);
    expect(await garage.did('Desk', 'storage.charge', charge(null))).toMatchObject({ days: 4, gross: 7200 });
    const order = await garage.did('Desk', 'order.get', { id });
    const [, fee] = order.jobs;
    expect(fee).toMatchObject({ title: 'Storage of the car', covered: true, lines: [{ kind: 'fee', amount: 6000 }] });
    expect(fee?.lines[0]?.words).toBe('4 days after 3 free at 15.00');
    expect(order.yes.held).toEqual([]);
    expect(order.decisions.at(-1)).toMatchObject({
      ...{ ceiling: 12_600 + 7200, way: 'person', at: at('2026-03-09T08:00'), recordedAt: at('2026-03-17T10:00') },
      spoken: { name: 'Ansel Pell', role: 'customer' },
    });
    expect(order.sums?.gross).toBe((before.sums?.gross ?? 0) + 7200);
    expect(await why('2026-03-17')).toMatchObject({ code: 'held', reasons: [{ what: 'storage-charged' }] });
    // A day later it is one line still.
    garage.now = at('2026-03-18T09:00');
    expect(await garage.did('Desk', 'storage.charge', charge(null))).toMatchObject({ days: 5, gross: 1800 });
    const later = await garage.did('Desk', 'order.get', { id });
    expect(later.jobs).toHaveLength(2);
    expect(later.jobs[1]?.lines).toMatchObject([{ words: '5 days after 3 free at 15.00', amount: 7500 }]);
    expect([later.yes.held, later.decisions.at(-1)?.ceiling]).toEqual([[], 12_600 + 9000]);
    expect((await garage.did('Odile', 'care.verify', {})).faults).toEqual([]);
  });

  test('a price that is agreed only after the car was told ready counts from then; without one it is held', async () => {
    const { id, customerId } = await visit('A', '', 'A 1');
    garage.now = at('2026-03-10T16:00');
    await garage.did('Desk', 'message.record', {
      ...{ customerId, orderId: id, about: 'ready', way: 'mail', reached: true, words: 'Ready' },
    });
    garage.now = at('2026-03-16T16:00');
    expect(await garage.refused('Desk', 'storage.charge', { orderId: id })).toMatchObject({
      reasons: [{ what: 'storage-not-agreed' }],
    });
    expect((await garage.did('Desk', 'today.get', {})).waiting.stored).toMatchObject([{ gross: null }]);
    const { door, revision } = await garage.did('Desk', 'order.get', { id });
    const storage = { perDay: 1500, freeWorkingDays: 0 };
    await garage.did('Desk', 'order.change', {
      id,
      revision,
      change: { door: { ...door, storageTold: true, storage } },
    });
    expect(await garage.did('Desk', 'storage.get', { orderId: id, on: '2026-03-18' })).toMatchObject({
      ...{ agreedAt: garage.now, firstCharged: '2026-03-17', days: 2 },
    });
  });

  test('where nothing was told nothing is charged', async () => {
    const { id, customerId } = await visit('A', '', 'A 1');
    await garage.did('Desk', 'message.record', {
      ...{ customerId, orderId: id, about: 'ready', way: 'mail', reached: true, words: 'Ready' },
    });
    expect(await garage.did('Desk', 'storage.get', { orderId: id, on: '2026-06-01' })).toMatchObject({
      ...{ told: false, days: 0, gross: 0 },
    });
  });
});

test('what a payer owes counts the payments on orders of others, what was credited, and nothing of what others pay', async () => {
  const { id: payerId } = await garage.did('Desk', 'customer.add', { name: 'Northgate Gears' });
  const { id: orderId, customerId } = await garage.did('Desk', 'order.book', {
    ...{ customer: { add: { name: 'Per Halloran' } }, car: { add: { plate: 'A 3', words: 'Corvane R', unit: 'km' } } },
    ...{ complaint: 'It whines.', here: true, payerId },
  });
  await invoiced(orderId, 'payer');
  const owes = async (id: string) => {
    const { owed, open } = await garage.did('Desk', 'customer.get', { id });
    return [owed, ...open.map((one) => [one.id, one.toPay])];
  };
  const closing = async (id: string) => (await garage.did('Desk', 'statement.get', { customerId: id })).closing;
  expect(await owes(payerId)).toEqual([12_600, [orderId, 12_600]]);
  await garage.did('Desk', 'payment.take', { orderId, kind: 'payment', way: 'card', amount: 2600 });
  expect(await owes(payerId)).toEqual([10_000, [orderId, 10_000]]);
  expect(await closing(payerId)).toBe(10_000);
  expect(await owes(customerId)).toEqual([0]);
  await garage.did('Desk', 'payment.take', { orderId, kind: 'payment', way: 'card', amount: 10_000 });
  expect(await owes(payerId)).toEqual([0]);
});
