import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CreditedLine, reckonCredit } from '../../../core/money/credit.ts';
import { LINE_KINDS, type MoneyRules } from '../../../core/money/line.ts';
import { money, sum } from '../../../core/money/money.ts';

const TAXES = [
  { id: 'a', name: 'State', ratePpm: 88_750 },
  { id: 'b', name: 'City', ratePpm: 99_750 },
];

const rules = fc.record({
  prices: fc.constantFrom<MoneyRules['prices']>('exclusive', 'inclusive'),
  taxRounding: fc.constantFrom<MoneyRules['taxRounding']>('document', 'line'),
  labour: fc.subarray(TAXES),
  part: fc.subarray(TAXES),
});

/** A billed line and, for each note, how much of it that note credits; what is over is credited by the last note. */
const NOTES = 4;
const billed = fc.record({
  kind: fc.constantFrom('labour' as const, 'part' as const),
  base: fc.integer({ min: 0, max: 500_000 }),
  quantity: fc.integer({ min: 1, max: 20_000 }),
  cuts: fc.array(fc.nat(), { minLength: NOTES - 1, maxLength: NOTES - 1 }),
});

describe('several credit notes of one paper', () => {
  test('come to the whole paper together, tax and all, whatever each took', () => {
    fc.assert(
      fc.property(fc.array(billed, { minLength: 1, maxLength: 5 }), rules, (lines, { labour, part, ...rest }) => {
        const money_: MoneyRules = { ...rest, taxes: { labour, part }, supplies: { mode: 'itemise' } };
        const marks = lines.map(({ cuts, quantity }) => [
          0,
          ...cuts.map((cut) => cut % (quantity + 1)).toSorted((a, b) => a - b),
          quantity,
        ]);
        const note = (at: number): CreditedLine[] =>
          lines.map(({ kind, base, quantity }, place) => {
            const [from = 0, to = 0] = [marks[place]?.[at], marks[place]?.[at + 1]];
            return { id: `${place}`, kind, base: money(base), quantity, creditedBefore: from, creditNow: to - from };
          });
        const notes = Array.from({ length: NOTES }, (_, at) => reckonCredit(note(at), money_, false));
        const all = lines.map(({ kind, base, quantity }, place) => ({
          ...{ id: `${place}`, kind, base: money(base), quantity },
          ...{ creditedBefore: 0, creditNow: quantity },
        }));
        const whole = reckonCredit(all, money_, false);
        for (const figure of ['net', 'tax', 'gross'] as const)
          expect(sum(notes.map((one) => one[figure]))).toBe(whole[figure]);
        for (const { tax, amount } of whole.taxes) {
          const parts = notes.flatMap((one) => one.taxes.filter((each) => each.tax.id === tax.id));
          expect(sum(parts.map((each) => each.amount))).toBe(amount);
        }
        for (const kind of LINE_KINDS) expect(sum(notes.map((one) => one.byKind[kind]))).toBe(whole.byKind[kind]);
        for (const one of notes) expect(one.gross).toBe(one.net + one.tax);
      }),
    );
  });

  // Worked by hand: 10.00 over three pieces at 20 % is 3.33, 3.34, 3.33 with 0.67, 0.66, 0.67 of tax.
  test('ten over three pieces: the last takes the rest', () => {
    const oneTax: MoneyRules = {
      prices: 'exclusive',
      taxRounding: 'document',
      taxes: { part: [{ id: 't', name: 'Tax', ratePpm: 200_000 }] },
      supplies: { mode: 'itemise' },
    };
    const notes = [0, 1000, 2000].map((creditedBefore) =>
      reckonCredit(
        [{ id: 'l', kind: 'part', base: money(1000), quantity: 3000, creditedBefore, creditNow: 1000 }],
        oneTax,
        false,
      ),
    );
    expect(notes.map(({ net, tax, gross }) => [net, tax, gross])).toEqual([
      [333, 67, 400],
      [334, 66, 400],
      [333, 67, 400],
    ]);
  });

  test('labour hours are those credited', () => {
    const line = { id: 'l', kind: 'labour' as const, base: money(9600), quantity: 2000, creditedBefore: 500 };
    const plain: MoneyRules = {
      prices: 'exclusive',
      taxRounding: 'document',
      taxes: {},
      supplies: { mode: 'itemise' },
    };
    expect(reckonCredit([{ ...line, creditNow: 700 }], plain, false).labourHours).toBe(700);
  });
});
