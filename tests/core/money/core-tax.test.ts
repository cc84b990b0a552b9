import { describe, expect, test } from 'vitest';
import { type CreditedLine, reckonCredit } from '../../../core/money/credit.ts';
import { creditable } from '../../../core/money/credit-rows.ts';
import type { CoreTax, MoneyRules } from '../../../core/money/line.ts';
import { money } from '../../../core/money/money.ts';
import { reckonSheet } from '../../../core/money/totals.ts';
import { everything, job, line, plain, sheet, tax } from './sheets.ts';

const VAT = { ...plain, taxes: everything(tax('vat', 19)) };
const exchanged = { ...line('unit', 'part', 100_000), exchange: true };
const rules = (coreTax: CoreTax, more: Partial<MoneyRules> = {}): MoneyRules => ({ ...plain, coreTax, ...more });
const figures = ({ net, tax: all, gross }: { net: number; tax: number; gross: number }) => [net, all, gross];

describe('an old unit taken in exchange, taxed at a share of the exchange price', () => {
  const way = { ...VAT, coreTax: { way: 'share', bp: 1000 } } as const;
  const swap = sheet([job('a', [exchanged, line('old', 'core', 0)])]);

  /** Umsatzsteuer-Anwendungserlass 10.5 (3): 1000.00, 190.00 of tax, 19.00 on the old part's 100.00: 1209.00. */
  test('1000.00 + 190.00 + 19.00 = 1209.00', () => {
    const totals = reckonSheet(swap, way);
    expect(figures(totals)).toEqual([100_000, 20_900, 120_900]);
    expect(totals.taxes).toMatchObject([
      { base: 100_000, amount: 19_000 },
      { base: 10_000, amount: 1900, oldUnits: true },
    ]);
    expect(totals.reckoning).toContainEqual({
      rule: 'old-unit',
      on: { job: 'a', bp: 1000, price: 100_000 },
      result: 10_000,
    });
  });

  test('the charge itself bears none: 350.00 more on the bill is 350.00 more, and 350.00 goes back', () => {
    const charged = sheet([job('a', [exchanged, line('old', 'core', 35_000)])]);
    expect(figures(reckonSheet(charged, way))).toEqual([135_000, 20_900, 155_900]);
    const back: CreditedLine = {
      ...{ id: 'old', kind: 'core', base: money(35_000), quantity: 1000, job: 'a' },
      ...{ creditedBefore: 0, creditNow: 1000 },
    };
    expect(figures(reckonCredit([back], way, false))).toEqual([35_000, 0, 35_000]);
  });

  test('prices that hold their tax: 1190.00, and 19.00 on top of them', () => {
    const gross = sheet([job('a', [{ ...exchanged, unitPrice: money(119_000) }, line('old', 'core', 0)])]);
    const totals = reckonSheet(gross, { ...way, prices: 'inclusive' });
    expect(figures(totals)).toEqual([100_000, 20_900, 120_900]);
    expect(totals.prices).toBe(119_000);
  });

  test('none where no old unit comes in, nothing was exchanged, it is given, or the customer is exempt', () => {
    const of = (...lines: Parameters<typeof job>[1]) => reckonSheet(sheet([job('a', lines)]), way).tax;
    expect(of(exchanged)).toBe(19_000);
    expect(of(line('new', 'part', 100_000), line('old', 'core', 0))).toBe(19_000);
    expect(of(exchanged, { ...line('old', 'core', 0), given: true })).toBe(19_000);
    expect(reckonSheet({ ...swap, exempt: true }, way).tax).toBe(0);
  });

  test('a job that is not charged has none, another job’s part is not its exchange price', () => {
    expect(reckonSheet(sheet([job('a', swap.jobs[0]?.lines ?? [], { given: true })]), way).gross).toBe(0);
    const apart = sheet([job('a', [exchanged]), job('b', [line('old', 'core', 0)])]);
    expect(reckonSheet(apart, way).tax).toBe(19_000);
  });
});

describe('a charge of 350.00 that goes back whole (tax of 20 %, T14)', () => {
  const charged = (coreTax: CoreTax) =>
    figures(reckonSheet(sheet([job('a', [line('c', 'core', 35_000)])]), rules(coreTax)));
  const back = (coreTax: CoreTax, more: Partial<CreditedLine> = {}) =>
    figures(
      reckonCredit(
        [
          {
            ...{ id: 'c', kind: 'core', base: money(35_000), quantity: 1000, job: 'a' },
            ...{ creditedBefore: 0, creditNow: 1000 },
            ...more,
          },
        ],
        rules(coreTax),
        false,
      ),
    );

  test('taxed, and the tax goes back with it: 420.00 and 420.00, at 40 % 168.00', () => {
    expect(charged({ way: 'refunded' })).toEqual([35_000, 7000, 42_000]);
    expect(back({ way: 'refunded' })).toEqual([35_000, 7000, 42_000]);
    expect(back({ way: 'refunded' }, { creditNow: 400 })).toEqual([14_000, 2800, 16_800]);
  });

  test('taxed, and the tax stays: 420.00 and 350.00', () => {
    expect(charged({ way: 'kept' })).toEqual([35_000, 7000, 42_000]);
    expect(back({ way: 'kept' }, { taxStays: true })).toEqual([35_000, 0, 35_000]);
  });

  test('held in the price, and the tax stays: 420.00 and 350.00', () => {
    const inclusive = { way: 'kept' } as const;
    const paid = { ...line('c', 'core', 42_000) };
    const billed = sheet([job('a', [paid])]);
    const all = rules(inclusive, { prices: 'inclusive' });
    expect(figures(reckonSheet(billed, all))).toEqual([35_000, 7000, 42_000]);
    const back = { ...creditable(paid, paid.unitPrice, billed, all), creditedBefore: 0, creditNow: 1000 };
    expect(figures(reckonCredit([back], all, false))).toEqual([35_000, 0, 35_000]);
  });

  /** California: on rebuilt parts the tax goes back with the charge, on new ones it stays (its tax office’s guide for auto repair). */
  test('on a new part the tax stays, on a rebuilt one it goes back', () => {
    const all = rules({ way: 'kept-on-new' });
    const core = line('c', 'core', 35_000);
    const backWith = (part: typeof exchanged) => {
      const billed = sheet([job('a', [part, core])]);
      const back = { ...creditable(core, core.unitPrice, billed, all), creditedBefore: 0, creditNow: 1000 };
      return figures(reckonCredit([back], all, false));
    };
    expect(backWith(exchanged)).toEqual([35_000, 7000, 42_000]);
    expect(backWith({ ...exchanged, exchange: false })).toEqual([35_000, 0, 35_000]);
  });

  test('not taxed at all: 350.00 and 350.00', () => {
    expect(charged({ way: 'none' })).toEqual([35_000, 0, 35_000]);
    expect(back({ way: 'none' })).toEqual([35_000, 0, 35_000]);
  });
});
