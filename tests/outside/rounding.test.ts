import { Decimal } from 'decimal.js';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { cashRounding } from '../../core/money/cash.ts';
import { currencyDigits } from '../../core/money/currency.ts';
import type { MoneyRules } from '../../core/money/line.ts';
import { type Money, money, roundDivide } from '../../core/money/money.ts';
import { spread } from '../../core/money/spread.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import { checkFile, minor, ppm } from './check-file.ts';

const text = z.string();
const file = checkFile(
  '04c_rounding_money.json',
  z.object({
    usSalesTaxCases: z.array(z.object({ net: text, ratePct: text, tax: text })).min(1),
    itemVsInvoiceBasis: z.array(
      z.object({ itemNets: z.array(text), ratePct: text, itemBasisTax: text, invoiceBasisTax: text }),
    ),
    euroHalfUp: z.array(z.object({ raw: text, expect: text })),
    cashRoundingCases: z.array(z.object({ amount: text, step: text, expect: text })),
    allocationCases: z.array(z.object({ total: z.int(), weights: z.array(z.int()), expect: z.array(z.int()) })),
    currencies: z.array(z.object({ code: text, minor: z.int() })),
  }),
);

function taxOf(nets: readonly Money[], ratePpm: number, taxRounding: MoneyRules['taxRounding']): Money {
  const lines = nets.map((net, at) => ({
    id: String(at),
    kind: 'part' as const,
    quantity: 1000,
    unitPrice: net,
    given: false,
  }));
  const sheet = { jobs: [{ id: 'job', lines, given: false }], discounts: [], exempt: false };
  const taxes = { part: [{ id: 'tax', name: 'tax', ratePpm }] };
  return reckonSheet(sheet, { taxes, prices: 'exclusive', taxRounding, supplies: { mode: 'itemise' } }).tax;
}

const decimal = (value: Decimal) => minor(value.toDecimalPlaces(2, Decimal.ROUND_HALF_UP).toFixed(2));

/** The file's UK rules are information: a trader may round so, the program does not. */
describe.skipIf(file === null)('rounding and spreading of money', () => {
  for (const { net, ratePct, tax } of file?.usSalesTaxCases ?? []) {
    test(`sales tax of ${ratePct} % on ${net}`, () => {
      expect(taxOf([minor(net)], ppm(ratePct), 'document')).toBe(minor(tax));
      expect(decimal(new Decimal(net).times(ratePct).div(100))).toBe(minor(tax));
    });
  }
  for (const { itemNets, ratePct, itemBasisTax, invoiceBasisTax } of file?.itemVsInvoiceBasis ?? []) {
    test(`by item and by invoice: ${itemNets.join(' + ')} at ${ratePct} %`, () => {
      const nets = itemNets.map((net) => minor(net));
      expect(taxOf(nets, ppm(ratePct), 'line')).toBe(minor(itemBasisTax));
      expect(taxOf(nets, ppm(ratePct), 'document')).toBe(minor(invoiceBasisTax));
    });
  }
  for (const { raw, expect: wanted } of file?.euroHalfUp ?? []) {
    test(`half up: ${raw}`, () => {
      const places = new Decimal(raw).decimalPlaces();
      const digits = BigInt(new Decimal(raw).times(new Decimal(10).pow(places)).toFixed());
      expect(roundDivide(digits * 100n, 10n ** BigInt(places))).toBe(minor(wanted));
      expect(decimal(new Decimal(raw))).toBe(minor(wanted));
    });
  }
  for (const { amount, step, expect: wanted } of file?.cashRoundingCases ?? []) {
    test(`cash: ${amount} with ${step} as the smallest coin`, () => {
      // A card is no cash: nothing is rounded, which is a step of one minor unit.
      const coin = /^[\d.]+$/.test(step) ? minor(step) : 1;
      const { payable, difference } = cashRounding(minor(amount), coin);
      expect(payable).toBe(minor(wanted));
      expect(minor(amount) + difference).toBe(payable);
    });
  }
  for (const { total, weights, expect: wanted } of file?.allocationCases ?? []) {
    test(`${total} over ${weights.join(', ')}`, () => expect(spread(money(total), weights)).toEqual(wanted));
  }
  for (const { code, minor: digits } of file?.currencies ?? []) {
    test(`ISO 4217 ${code}`, () => expect(currencyDigits(code)).toBe(digits));
  }
});
