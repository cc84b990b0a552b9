import { describe, expect, test } from 'vitest';
import { money } from '../../../core/money/money.ts';
import { allowance, NO_ALLOWANCE } from '../../../core/order/allowance.ts';
import { followUp } from '../../../core/order/declined.ts';
import { billedHours } from '../../../core/order/labour.ts';
import { storageDays } from '../../../core/order/storage.ts';

describe('allowance', () => {
  const tenPercent = { ...NO_ALLOWANCE, mode: 'pct' as const, bp: 1000 };

  test('exactly at the limit is inside, one more is not', () => {
    expect(allowance(tenPercent, money(1000), money(1100))).toMatchObject({ mustAsk: false, limit: 1100 });
    expect(allowance(tenPercent, money(1000), money(1101)).mustAsk).toBe(true);
  });

  test('unless the rule says that the edge is outside', () => {
    const rule = { ...tenPercent, edge: 'outside' as const };
    expect(allowance(rule, money(1000), money(1100)).mustAsk).toBe(true);
    expect(allowance(rule, money(1000), money(1099))).toMatchObject({ mustAsk: false, limit: 1099 });
    expect(allowance({ ...NO_ALLOWANCE, edge: 'outside' }, money(1000), money(1000)).mustAsk).toBe(false);
  });

  test('greater, with a cap', () => {
    const rule = { ...tenPercent, mode: 'greater' as const, fixed: money(500), cap: money(400) };
    expect(allowance(rule, money(1000), money(1401))).toMatchObject({ allowed: 400, excess: 401, mustAsk: true });
  });

  test('below the yes nothing is over', () => {
    expect(allowance(NO_ALLOWANCE, money(1000), money(900))).toMatchObject({ excess: 0, mustAsk: false });
  });
});

describe('overlap', () => {
  const booked = (jobId: string, primaryJobId: string | null) => ({
    jobId,
    bookHours: 800,
    overlapHours: 300,
    primaryJobId,
  });

  test('comes back on when the primary job is declined or not on the sheet', () => {
    const bush = booked('bush', 'main');
    expect(billedHours(bush, new Set(['main', 'bush']))).toBe(500);
    expect(billedHours(bush, new Set(['bush']))).toBe(800);
    expect(billedHours(booked('main', null), new Set(['main', 'bush']))).toBe(800);
    expect(billedHours({ ...bush, overlapHours: 900 }, new Set(['main', 'bush']))).toBe(0);
  });

  test('a job is not its own primary', () => {
    expect(billedHours(booked('main', 'main'), new Set(['main']))).toBe(800);
  });
});

test('declined work comes up on its day, and at its distance where the mileage was read', () => {
  expect(followUp('2026-03-10', 42_180, 30, 2_000)).toEqual({ on: '2026-04-09', distance: 44_180 });
  expect(followUp('2026-03-10', null, 30, 2_000).distance).toBeNull();
});

describe('storage', () => {
  const rule = { freeWorkingDays: 3, workingWeekdays: [1, 2, 3, 4, 5], collectionDayCharged: true };

  test('a weekend is no working day', () => {
    expect(storageDays('2026-03-12', '2026-03-18', rule)).toEqual({ firstCharged: '2026-03-18', days: 1 });
  });

  test('fetched in time costs nothing', () => {
    expect(storageDays('2026-03-12', '2026-03-13', rule).days).toBe(0);
  });

  test('a week without a working day is refused, not counted for ever', () => {
    expect(() => storageDays('2026-03-12', '2026-03-13', { ...rule, workingWeekdays: [] })).toThrow(RangeError);
  });
});
