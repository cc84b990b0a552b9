import fc from 'fast-check';
import { expect, test } from 'vitest';
import { debtOf, exposureOf, type OpenYes, willOwe } from '../../../core/books/exposure.ts';
import { money } from '../../../core/money/money.ts';

const yes = (orderId: string, at: number, upTo: number, paidAhead = 0): OpenYes => ({
  ...{ orderId, at, upTo: money(upTo), paidAhead: money(paidAhead) },
});

test('T34 by its rows: 3850.00 open, 620.00 said yes to, 600.00 new, against 5000.00', () => {
  const debt = debtOf(money(385_000), [yes('a', 1, 62_000), yes('b', 2, 60_000)], 'b');
  expect(debt).toEqual({ openInvoices: 385_000, authorised: 62_000, newJob: 60_000 });
  expect(exposureOf(debt, money(500_000))).toEqual({ exposure: 507_000, over: 7000 });
});

test('of two yeses of one instant neither was there before the other: each stands for itself', () => {
  const both = [yes('a', 5, 62_000), yes('b', 5, 60_000)];
  expect(debtOf(money(0), both, 'a')).toMatchObject({ authorised: 0, newJob: 62_000 });
  expect(debtOf(money(0), both, 'b')).toMatchObject({ authorised: 0, newJob: 60_000 });
});

test('what was paid ahead is not owed again, and never makes room beyond its own order', () => {
  expect(willOwe(yes('a', 1, 62_000, 2000))).toBe(60_000);
  expect(willOwe(yes('a', 1, 62_000, 70_000))).toBe(0);
});

test('the first of several yeses sees only itself, the last sees all; none new sees all as said yes to', () => {
  const sums = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(sums, fc.integer({ min: 0, max: 1_000_000 }), (upTos, open) => {
      const all = upTos.map((upTo, at) => yes(`${at}`, at, upTo));
      const whole = open + upTos.reduce((sum, upTo) => sum + upTo, 0);
      const exposure = (orderId: string | null) => exposureOf(debtOf(money(open), all, orderId), null).exposure;
      expect(exposure(`${all.length - 1}`)).toBe(whole);
      expect(exposure(null)).toBe(whole);
      expect(exposure('0')).toBe(open + (upTos[0] ?? 0));
    }),
  );
});
