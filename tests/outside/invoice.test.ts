import { Decimal } from 'decimal.js';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { LINE_KINDS, type LineKind, type MoneyRules, type Sheet, type SheetLine } from '../../core/money/line.ts';
import { money, roundDivide, sum } from '../../core/money/money.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import { checkFile, minor, ppm } from './check-file.ts';

const text = z.string();
const bearing = { cat: text, rate: text.optional() };
const line = z.object({
  ...bearing,
  id: text,
  qty: text,
  price: text,
  baseQty: text.optional(),
  net: text,
  allowances: z.array(z.object({ charge: z.boolean(), amount: text })).optional(),
});
const invoice = z.object({
  file: text,
  lines: z.array(line),
  docAllowancesCharges: z.array(z.object({ ...bearing, charge: z.boolean(), amount: text })),
  vat: z.array(z.object({ ...bearing, taxable: text, tax: text })),
  totals: z.record(text, text),
  totalsConsistent: z.boolean(),
  linesConsistent: z.boolean(),
  deviations: z.array(text).optional(),
});
type Invoice = z.output<typeof invoice>;

const file = checkFile('04a_einvoice_examples.json', z.object({ cases: z.array(invoice).min(1) }));

const taxKey = ({ cat, rate }: { cat: string; rate?: string | undefined }) => `${cat} ${ppm(rate ?? '0')}`;

/** Nets as lines of quantity 1, allowances and charges as lines below and above zero; a kind of line for each rate. */
function sheetOf(
  given: Invoice,
  digits: number,
): { sheet: Sheet; rules: MoneyRules; kinds: ReadonlyMap<string, LineKind> } {
  const sums = [
    ...given.lines.map((one) => ({ key: taxKey(one), amount: minor(one.net, digits) })),
    ...given.docAllowancesCharges.map((one) => ({
      key: taxKey(one),
      amount: money(minor(one.amount, digits) * (one.charge ? 1 : -1)),
    })),
  ];
  const keys = [...new Set(sums.map(({ key }) => key))];
  const kinds = new Map(
    keys.map((key, at) => {
      const kind = LINE_KINDS[at];
      if (kind === undefined) throw new Error('More rates than kinds of line');
      return [key, kind] as const;
    }),
  );
  const lines = sums.map(({ key, amount }, at): SheetLine => {
    return { id: String(at), kind: kinds.get(key) ?? 'fee', quantity: 1000, unitPrice: amount, given: false };
  });
  const taxes = Object.fromEntries(
    [...kinds].map(([key, kind]) => [kind, [{ id: key, name: key, ratePpm: Number(key.split(' ')[1]) }]]),
  );
  return {
    sheet: { jobs: [{ id: 'invoice', lines, given: false }], discounts: [], exempt: false },
    rules: { taxes, prices: 'exclusive', taxRounding: 'document', supplies: { mode: 'itemise' } },
    kinds,
  };
}

/** An invoice that states whole units throughout was reckoned in them: its minor unit is the unit. */
function digitsOf(given: Invoice): number {
  const amounts = [
    ...given.lines.map(({ net }) => net),
    ...given.docAllowancesCharges.map(({ amount }) => amount),
    ...given.vat.flatMap(({ taxable, tax }) => [taxable, tax]),
    ...Object.values(given.totals),
  ];
  return amounts.every((amount) => new Decimal(amount).isInteger()) ? 0 : 2;
}

const short = (path: string) => path.split('/').at(-1) ?? path;
const cases = file?.cases ?? [];
const breaksItsRules = (given: Invoice) => !given.totalsConsistent && digitsOf(given) !== 0;
const leftOut = cases.filter(breaksItsRules);

describe.skipIf(file === null)('EN 16931: totals of the official examples', () => {
  for (const [at, given] of cases.entries()) {
    test(`${at + 1} ${short(given.file)}`, ({ skip }) => {
      if (breaksItsRules(given)) return skip(`left out, it breaks its own rules: ${given.deviations?.[0]}`);
      const digits = digitsOf(given);
      const { sheet, rules, kinds } = sheetOf(given, digits);
      const totals = reckonSheet(sheet, rules);
      const stated = (name: string) => minor(given.totals[name] ?? '0', digits);
      const ofPlaces = (from: number, to: number) => sum(totals.lines.slice(from, to).map(({ base }) => base));

      expect(ofPlaces(0, given.lines.length), 'BR-CO-10').toBe(stated('lineNet'));
      expect(ofPlaces(given.lines.length, totals.lines.length), 'BR-CO-11, 12').toBe(
        stated('charges') - stated('allowances'),
      );
      expect(totals.net, 'BR-CO-13').toBe(stated('taxExclusive'));
      expect(totals.tax, 'BR-CO-14').toBe(stated('tax'));
      expect(totals.gross, 'BR-CO-15').toBe(stated('taxInclusive'));
      expect(totals.gross - stated('prepaid') + stated('rounding'), 'BR-CO-16').toBe(stated('payable'));

      const worked = new Map(totals.taxes.map(({ tax, base, amount }) => [tax.id, { base, amount }]));
      const wanted = new Map(
        given.vat.map((vat) => [taxKey(vat), { base: minor(vat.taxable, digits), amount: minor(vat.tax, digits) }]),
      );
      expect(worked, 'BR-CO-17, taxable by rate').toEqual(wanted);
      expect(worked.size).toBe(kinds.size);
    });
  }
});

/** A line that the program can hold: quantity in thousandths, price in minor units, one line discount at most. */
function asOwnLine(one: z.output<typeof line>): { own: SheetLine } | { because: string } {
  const quantity = new Decimal(one.qty).times(1000);
  const unitPrice = new Decimal(one.price).times(100).div(one.baseQty ?? '1');
  if (!quantity.isInteger()) return { because: 'quantity finer than thousandths' };
  if (!unitPrice.isInteger()) return { because: 'price finer than the minor unit' };
  if (one.allowances?.some(({ charge }) => charge)) return { because: 'charges on the line' };
  const off = sum((one.allowances ?? []).map(({ amount }) => minor(amount)));
  const own: SheetLine = {
    id: one.id,
    kind: 'part',
    quantity: quantity.toNumber(),
    unitPrice: money(unitPrice.toNumber()),
    given: false,
    ...(off === 0 ? {} : { discount: { sum: off } }),
  };
  if (off > roundDivide(BigInt(own.quantity) * BigInt(own.unitPrice), 1000n))
    return { because: 'allowance over the line' };
  return { own };
}

describe.skipIf(file === null)('EN 16931: arithmetic of lines that the program can hold', () => {
  const lines = cases.filter((one) => one.linesConsistent).flatMap((one) => one.lines.map((it) => ({ one, it })));
  const reasons = new Map<string, number>();
  let held = 0;
  for (const { one, it } of lines) {
    const own = asOwnLine(it);
    if ('because' in own) {
      reasons.set(own.because, (reasons.get(own.because) ?? 0) + 1);
      continue;
    }
    held += 1;
    test(`${short(one.file)} line ${it.id}`, () => {
      const sheet: Sheet = { jobs: [{ id: 'job', lines: [own.own], given: false }], discounts: [], exempt: false };
      const rules: MoneyRules = {
        taxes: {},
        prices: 'exclusive',
        taxRounding: 'document',
        supplies: { mode: 'itemise' },
      };
      expect(reckonSheet(sheet, rules).lines[0]?.amount).toBe(minor(it.net));
    });
  }
  test('how many', () => {
    const inconsistent = cases.filter((one) => !one.linesConsistent).length;
    console.log(
      `EN 16931: totals of ${cases.length - leftOut.length} of ${cases.length} invoices` +
        leftOut.map(({ file: name, deviations }) => `; left out ${short(name)} (${deviations?.[0]})`).join('') +
        `. Lines: ${held} of ${lines.length} worked from quantity and price; left out: ` +
        [...reasons].map(([reason, count]) => `${count} ${reason}`).join(', ') +
        `; ${inconsistent} invoices state lines that are not quantity x price.`,
    );
    expect(held).toBeGreaterThan(0);
  });
});
