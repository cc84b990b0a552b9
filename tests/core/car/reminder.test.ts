import { expect, test } from 'vitest';
import { paceReadings, trueReadings } from '../../../core/car/readings.ts';
import { ahead, standingOf } from '../../../core/car/reminder.ts';

const read = (on: string, reading: number) => ({ on, reading, event: 'read' as const, newStart: null });
const visits = trueReadings([read('2025-09-01', 38_000), read('2026-03-10', 42_180)]).all;

// T29 of the trade's worked cases (common practice, no source): 22 km a day, due 2026-11-30, 44 380 km on 2026-06-18.
test('whichever comes first: the guessed day of the distance, or the date', () => {
  const rule = { onDate: '2027-03-10', atDistance: 48_000 };
  expect(ahead(visits, rule, 'km', '2026-06-18')).toEqual({
    on: '2026-11-30',
    guessed: true,
    days: 190,
    perDayX100: 2200,
    expected: 44_380,
  });
  expect(ahead(visits, { ...rule, onDate: '2026-10-01' }, 'km', '2026-06-18')).toMatchObject({
    on: '2026-10-01',
    guessed: false,
  });
});

test('without two visits far enough apart, or at no sane pace, the date alone counts', () => {
  const rule = { onDate: '2027-03-10', atDistance: 48_000 };
  const near = trueReadings([read('2026-03-01', 42_000), read('2026-03-10', 42_180)]).all;
  expect(ahead(near, rule, 'km', '2026-06-18')).toMatchObject({ on: '2027-03-10', guessed: false, perDayX100: null });
  const wild = trueReadings([read('2026-01-01', 10_000), read('2026-03-10', 60_000)]).all;
  expect(ahead(wild, { ...rule, atDistance: 70_000 }, 'km', '2026-06-18')).toMatchObject({ on: '2027-03-10' });
  expect(ahead([], { onDate: null, atDistance: 48_000 }, 'km', '2026-06-18').on).toBe(null);
});

test('a distance that is gone already is due since it was read', () => {
  expect(ahead(visits, { onDate: '2027-03-10', atDistance: 42_000 }, 'km', '2026-06-18').on).toBe('2026-03-10');
});

// T30: 95 000 km, a new clock from 0, 3600 on it after 180 days is 98 600 km truly.
test('a replaced clock carries on, and the pace goes over it', () => {
  const { all, carried } = trueReadings([
    read('2025-01-01', 90_000),
    { on: '2025-07-01', reading: 95_000, event: 'replaced', newStart: 0 },
    read('2025-12-28', 3600),
  ]);
  expect(all.at(-1)).toEqual({ on: '2025-12-28', distance: 98_600 });
  expect(carried).toBe(95_000);
  expect(paceReadings(all)?.first.on).toBe('2025-01-01');
});

test('a pace is not taken from more than two years back where something nearer is there', () => {
  const { all } = trueReadings([read('2015-01-01', 1000), read('2024-06-01', 80_000), read('2026-03-10', 90_000)]);
  expect(paceReadings(all)?.first.on).toBe('2024-06-01');
});

test('booked ends a reminder, so does the second no; later is asked on the day they said', () => {
  const no = { outcome: 'no' as const, askOn: null, on: '2026-03-10' };
  expect(standingOf([])).toEqual({ noes: 0, askOn: null, over: '' });
  expect(standingOf([no])).toEqual({ noes: 1, askOn: '2026-04-09', over: '' });
  expect(standingOf([no, { ...no, on: '2026-04-10' }]).over).toBe('two-noes');
  expect(standingOf([{ ...no, outcome: 'later', askOn: '2026-05-01' }]).askOn).toBe('2026-05-01');
  expect(standingOf([{ ...no, outcome: 'nobody' }]).askOn).toBe('2026-03-11');
  expect(standingOf([no, { ...no, outcome: 'booked' }]).over).toBe('booked');
});
