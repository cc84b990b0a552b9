import { afterEach, beforeEach, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
let id = '';
beforeEach(async () => {
  garage = await practiceShop();
  ({ id } = await garage.did('Desk', 'customer.add', { name: 'Ilse Vandermeer' }));
});
afterEach(async () => {
  await garage.end();
});

const get = () => garage.did('Desk', 'customer.get', { id });
type Said = { answer: 'yes' | 'no' | 'unasked'; way: 'person' | 'signed' | 'phone'; on?: string; what?: 'reminders' };
const say = async (said: Said) =>
  garage.did('Desk', 'customer.consent', { id, revision: (await get()).revision, what: 'photos', ...said });

test('a yes and its withdrawal stand with when and how, and who wrote them down', async () => {
  await say({ answer: 'yes', way: 'signed', on: '2026-03-02' });
  garage.now = at('2026-04-12T11:00');
  await say({ answer: 'no', way: 'phone' });
  const { fields, consents } = await get();
  expect(fields.consents).toEqual({ reminders: null, photos: false, history: null });
  expect(consents).toMatchObject([
    { what: 'photos', answer: 'yes', way: 'signed', on: '2026-03-02', by: 'Desk', at: at('2026-03-10T08:00') },
    { what: 'photos', answer: 'no', way: 'phone', on: '2026-04-12', by: 'Desk', at: at('2026-04-12T11:00') },
  ]);
  const copy = await garage.did('Desk', 'privacy.copy', { customerId: id });
  expect(JSON.parse(copy.json)).toMatchObject({
    'what they agreed to': [
      { day: '2026-03-02', what: 'photos', answer: 'yes', how: 'signed' },
      { day: '2026-04-12', what: 'photos', answer: 'no', how: 'phone' },
    ],
  });
  expect(await garage.did('Odile', 'care.verify', {})).toMatchObject({ sound: true });
});

test('an answer that comes with a change of the whole entry is written down, too, as not said how', async () => {
  const change = { consents: { reminders: true, photos: null, history: false } };
  await garage.did('Desk', 'customer.change', { id, revision: 1, change });
  // The same once more is no new answer.
  await garage.did('Desk', 'customer.change', { id, revision: 2, change: { ...change, note: 'Rings back' } });
  expect((await get()).consents).toMatchObject([
    { what: 'reminders', answer: 'yes', way: 'unsaid', on: '2026-03-10' },
    { what: 'history', answer: 'no', way: 'unsaid', on: '2026-03-10' },
  ]);
  const added = await garage.did('Desk', 'customer.add', { name: 'Per Halloran', ...change });
  expect((await garage.did('Desk', 'customer.get', { id: added.id })).consents).toHaveLength(2);
});

test('of joined entries all that was said is told', async () => {
  await say({ answer: 'yes', way: 'person' });
  const into = await garage.did('Desk', 'customer.add', { name: 'I. Vandermeer' });
  await garage.did('Desk', 'customer.join', {
    ...{ fromId: id, fromRevision: 2, intoId: into.id, intoRevision: 1 },
  });
  expect((await garage.did('Desk', 'customer.get', { id: into.id })).consents).toMatchObject([{ answer: 'yes' }]);
});

test('of joined entries a no holds and a missing answer is taken over; parted again, both are as before', async () => {
  await say({ what: 'reminders', answer: 'no', way: 'phone' });
  const consents = { reminders: true, photos: null, history: true };
  const into = await garage.did('Desk', 'customer.add', { name: 'I. Vandermeer', consents });
  const { joinId } = await garage.did('Desk', 'customer.join', {
    ...{ fromId: id, fromRevision: 2, intoId: into.id, intoRevision: 1 },
  });
  const of = async () => (await garage.did('Desk', 'customer.get', { id: into.id })).fields.consents;
  expect(await of()).toEqual({ reminders: false, photos: null, history: true });
  const gone = { id, revision: 3, what: 'photos', answer: 'yes', way: 'person' };
  expect(await garage.refused('Desk', 'customer.consent', gone)).toMatchObject({
    fields: [{ path: 'id', problem: 'joined-already' }],
  });
  await garage.did('Desk', 'customer.part', { joinId });
  expect(await of()).toEqual(consents);
  expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
});

test('a day that is still to come, an entry that was changed meanwhile, and a mechanic are refused', async () => {
  const said = { id, revision: 1, what: 'photos', answer: 'yes', way: 'person' };
  expect(await garage.refused('Desk', 'customer.consent', { ...said, on: '2026-03-11' })).toMatchObject({
    fields: [{ path: 'on', problem: 'in-the-future' }],
  });
  expect(await garage.refused('Desk', 'customer.consent', { ...said, revision: 7 })).toMatchObject({
    code: 'changed-meanwhile',
  });
  expect(await garage.refused('Runa', 'customer.consent', said)).toMatchObject({ code: 'not-allowed' });
  expect((await get()).consents).toEqual([]);
});

test('what is not to be reminded of by a wish to be taken out is a no that is written down', async () => {
  const wish = await garage.did('Odile', 'customer.add', {
    ...{ name: 'Agnes Pell', phone: '555-0155', consents: { reminders: true, photos: null, history: null } },
  });
  const booked = await garage.did('Desk', 'order.book', {
    ...{ customer: { id: wish.id }, car: { add: { words: 'Van', unit: 'km' as const } }, complaint: 'x', here: true },
  });
  await garage.did('Desk', 'reminder.add', { carId: booked.carId, words: 'Oil', dueOn: '2026-09-10' });
  const { revision } = await garage.did('Desk', 'privacy.look', { customerId: wish.id });
  await garage.did('Odile', 'privacy.takeOut', { customerId: wish.id, revision, goes: ['reminders'] });
  const { consents } = await garage.did('Desk', 'customer.get', { id: wish.id });
  expect(consents.map(({ what, answer }) => [what, answer])).toEqual([
    ['reminders', 'yes'],
    ['reminders', 'no'],
  ]);
});
