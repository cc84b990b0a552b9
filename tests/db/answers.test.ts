import { afterEach, beforeEach, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
beforeEach(async () => {
  garage = await practiceShop();
});
afterEach(async () => {
  await garage.end();
});

const visit = () =>
  garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Per Halloran', phone: '555-0177' } },
    car: { add: { plate: 'OYB 902', words: 'Oriel Estate', unit: 'km' } },
    ...{ complaint: 'It whines.', here: true },
  });
const answers = (id: string) => garage.did('Desk', 'customer.answers', { id });
const rang = async (orderId: string, wall: string) => {
  garage.now = at(wall);
  await garage.did('Desk', 'decision.tried', { orderId, way: 'phone', reached: '555-0177' });
};
const spoke = async (customerId: string, wall: string) => {
  garage.now = at(wall);
  await garage.did('Desk', 'message.record', {
    ...{ customerId, about: 'other', way: 'phone', reached: true, words: 'Spoke' },
  });
};

test('calls, a yes by phone, reminders and messages make the hours; a ready notice asks nothing', async () => {
  const { id, customerId, carId } = await visit();
  expect(await answers(customerId)).toEqual({ tries: [], best: null, bestPhone: null });
  await rang(id, '2026-03-10T14:00');
  await rang(id, '2026-03-10T15:00');
  await rang(id, '2026-03-10T16:00');
  await spoke(customerId, '2026-03-11T08:10');
  await spoke(customerId, '2026-03-12T08:40');
  garage.now = at('2026-03-13T09:20');
  const job = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Look' } });
  await garage.did('Desk', 'decision.record', {
    ...{ orderId: id, jobs: [{ jobId: job.id, answer: 'yes' }], upTo: { total: 10_000 } },
    ...{ spoken: { name: 'Per Halloran', role: 'customer' }, way: 'phone', reached: '555-0177' },
  });
  const reminder = await garage.did('Desk', 'reminder.add', { carId, words: 'Oil', dueOn: '2026-03-13' });
  garage.now = at('2026-03-13T13:00');
  await garage.did('Desk', 'reminder.try', { ...reminder, outcome: 'nobody' });
  const word = { customerId, way: 'message' as const, reached: true, words: 'x' };
  await garage.did('Desk', 'message.record', { ...word, about: 'ready', reached: false });
  await garage.did('Desk', 'message.record', { ...word, about: 'found', reached: false });
  garage.now = at('2026-03-13T14:30');
  await garage.did('Desk', 'message.record', { ...word, about: 'found', direction: 'in' });
  const { tries, best, bestPhone } = await answers(customerId);
  const shown = tries.map(({ minute, way, answered }) => `${minute / 60} ${way} ${answered ? 'yes' : 'nobody'}`);
  expect(shown).toEqual([
    '14 phone nobody',
    '15 phone nobody',
    '16 phone nobody',
    `${490 / 60} phone yes`,
    `${520 / 60} phone yes`,
    `${560 / 60} phone yes`,
    '13 phone nobody',
    '14.5 message yes',
  ]);
  const morning = { from: 450, to: 570, answered: 3, tries: 3 };
  expect({ best, bestPhone }).toEqual({ best: morning, bestPhone: morning });
  const { rows } = await garage.did('Desk', 'reminder.list', { carId });
  expect(rows[0]?.customer?.bestPhone).toEqual(morning);
  const log = await garage.did('Desk', 'message.list', { customerId });
  expect(log.rows.find((row) => row.kind === 'answer')).toMatchObject({ about: 'yes', way: 'phone', upTo: 10_000 });
});

test('what is older than twelve months does not count, and a mechanic is told nothing', async () => {
  const { id, customerId } = await visit();
  await rang(id, '2026-03-10T14:00');
  garage.now = at('2027-03-11T08:00');
  expect((await answers(customerId)).tries).toEqual([]);
  expect(await garage.refused('Runa', 'customer.answers', { id: customerId })).toMatchObject({ code: 'not-allowed' });
});

test('of a joined entry the tries count with the other, asked by either', async () => {
  const first = await visit();
  const { id: into } = await garage.did('Desk', 'customer.add', { name: 'P. Halloran' });
  await rang(first.id, '2026-03-10T14:00');
  await garage.did('Desk', 'customer.join', {
    ...{ fromId: first.customerId, fromRevision: 1, intoId: into, intoRevision: 1 },
  });
  expect((await answers(into)).tries).toHaveLength(1);
  expect((await answers(first.customerId)).tries).toHaveLength(1);
});

test('a car that is gone keeps the plate it had in their time, and says nothing of who has it now', async () => {
  const { customerId, carId } = await visit();
  const cars = async () => garage.did('Desk', 'customer.get', { id: customerId });
  expect(await cars()).toMatchObject({ cars: [{ plate: 'OYB 902', from: '2026-03-10', inShop: 1187 }], carsGone: [] });
  const { id: next } = await garage.did('Desk', 'customer.add', { name: 'Odd Engel' });
  garage.now = at('2026-04-02T08:00');
  await garage.did('Desk', 'car.owner', { id: carId, revision: 1, customerId: next, from: '2026-04-01' });
  await garage.did('Desk', 'car.plate', { id: carId, revision: 2, plate: 'NEW 1', from: '2026-04-02' });
  const theirs = await cars();
  expect(theirs.cars).toEqual([]);
  expect(theirs.carsGone).toMatchObject([{ plate: 'OYB 902', from: '2026-03-10', to: '2026-04-01' }]);
  expect(JSON.stringify(theirs)).not.toContain('Engel');
  expect(await garage.did('Desk', 'customer.get', { id: next })).toMatchObject({
    ...{ cars: [{ plate: 'NEW 1', lastHere: null, inShop: null }], carsGone: [] },
  });
});
