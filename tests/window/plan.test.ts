import { expect, test } from 'vitest';
import {
  at,
  inLanes,
  minutesTaken,
  type Place,
  shownDays,
  stepped,
  weekOf,
} from '../../renderer/places/bookings/plan.ts';

const place: Place = { bayId: 'one', day: '2026-11-25', from: '09:00', hours: 2500, personId: null };
const days = ['2026-11-24', '2026-11-25'];
const bays = ['one', 'two'];

test('the week of a day begins on Monday; days off stand only where something is booked', () => {
  expect(weekOf('2026-11-25')).toBe('2026-11-23');
  expect(weekOf('2026-11-29')).toBe('2026-11-23');
  const works = [1, 2, 3, 4, 5];
  expect(shownDays('2026-11-23', works, [])).toHaveLength(5);
  expect(shownDays('2026-11-23', works, [{ ...place, day: '2026-11-28' }]).at(-1)).toBe('2026-11-28');
});

test('a quarter of an hour earlier or later, never out of the day', () => {
  expect(stepped(place, 'later', days, bays).from).toBe('09:15');
  expect(stepped(place, 'earlier', days, bays).from).toBe('08:45');
  expect(stepped({ ...place, from: '00:00' }, 'earlier', days, bays).from).toBe('00:00');
  expect(stepped({ ...place, from: '21:30' }, 'later', days, bays).from).toBe('21:30');
  expect(at(place, 607).from).toBe('10:00');
  expect(at(place, 608).from).toBe('10:15');
});

test('up and down go through the bays, and from day to day', () => {
  expect(stepped(place, 'down', days, bays)).toMatchObject({ bayId: 'two', day: '2026-11-25' });
  expect(stepped(place, 'up', days, bays)).toMatchObject({ bayId: 'two', day: '2026-11-24' });
  const last = { ...place, bayId: 'two' };
  expect(stepped(last, 'down', days, bays)).toEqual(last);
});

test('what overlaps stands in another lane; what begins as the other ends does not overlap', () => {
  const next = { ...place, from: '11:30' };
  const over = { ...place, from: '10:00' };
  expect(minutesTaken(place)).toEqual({ from: 540, to: 690 });
  expect(inLanes([next, over, place], (one) => one)).toEqual([[place, next], [over]]);
});
