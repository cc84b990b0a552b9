import { Temporal } from '@js-temporal/polyfill';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, addMonths, daysBetween, isCivilDate, weekday } from '../../../core/time/civil.ts';
import { civilDateOf, instantToWall, minutesBetween, minutesByDay, wallToInstant } from '../../../core/time/instant.ts';

describe('civil dates', () => {
  test('months are clamped to the last day', () => {
    expect(addMonths('2026-01-31', 1)).toBe('2026-02-28');
    expect(addMonths('2024-02-29', 12)).toBe('2025-02-28');
    expect(addMonths('2026-03-31', -1)).toBe('2026-02-28');
  });

  test('days cross years and leap days', () => {
    expect(addDays('2027-12-31', 1)).toBe('2028-01-01');
    expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
    expect(daysBetween('2028-03-01', '2028-02-28')).toBe(-2);
    expect(weekday('2026-03-10')).toBe(2);
  });

  test('dates that do not exist', () => {
    expect(isCivilDate('2026-02-29')).toBe(false);
    expect(isCivilDate('2026-2-9')).toBe(false);
    expect(isCivilDate('2028-02-29')).toBe(true);
    expect(() => addDays('2026-02-30', 1)).toThrow(RangeError);
  });
});

describe('instants', () => {
  test('a wall time that happens twice, and one that never happens', () => {
    const zone = 'Europe/London';
    const [first, second] = [0, 1].map((fold) => wallToInstant('2026-10-25T01:30', zone, fold === 0 ? 0 : 1));
    expect([first, second].map((at) => new Date(at ?? 0).toISOString())).toEqual([
      '2026-10-25T00:30:00.000Z',
      '2026-10-25T01:30:00.000Z',
    ]);
    expect(instantToWall(wallToInstant('2026-03-29T01:30', zone), zone)).toEqual({ date: '2026-03-29', time: '02:30' });
  });

  test('a day that starts at one o’clock is split there', () => {
    // Santiago went forward at midnight on 2023-09-03: that day began at 01:00.
    const zone = 'America/Santiago';
    const [on, off] = [wallToInstant('2023-09-02T23:30', zone), wallToInstant('2023-09-03T02:00', zone)];
    expect([...minutesByDay(on, off, zone)]).toEqual([
      ['2023-09-02', 30],
      ['2023-09-03', 60],
    ]);
  });

  test('the days of a span add up to the span', () => {
    const zones = fc.constantFrom('Europe/London', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'UTC');
    const start = fc.integer({ min: 1_700_000_000_000, max: 1_900_000_000_000 });
    fc.assert(
      fc.property(zones, start, fc.integer({ min: 0, max: 400_000_000 }), (zone, on, length) => {
        const days = minutesByDay(on, on + length, zone);
        expect([...days.values()].reduce((a, b) => a + b, 0)).toBe(minutesBetween(on, on + length));
        if (length > 0) expect([...days.keys()][0]).toBe(civilDateOf(on, zone));
      }),
      { numRuns: 60 },
    );
  });

  test('an unknown zone is refused', () => expect(() => wallToInstant('2026-03-10T08:00', 'Mars/Base')).toThrow());
});

/** The same questions asked of the Temporal polyfill (TC39's own, champions' edition), which shares no code with ours. */
describe('against Temporal', () => {
  const day = fc.integer({ min: -25_567, max: 84_005 }).map((n) => new Date(n * 86_400_000).toISOString().slice(0, 10));
  const plain = (date: string) => Temporal.PlainDate.from(date, { overflow: 'reject' });

  test('civil dates from 1900 to 2199', () => {
    fc.assert(
      fc.property(day, day, fc.integer({ min: -9000, max: 9000 }), (one, other, n) => {
        expect(addDays(one, n)).toBe(plain(one).add({ days: n }).toString());
        expect(addMonths(one, n % 600)).toBe(
          plain(one)
            .add({ months: n % 600 })
            .toString(),
        );
        expect(daysBetween(one, other)).toBe(plain(one).until(plain(other), { largestUnit: 'days' }).days);
        expect(weekday(one)).toBe(plain(one).dayOfWeek);
      }),
      { numRuns: 200 },
    );
  });

  const zone = fc.constantFrom(
    ...['Europe/London', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'America/Santiago'],
    ...['Africa/Casablanca', 'Pacific/Apia', 'America/St_Johns', 'UTC'],
  );
  const span = { min: 631_152_000_000, max: 2_200_000_000_000 };
  const minute = fc.integer(span).map((at) => Math.floor(at / 60_000) * 60_000);

  test('instants on the wall and back, also in the hours when clocks are changed', () => {
    // Every change of the clocks is within two hours of one of these for some run, since they are asked for by name.
    const changes = fc.tuple(zone, fc.integer({ min: 1990, max: 2037 }), fc.integer({ min: -180, max: 180 }));
    const near = changes.map(([name, year, shift]): [string, number] => {
      const start = Temporal.ZonedDateTime.from(`${year}-01-15T00:00[${name}]`);
      const next = start.getTimeZoneTransition('next') ?? start;
      return [name, Math.floor(next.epochMilliseconds / 60_000) * 60_000 + shift * 60_000];
    });
    fc.assert(
      fc.property(fc.oneof(near, fc.tuple(zone, minute)), ([name, at]) => {
        const zoned = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(name);
        const time = zoned.toPlainTime().toString({ smallestUnit: 'minute' });
        expect(instantToWall(at, name)).toEqual({ date: zoned.toPlainDate().toString(), time });
        // The wall time of the same figures in UTC: it may be in a gap or happen twice.
        const wall = new Date(at).toISOString().slice(0, 16);
        for (const [asked, of] of [
          [wall, Temporal.PlainDateTime.from(wall)],
          [`${instantToWall(at, name).date}T${time}`, zoned.toPlainDateTime()],
        ] as const) {
          const there = of.toZonedDateTime(name, { disambiguation: 'compatible' });
          expect(wallToInstant(asked, name)).toBe(there.epochMilliseconds);
          const last = of.toZonedDateTime(name, { disambiguation: 'later' });
          expect(wallToInstant(asked, name, 1)).toBe(last.epochMilliseconds);
        }
      }),
      { numRuns: 300 },
    );
  });
});
