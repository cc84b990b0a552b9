import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Money, money, roundDivide, sum } from '../../../core/money/money.ts';
import { spread } from '../../../core/money/spread.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import { anyRules, anySheet, everything, job, line, plain, sheet, tax } from './sheets.ts';

describe('any sheet', () => {
  test('its sums add up again', () => {
    fc.assert(
      fc.property(anySheet, anyRules, (any, rules) => {
        const totals = reckonSheet(any, rules);
        const jobs = sum(totals.jobs.values());
        expect(sum(Object.values(totals.byKind))).toBe(jobs);
        const onOldUnits = sum(totals.taxes.filter(({ oldUnits }) => oldUnits).map(({ amount }) => amount));
        const prices = rules.prices === 'inclusive' ? totals.gross - onOldUnits : totals.net;
        expect(totals.prices).toBe(prices);
        expect(jobs + totals.supplies + totals.wasteFee - totals.discount).toBe(prices);
        expect(totals.net + totals.tax).toBe(totals.gross);
        expect(sum(totals.taxes.map(({ amount }) => amount))).toBe(totals.tax);
        expect(totals.lines.map(({ lineId }) => lineId)).toEqual(
          any.jobs.flatMap((one) => one.lines.map(({ id }) => id)),
        );
      }),
    );
  });

  test('a discount takes no line past zero', () => {
    fc.assert(
      fc.property(anySheet, anyRules, (any, rules) => {
        for (const { base, discountShare } of reckonSheet(any, rules).lines) {
          const value = base + discountShare;
          expect(base * value).toBeGreaterThanOrEqual(0);
          expect(Math.abs(base)).toBeLessThanOrEqual(Math.abs(value));
        }
      }),
    );
  });

  test('who typed what when makes no difference: ids and the order of typing are not in the figures', () => {
    fc.assert(
      fc.property(anySheet, anyRules, fc.infiniteStream(fc.integer()), (any, rules, dice) => {
        const typed = any.jobs.flatMap((one, jobAt) => one.lines.map((it, lineAt) => ({ jobAt, lineAt, it })));
        const places = any.jobs.map((one, at) => ({ ...one, id: `job ${at}`, lines: [...one.lines] }));
        for (const place of places) place.lines.length = 0;
        for (const { jobAt, lineAt, it } of shuffled(typed, dice)) {
          const place = places[jobAt];
          if (place !== undefined) place.lines[lineAt] = { ...it, id: `${jobAt} ${lineAt}` };
        }
        expect(figures(reckonSheet({ ...any, jobs: places }, rules))).toEqual(figures(reckonSheet(any, rules)));
      }),
    );
  });

  test('inclusive prices: the gross stays and gross - tax is the net', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -9_999, max: 999_999 }), { minLength: 1 }), rates, (prices, percents) => {
        const taxes = everything(...percents.map((percent, at) => tax(`t${at}`, percent)));
        const lines = prices.map((price, at) => line(String(at), 'part', price));
        const totals = reckonSheet(sheet([job('a', lines)]), { ...plain, taxes, prices: 'inclusive' });
        const rate = Decimal.sum(...percents).div(100);
        const held = new Decimal(sum(prices)).times(rate).div(rate.plus(1)).toDecimalPlaces(0, Decimal.ROUND_HALF_UP);
        expect(totals.gross).toBe(sum(prices));
        expect(totals.tax).toBe(held.toNumber() + 0);
        expect(totals.gross - totals.tax).toBe(totals.net);
      }),
    );
  });
});

const rates = fc.array(fc.constantFrom(5, 6.35, 8.25, 8.875, 9.975, 19, 20, 25), { minLength: 1, maxLength: 3 });

function figures({
  net,
  tax: all,
  gross,
  supplies,
  wasteFee,
  discount,
  labourHours,
  byKind,
  taxes,
  lines,
}: ReturnType<typeof reckonSheet>) {
  const sums = lines.map(({ kind, amount, base, discountShare, tax: own }) => ({
    kind,
    amount,
    base,
    discountShare,
    own,
  }));
  return { net, all, gross, supplies, wasteFee, discount, labourHours, byKind, taxes, sums };
}

function shuffled<T>(items: readonly T[], dice: fc.Stream<number>): T[] {
  return items
    .map((item) => ({ item, by: dice.next().value }))
    .sort((a, b) => a.by - b.by)
    .map(({ item }) => item);
}

describe('spreading', () => {
  const weights = fc.array(fc.integer({ min: 0, max: 10_000_000 }), { minLength: 1, maxLength: 12 });
  const total = fc.integer({ min: -100_000_000, max: 100_000_000 }).map(money);

  test('loses nothing and gives nobody a whole unit too much', () => {
    fc.assert(
      fc.property(total, weights, (all, by) => {
        const shares = spread(all, by);
        expect(sum(shares)).toBe(all);
        const weight = by.reduce((a, b) => a + b, 0);
        if (weight === 0) return;
        for (const [at, share] of shares.entries()) {
          const exact = new Decimal(all).times(by[at] ?? 0).div(weight);
          expect(exact.minus(share).abs().lessThan(1)).toBe(true);
        }
      }),
    );
  });

  test('of equal weights the earlier never gets less', () => {
    // Few different weights, so that many are equal.
    const equal = fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(total, equal, (all, by) => {
        const shares = spread(all, by).map(Math.abs);
        for (const [at, weight] of by.entries()) {
          const later = by.findIndex((other, place) => place > at && other === weight);
          if (later > 0) expect(shares[at]).toBeGreaterThanOrEqual(shares[later] ?? 0);
        }
      }),
    );
  });

  test('a credit line bears its part', () => {
    expect(spread(money(100), [400, -200])).toEqual([200, -100]);
    expect(spread(money(7), [0, 0])).toEqual([7, 0]);
    expect(spread(money(7), [-3, -4])).toEqual([7, 0]);
    expect(spread(money(0), [])).toEqual([]);
    expect(() => spread(money(1), [])).toThrow(RangeError);
  });
});

test('rounding is half away from zero, as decimal.js has it', () => {
  fc.assert(
    fc.property(fc.maxSafeInteger(), fc.integer({ min: 1, max: 10_000_000 }), (numerator, denominator) => {
      const expected = new Decimal(numerator).div(denominator).toDecimalPlaces(0, Decimal.ROUND_HALF_UP).toNumber();
      expect(roundDivide(BigInt(numerator), BigInt(denominator))).toBe((expected + 0) as Money);
    }),
  );
});
