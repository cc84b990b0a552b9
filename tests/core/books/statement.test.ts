import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AccountEntry, ENTRY_KINDS, type EntryKind, statementOf } from '../../../core/books/statement.ts';
import { money } from '../../../core/money/money.ts';

const entry = (
  kind: EntryKind,
  on: string,
  amount: number,
  item: string | null,
  dueOn: string | null = null,
): AccountEntry => ({ kind, on, amount: money(amount), item, dueOn });

const JUNE = { from: '2026-06-01', until: '2026-06-30' };

describe('the statement of an account', () => {
  // Worked sum of the trade's page: closing = opening + documents - payments.
  test('3850.00 + 2617.80 - 2000.00 = 4467.80, each step said', () => {
    const seen = statementOf(
      [
        entry('invoice', '2026-05-20', 385_000, 'A', '2026-06-19'),
        entry('invoice', '2026-06-10', 261_780, 'B', '2026-07-10'),
        entry('payment', '2026-06-12', -200_000, 'A'),
      ],
      JUNE,
    );
    expect(seen).toMatchObject({ opening: 385_000, closing: 446_780 });
    expect(seen.rows.map(({ balance }) => balance)).toEqual([646_780, 446_780]);
    expect(seen.sums).toEqual({ invoiced: 261_780, credited: 0, paid: 200_000, back: 0, rounding: 0 });
    expect(seen.reckoning.closing).toEqual([
      { rule: 'statement-opening', on: { n: 1, from: '2026-06-01' }, result: 385_000 },
      { rule: 'statement-invoiced', on: {}, result: 261_780 },
      { rule: 'statement-paid', on: {}, result: -200_000 },
      { rule: 'statement-closing', on: { until: '2026-06-30' }, result: 446_780 },
    ]);
    expect(seen.open.map(({ open, daysPastDue }) => [open, daysPastDue])).toEqual([
      [185_000, 11],
      [261_780, -10],
    ]);
  });

  // T33 (tests/trade/scenarios.json), the credit as money taken for work that has no invoice yet.
  test('T33: aged by days past due, the unapplied 40.00 in no bucket, 855.50 in all', () => {
    const due = (amount: number, dueOn: string) => entry('invoice', '2026-03-01', amount, dueOn, dueOn);
    const seen = statementOf(
      [
        due(10_000, '2026-06-30'),
        due(25_000, '2026-05-31'),
        due(7550, '2026-05-30'),
        due(6000, '2026-04-01'),
        due(41_000, '2026-03-31'),
        entry('deposit', '2026-06-02', -4000, 'no invoice yet'),
      ],
      JUNE,
    );
    expect(seen.ageing).toEqual({ buckets: [10_000, 25_000, 7550, 6000, 41_000], unapplied: -4000, total: 85_550 });
    expect(seen.unapplied).toMatchObject([{ item: 'no invoice yet', sum: 4000 }]);
    expect(seen.closing).toBe(85_550);
  });

  test('the oldest is paid first unless told', () => {
    const bills = [
      entry('invoice', '2026-06-02', 10_000, 'younger', '2026-06-20'),
      entry('invoice', '2026-06-01', 5000, 'older', '2026-06-10'),
    ];
    const opens = (...money: AccountEntry[]) =>
      statementOf([...bills, ...money], JUNE).open.map(({ entry: bill, open }) => [bill.item, open]);
    expect(opens(entry('payment', '2026-06-21', -7000, null))).toEqual([['younger', 8000]]);
    expect(opens(entry('payment', '2026-06-21', -7000, 'younger'))).toEqual([
      ['older', 5000],
      ['younger', 3000],
    ]);
    expect(opens(entry('payment', '2026-06-21', -12_000, 'younger'))).toEqual([['older', 5000]]);
    expect(opens(entry('payment', '2026-06-21', -5000, null), entry('payment', '2026-06-20', -5000, 'older'))).toEqual([
      ['younger', 5000],
    ]);
  });

  test('what is over an invoice stands alone, and money that went back does not', () => {
    const all = [
      entry('invoice', '2026-06-01', 10_000, 'A', '2026-06-15'),
      entry('payment', '2026-06-02', -10_000, 'A'),
      entry('credit-note', '2026-06-03', -4000, 'A'),
      entry('invoice', '2026-06-04', 9000, 'B', '2026-06-18'),
    ];
    const favour = statementOf(all, JUNE);
    expect(favour.unapplied).toMatchObject([{ item: 'A', sum: 4000, from: { kind: 'credit-note' } }]);
    expect(favour.open.map(({ open }) => open)).toEqual([9000]);
    const back = statementOf([...all, entry('refund', '2026-06-05', 4000, 'A')], JUNE);
    expect([back.unapplied, back.closing, back.sums.back]).toEqual([[], 9000, 4000]);
  });

  test('days: the first and the last are in it, later ones are not, nothing at all is nothing', () => {
    const on = (day: string) => entry('invoice', day, 100, day);
    const seen = statementOf(['2026-05-31', '2026-06-01', '2026-06-30', '2026-07-01'].map(on), JUNE);
    expect([seen.opening, seen.rows.length, seen.closing]).toEqual([100, 2, 300]);
    expect(statementOf([], JUNE)).toMatchObject({ opening: 0, closing: 0, rows: [], open: [], unapplied: [] });
  });
});

const DAYS = [
  '2026-03-31',
  '2026-04-01',
  '2026-05-30',
  '2026-05-31',
  '2026-06-01',
  '2026-06-15',
  '2026-06-30',
  '2026-07-01',
];
const anyEntry = fc
  .record({
    kind: fc.constantFrom(...ENTRY_KINDS),
    on: fc.constantFrom(...DAYS),
    size: fc.integer({ min: 0, max: 1_000_000 }),
    item: fc.constantFrom('A', 'B', 'C', null),
    dueOn: fc.constantFrom(...DAYS, null),
    less: fc.boolean(),
  })
  .map(({ kind, on, size, item, dueOn, less }) => {
    const owed = kind === 'invoice' || kind === 'refund' || (kind === 'rounding' && !less);
    return entry(kind, on, owed ? size : -size, kind === 'invoice' ? (item ?? 'D') : item, dueOn);
  });

describe('added again from the entries alone', () => {
  test('opening, closing, every balance, and what is open or over, whatever came in', () => {
    fc.assert(
      fc.property(fc.array(anyEntry, { maxLength: 40 }), (entries) => {
        const seen = statementOf(entries, JUNE);
        // BigInt and loops of their own: no part of the reckoning is used again.
        const add = (some: readonly AccountEntry[]) => some.reduce((all, one) => all + BigInt(one.amount), 0n);
        const until = (day: string) => add(entries.filter(({ on }) => on <= day));
        expect(BigInt(seen.opening)).toBe(until('2026-05-31'));
        expect(BigInt(seen.closing)).toBe(until('2026-06-30'));
        const { invoiced, credited, paid, back, rounding } = seen.sums;
        expect(seen.opening + invoiced - credited - paid + back + rounding).toBe(seen.closing);
        seen.rows.forEach(({ balance }, at) => {
          const upTo = seen.rows.slice(0, at + 1).map((row) => row.entry);
          expect(BigInt(balance)).toBe(BigInt(seen.opening) + add(upTo));
        });
        expect(seen.ageing.total).toBe(seen.closing);
        const openSum = seen.open.reduce((all, { open }) => all + open, 0);
        const over = seen.unapplied.reduce((all, one) => all + one.sum, 0);
        expect(openSum - over).toBe(seen.closing);
        expect(seen.ageing.buckets.reduce((all, one) => all + one, 0)).toBe(openSum);
        for (const step of [seen.reckoning.closing])
          expect(step.slice(0, -1).reduce((all, { result }) => all + result, 0)).toBe(step.at(-1)?.result);
      }),
      { numRuns: 2000 },
    );
  });

  test('in whatever order the entries come', () => {
    fc.assert(
      fc.property(fc.array(anyEntry, { maxLength: 20 }), (entries) => {
        const one = statementOf(entries, JUNE);
        const other = statementOf([...entries].reverse(), JUNE);
        expect(other.ageing).toEqual(one.ageing);
        expect([other.opening, other.closing, other.sums]).toEqual([one.opening, one.closing, one.sums]);
      }),
    );
  });
});
