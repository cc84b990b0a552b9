import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reckonCredit } from '../../../core/money/credit.ts';
import { type CreditRow, creditRows } from '../../../core/money/credit-rows.ts';
import type { SheetTotals } from '../../../core/money/line.ts';
import { money, sum } from '../../../core/money/money.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import { anyRules, anySheet, job, line, plain, sheet } from './sheets.ts';

/** Taxes of one or several papers, tax by tax, without those that come to nothing. */
function taxesIn(totals: readonly SheetTotals[]): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const { tax, amount, oldUnits } of totals.flatMap((one) => one.taxes)) {
    const key = `${tax.id} ${tax.ratePpm} ${oldUnits ?? false}`;
    sums[key] = (sums[key] ?? 0) + amount;
  }
  return Object.fromEntries(Object.entries(sums).filter(([, amount]) => amount !== 0));
}

const all = (rows: readonly CreditRow[]) => rows.map((row) => ({ ...row, creditedBefore: 0, creditNow: row.quantity }));

/** A sale of old units alone is not undone when they come back: their tax may stay. */
const moreThanCores = (rows: readonly CreditRow[]) => rows.some((row) => row.base !== 0 && row.kind !== 'core');

describe('an invoice that is credited whole', () => {
  test('leaves nothing: gross, net and every tax, whatever rules added', () => {
    fc.assert(
      fc.property(anySheet, anyRules, (any, rules) => {
        const billed = reckonSheet(any, rules);
        const rows = creditRows(any, rules);
        fc.pre(moreThanCores(rows));
        const note = reckonCredit(all(rows), rules, any.exempt, true);
        expect([note.net, note.tax, note.gross]).toEqual([billed.net, billed.tax, billed.gross]);
        expect(taxesIn([note])).toEqual(taxesIn([billed]));
        expect(sum(Object.values(note.byKind)) + note.supplies + note.wasteFee).toBe(billed.prices);
      }),
      { numRuns: 500 },
    );
  });

  test('in several notes: the last takes the rest', () => {
    fc.assert(
      fc.property(anySheet, anyRules, fc.array(fc.nat(), { minLength: 40, maxLength: 40 }), (any, rules, cuts) => {
        const billed = reckonSheet(any, rules);
        const rows = creditRows(any, rules);
        fc.pre(moreThanCores(rows));
        const cut = rows.map((row, at) => (cuts[at % 40] ?? 0) % (row.quantity + 1));
        const first = rows.map((row, at) => ({ ...row, creditedBefore: 0, creditNow: cut[at] ?? 0 }));
        const last = first.map((row) => ({
          ...row,
          creditedBefore: row.creditNow,
          creditNow: row.quantity - row.creditNow,
        }));
        const notes = [first, last].map((rowsOf) => reckonCredit(rowsOf, rules, any.exempt, true));
        expect(sum(notes.map(({ gross }) => gross))).toBe(billed.gross);
        expect(sum(notes.map(({ tax }) => tax))).toBe(billed.tax);
        expect(taxesIn(notes)).toEqual(taxesIn([billed]));
      }),
      { numRuns: 500 },
    );
  });

  // By hand: 100.00 labour, 5.00 supplies, 4.50 for waste, 20 % on it: 131.40. One half of the supplies: 2.50 + 0.50.
  test('supplies and the fee for waste stand in rows of their own', () => {
    const rules = {
      ...plain,
      supplies: { mode: 'percent' as const, bp: 500, cap: null, floor: null },
      wasteFee: { amount: money(450), words: 'Waste', when: 'charged' as const },
    };
    const rows = creditRows(sheet([job('a', [line('l', 'labour', 10_000)])]), rules);
    expect(rows.map(({ id, base }) => [id, base])).toEqual([
      ['l', 10_000],
      ['supplies', 500],
      ['waste-fee', 450],
    ]);
    const some = rows.map((row) => ({ ...row, creditedBefore: 0, creditNow: row.id === 'supplies' ? 500 : 0 }));
    const note = reckonCredit(some, rules, false, true);
    expect([note.net, note.tax, note.gross, note.supplies, note.byKind.supplies]).toEqual([250, 50, 300, 250, 0]);
    const whole = reckonCredit(all(rows), rules, false, true);
    expect([whole.gross, whole.supplies, whole.wasteFee, whole.labourHours]).toEqual([13_140, 500, 450, 1000]);
  });

  test('a fixed price that no line carries can be credited, and brings no hours', () => {
    const rows = creditRows(sheet([job('a', [], { fixedPrice: money(9900) })]), plain);
    expect(rows).toMatchObject([{ id: 'fixed-price:a', base: 9900, quantity: 1000 }]);
    expect(reckonCredit(all(rows), plain, false, true)).toMatchObject({ gross: 11_880, labourHours: 0 });
  });
});
