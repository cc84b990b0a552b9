import ICAL from 'ical.js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, type PracticeShop, practiceShop } from './practice-shop.ts';

let garage: PracticeShop;
let bayId = '';
const person = (name: string) => garage.people.get(name) ?? '';
beforeEach(async () => {
  garage = await practiceShop();
  bayId = (await garage.did('Desk', 'shop.get', {})).bays[0]?.id ?? '';
});
afterEach(async () => {
  await garage.end();
});

const DAY = '2026-03-12';
const days = { from: DAY, to: DAY };
const book = (plate: string, place: { from: string; hours: number; personId?: string; day?: string }) =>
  garage.did('Desk', 'order.book', {
    customer: { add: { name: `Owner of ${plate}` } },
    car: { add: { plate, words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines, on "overrun"; 80–100.',
    here: false,
    booking: { day: DAY, bayId, ...place },
  });
const capacity = async (day = DAY) => (await garage.did('Runa', 'booking.capacity', { from: day, to: day })).days[0];

describe('hours that can be promised', () => {
  // Common practice, no source: 2 mechanics x 8 h x 0.85 = 13.6 h; 11.2 h booked; 2.4 h free, so 4.5 h do not fit.
  test('present hours x share, less what is booked; a mechanic ill turns it', async () => {
    await book('A 1', { from: '08:00', hours: 4500, personId: person('Runa') });
    await book('A 2', { from: '12:30', hours: 6700 });
    expect(await capacity()).toMatchObject({ present: 16_000, planned: 13_600, booked: 11_200, free: 2400 });
    const away = { personId: person('Piet'), from: DAY, to: DAY, words: 'ill' };
    const { ids } = await garage.did('Desk', 'absence.add', away);
    const ill = await capacity();
    expect(ill).toMatchObject({ present: 8000, planned: 6800, free: -4400 });
    expect(ill?.people).toMatchObject([
      { name: 'Piet', hours: 8000, present: 0, booked: 0, absences: [{ hours: 8000, words: 'ill' }] },
      { name: 'Runa', hours: 8000, present: 8000, booked: 4500, guessed: true },
    ]);
    await garage.did('Desk', 'absence.takeOut', { id: ids[0] ?? '' });
    expect((await capacity())?.free).toBe(2400);
    expect(await garage.refused('Desk', 'absence.takeOut', { id: ids[0] })).toMatchObject({ code: 'not-found' });
  });

  test('twenty hours from Thursday noon take their hours of each day, and clash where they are', async () => {
    const { id } = await book('A 1', { from: '12:00', hours: 20_000, personId: person('Runa') });
    const all = await garage.did('Runa', 'booking.capacity', { from: DAY, to: '2026-03-16' });
    expect(
      all.days.map((one) => [one.day, one.booked, one.people.find(({ name }) => name === 'Runa')?.booked]),
    ).toEqual([
      [DAY, 5500, 5500],
      ['2026-03-13', 9500, 9500],
      ['2026-03-14', 0, 0],
      ['2026-03-15', 0, 0],
      ['2026-03-16', 5000, 5000],
    ]);
    const monday = { from: '2026-03-16', to: '2026-03-16' };
    const whole = { day: DAY, from: '12:00', hours: 20_000 };
    expect((await garage.did('Desk', 'booking.list', monday)).rows).toMatchObject([
      { orderId: id, day: '2026-03-16', from: '08:00', hours: 5000, whole },
    ]);
    const other = await book('A 2', { day: '2026-03-16', from: '12:00', hours: 2000 });
    expect((await garage.did('Desk', 'booking.list', monday)).rows.map((row) => row.clashes)).toEqual([
      [other.id],
      [id],
    ]);
    const file = await garage.did('Desk', 'booking.calendar', { from: DAY, to: '2026-03-16' });
    const starts = new ICAL.Component(ICAL.parse(file.text))
      .getAllSubcomponents('vevent')
      .map((event) => new ICAL.Event(event))
      .map((event) => [event.uid, event.startDate.toString(), event.duration.toSeconds() / 3600]);
    expect(new Set(starts.map(([uid]) => uid)).size).toBe(4);
    expect(starts.map(([, , hours]) => hours)).toEqual([5.5, 9.5, 5, 2]);
    const { revision } = await garage.did('Desk', 'order.get', { id });
    const moved = { bayId, day: '2026-03-13', from: '08:00', hours: 20_000 };
    const { clashes } = await garage.did('Desk', 'booking.change', { orderId: id, revision, booking: moved });
    // Friday, Monday, and an hour on Tuesday: still once with the other car.
    expect(clashes).toMatchObject([{ orderId: other.id, over: 'bay' }]);
  });

  test('a person’s own week counts; a day off has nothing; the share is the shop’s', async () => {
    const { people, revision } = await garage.did('Odile', 'shop.get', {});
    const runa = people.find(({ name }) => name === 'Runa');
    const week = [4000, 4000, 4000, 0, 0, 0, 0];
    await garage.did('Odile', 'person.change', { id: runa?.id ?? '', revision: runa?.revision ?? 1, week });
    await garage.did('Odile', 'shop.change', { revision, settings: { plannedShareBp: 5000 } });
    // 2026-03-12 is a Thursday.
    expect(await capacity()).toMatchObject({ present: 8000, planned: 4000 });
    expect(await capacity('2026-03-11')).toMatchObject({ present: 12_000, planned: 6000 });
    expect(await capacity('2026-03-14')).toMatchObject({ working: false, present: 0, planned: 0, free: 0 });
    const two = await garage.did('Desk', 'absence.add', { personId: person('Runa'), from: '2026-03-11', to: DAY });
    expect(two.ids).toHaveLength(1);
  });

  test('a no-show gives its hours up and is remembered; a new day is a new booking', async () => {
    const { id, customerId } = await book('A 1', { from: '08:00', hours: 3000 });
    expect(await garage.refused('Desk', 'booking.noShow', { orderId: id, revision: 1 })).toMatchObject({
      fields: [{ problem: 'in-the-future' }],
    });
    garage.now = at('2026-03-12T17:00');
    const { revision } = await garage.did('Desk', 'booking.noShow', { orderId: id, revision: 1 });
    expect((await capacity())?.booked).toBe(0);
    expect((await garage.did('Desk', 'booking.list', days)).rows).toMatchObject([
      { noShowAt: garage.now, clashes: [] },
    ]);
    expect(await garage.did('Desk', 'order.get', { id })).toMatchObject({
      booking: null,
      missed: { bay: 'Bay 1', day: DAY, from: '08:00' },
    });
    expect((await garage.did('Desk', 'customer.get', { id: customerId })).noShows).toBe(1);
    const booking = { bayId, day: '2026-03-13', from: '09:00', hours: 3000 };
    const next = await garage.did('Desk', 'booking.change', { orderId: id, revision, booking });
    expect(await garage.did('Desk', 'order.get', { id })).toMatchObject({
      booking: { day: '2026-03-13' },
      missed: null,
    });
    // Said wrongly after all, but it has another day now.
    const wrong = { orderId: id, revision: next.revision, came: true };
    expect(await garage.refused('Desk', 'booking.noShow', wrong)).toMatchObject({ code: 'not-found' });
  });

  test('Today says of which cars it can be said that they did not come: due by their booking, not here, not called off', async () => {
    const { id } = await book('A 1', { from: '08:00', hours: 3000 });
    await book('B 2', { from: '16:00', hours: 1000 });
    const absent = async () => {
      const { rows } = await garage.did('Desk', 'today.get', {});
      return Object.fromEntries(rows.map((row) => [row.plate, row.absent]));
    };
    garage.now = at('2026-03-12T07:59');
    expect(await absent()).toEqual({ 'A 1': null, 'B 2': null });
    garage.now = at('2026-03-12T08:00');
    expect(await absent()).toEqual({ 'A 1': 1, 'B 2': null });
    const { revision } = await garage.did('Desk', 'booking.noShow', { orderId: id, revision: 1 });
    expect(await absent()).toEqual({ 'A 1': null, 'B 2': null });
    const back = await garage.did('Desk', 'booking.noShow', { orderId: id, revision, came: true });
    expect(await absent()).toEqual({ 'A 1': back.revision, 'B 2': null });
    await garage.did('Desk', 'order.arrive', { id, revision: back.revision, mileage: null });
    expect(await absent()).toEqual({ 'A 1': null, 'B 2': null });
  });

  test('a no-show that was said wrongly is taken back; a car that is here is none', async () => {
    const { id } = await book('A 1', { from: '08:00', hours: 3000 });
    garage.now = at('2026-03-12T17:00');
    const { revision } = await garage.did('Desk', 'booking.noShow', { orderId: id, revision: 1 });
    const back = await garage.did('Desk', 'booking.noShow', { orderId: id, revision, came: true });
    expect((await capacity())?.booked).toBe(3000);
    const here = await garage.did('Desk', 'order.arrive', { id, revision: back.revision, mileage: null });
    expect(await garage.refused('Desk', 'booking.noShow', { orderId: id, revision: here.revision })).toMatchObject({
      fields: [{ problem: 'arrived-already' }],
    });
  });

  test('a car that left without work frees its hours', async () => {
    const { id } = await book('A 1', { from: '08:00', hours: 3000 });
    garage.now = at('2026-03-12T08:05');
    const here = await garage.did('Desk', 'order.arrive', { id, revision: 1, mileage: null });
    expect((await capacity())?.booked).toBe(3000);
    await garage.did('Desk', 'order.handOver', { id, revision: here.revision, to: 'the owner' });
    expect((await capacity())?.booked).toBe(0);
    expect((await garage.did('Desk', 'booking.list', days)).rows).toMatchObject([{ leftWithoutWork: true }]);
  });
});

describe('bookings of the shop’s own', () => {
  test('a lift that is examined clashes with cars, is moved, and taken out', async () => {
    const car = await book('A 1', { from: '10:00', hours: 2000 });
    const internal = { bayId, day: DAY, from: '09:00', hours: 2000, words: 'Lift examination' };
    const added = await garage.did('Desk', 'booking.addInternal', { booking: internal });
    expect(added.clashes).toMatchObject([{ orderId: car.id, plate: 'A 1', from: '10:00', over: 'bay' }]);
    const list = await garage.did('Runa', 'booking.list', days);
    expect(list.rows[0]?.clashes).toEqual([added.id]);
    expect(list.internal).toMatchObject([{ words: 'Lift examination', clashes: [car.id] }]);
    expect(list.days).toEqual([{ day: DAY, hours: 4000 }]);
    const moved = { ...internal, from: '08:00', hours: 2000 };
    const next = await garage.did('Desk', 'booking.changeInternal', { id: added.id, revision: 1, booking: moved });
    expect(next).toMatchObject({ revision: 2, clashes: [] });
    const stale = { id: added.id, revision: 1, booking: internal };
    expect(await garage.refused('Desk', 'booking.changeInternal', stale)).toMatchObject({
      code: 'changed-meanwhile',
      now: { from: '08:00', words: 'Lift examination' },
    });
    await garage.did('Desk', 'booking.takeOut', { id: added.id, revision: 2 });
    expect((await garage.did('Desk', 'booking.list', days)).internal).toEqual([]);
    expect((await garage.did('Odile', 'care.verify', {})).sound).toBe(true);
  });

  test('a bay kept for an outside examiner takes no hours of work, one for a mechanic does', async () => {
    const internal = { bayId, day: DAY, from: '08:00', hours: 2000, words: 'Lift examination' };
    const kept = await garage.did('Desk', 'booking.addInternal', { booking: internal });
    expect(await capacity()).toMatchObject({
      booked: 0,
      free: 13_600,
      bays: [{ open: 9500, booked: 2000, free: 7500 }],
    });
    const ours = { ...internal, personId: person('Piet') };
    await garage.did('Desk', 'booking.changeInternal', { id: kept.id, revision: 1, booking: ours });
    expect(await capacity()).toMatchObject({ booked: 2000, free: 11_600 });
  });

  test('one person in two bays at once is told', async () => {
    const { revision, bays } = await garage.did('Odile', 'shop.get', {});
    const more = [...bays.map(({ id, name, words }) => ({ id, name, words })), { id: null, name: 'Bay 2', words: '' }];
    await garage.did('Odile', 'shop.bays', { revision, bays: more });
    const second = (await garage.did('Desk', 'shop.get', {})).bays[1]?.id ?? '';
    const first = await book('A 1', { from: '08:00', hours: 2000, personId: person('Runa') });
    const other = await book('A 2', { from: '13:00', hours: 1000 });
    const booking = { bayId: second, day: DAY, from: '09:00', hours: 1000, personId: person('Runa') };
    const moved = await garage.did('Desk', 'booking.change', { orderId: other.id, revision: 1, booking });
    expect(moved.clashes).toMatchObject([{ orderId: first.id, over: 'person' }]);
    // Moving it without a word of the person leaves the person.
    const { personId: _, ...place } = { ...booking, from: '11:00' };
    await garage.did('Desk', 'booking.change', { orderId: other.id, revision: 2, booking: place });
    expect((await garage.did('Desk', 'booking.list', days)).rows[1]).toMatchObject({ person: 'Runa', clashes: [] });
  });
});

test('the bookings as a calendar file, read back by another program’s reader', async () => {
  await book('A 1', { from: '08:00', hours: 1500 });
  const internal = { bayId, day: '2026-03-13', from: '13:00', hours: 500, words: 'Lift; examined' };
  await garage.did('Desk', 'booking.addInternal', { booking: internal });
  const file = await garage.did('Runa', 'booking.calendar', { from: DAY, to: '2026-03-13' });
  expect(file).toMatchObject({ name: '2026-03-12 2026-03-13.ics', count: 2 });
  const events = new ICAL.Component(ICAL.parse(file.text))
    .getAllSubcomponents('vevent')
    .map((one) => new ICAL.Event(one));
  expect(
    events.map((one) => [one.summary, one.startDate.toJSDate().getTime(), one.endDate.toJSDate().getTime()]),
  ).toEqual([
    ['A 1 Corvane R', at('2026-03-12T08:00'), at('2026-03-12T09:30')],
    ['Lift; examined', at('2026-03-13T13:00'), at('2026-03-13T13:30')],
  ]);
  expect(events[0]?.description).toContain('It whines, on "overrun"; 80–100.');
});
