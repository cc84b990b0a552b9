import { z } from 'zod';
import { cashRounding } from '../../core/money/cash.ts';
import { reckonCredit } from '../../core/money/credit.ts';
import {
  LINE_KINDS,
  type LineKind,
  type MoneyRules,
  type Sheet,
  type SheetDiscount,
  type SheetLine,
  type SheetTotals,
} from '../../core/money/line.ts';
import { balancesAfter } from '../../core/money/margin.ts';
import { money, sum } from '../../core/money/money.ts';
import { outsidePrice } from '../../core/money/pricing.ts';
import { reckonSheet } from '../../core/money/totals.ts';
import { type Case, kindOf, mapped, monies, tax, taxed } from './case.ts';

const whole = z.int();

interface CaseLine {
  readonly kind: LineKind;
  readonly quantity: number;
  readonly price: number;
}

const priced = (kind: LineKind, price: number, quantity = 1000): CaseLine => ({ kind, quantity, price });

function sheetOf(lines: readonly CaseLine[], discounts: readonly SheetDiscount[] = [], given = false): Sheet {
  const sheetLines = lines.map(
    ({ kind, quantity, price }, at): SheetLine => ({
      id: String(at),
      kind,
      quantity,
      unitPrice: money(price),
      given: false,
    }),
  );
  return { jobs: [{ id: 'job', lines: sheetLines, given }], discounts, exempt: false };
}

/** Reckons lines under rules that a case changes only where it says so. */
export function reckon(
  lines: readonly CaseLine[],
  rules: Partial<MoneyRules>,
  discounts: readonly SheetDiscount[] = [],
): SheetTotals {
  const plain: MoneyRules = {
    taxes: {},
    prices: 'exclusive',
    taxRounding: 'document',
    supplies: { mode: 'itemise' },
  };
  return reckonSheet(sheetOf(lines, discounts), { ...plain, ...rules });
}

/** A job that is given whole: what the customer pays. */
export function givenJob(price: number, bp: number): number {
  const rules: MoneyRules = {
    taxes: taxed(bp),
    prices: 'exclusive',
    taxRounding: 'document',
    supplies: { mode: 'percent', bp: 500, cap: null, floor: null },
  };
  return reckonSheet(sheetOf([priced('labour', price)], [], true), rules).gross;
}

/** Lines at several rates: each rate has a kind of line to itself, since taxes go by kind. */
function byRate(lines: readonly (readonly [amount: number, bp: number])[]): {
  lines: CaseLine[];
  rules: Partial<MoneyRules>;
} {
  const rates = [...new Set(lines.map(([, bp]) => bp))];
  const kind = (bp: number): LineKind => kindOf(LINE_KINDS[rates.indexOf(bp)] ?? 'more rates than kinds');
  return {
    lines: lines.map(([amount, bp]) => priced(kind(bp), amount)),
    rules: { taxes: Object.fromEntries(rates.map((bp) => [kind(bp), [tax(bp, `tax-${bp}`)]])) },
  };
}

const line = z.strictObject({
  key: z.string(),
  kind: z.string(),
  hours_x100: whole.optional(),
  qty_x1000: whole.optional(),
  unit_price: whole,
});

const quote: Case = mapped(
  z.strictObject({
    lines: z.array(line),
    tax_bp: whole,
    taxable_kinds: z.array(z.string()).optional(),
    tax_level: z.enum(['document', 'line']),
    note: z.string().optional(),
  }),
  (inputs) => {
    const lines = inputs.lines.map((one) =>
      priced(kindOf(one.kind), one.unit_price, one.qty_x1000 ?? (one.hours_x100 ?? 0) * 10),
    );
    const kinds = inputs.taxable_kinds?.map(kindOf);
    const totals = reckon(lines, { taxes: taxed(inputs.tax_bp, kinds), taxRounding: inputs.tax_level });
    return {
      line_nets: totals.lines.map(({ amount }) => amount),
      net_without_core: totals.net - totals.byKind.core,
      taxable: sum(totals.taxes.map(({ base }) => base)),
      net: totals.net,
      tax: totals.tax,
      gross: totals.gross,
    };
  },
);

const shareOf = (totals: SheetTotals) => totals.lines.map(({ discountShare }) => discountShare);
const percent = (on: SheetDiscount['on'], bp: number): SheetDiscount => ({ on, reduction: { bp }, words: 'case' });
const amountOff = (off: number): SheetDiscount => ({ on: 'all', reduction: { sum: money(off) }, words: 'case' });

export const sheetCases: Readonly<Record<string, Case>> = {
  T01: quote,
  T02: quote,
  T03: mapped(z.strictObject({ gross: whole, tax_bp: whole }), ({ gross, tax_bp }) => {
    const totals = reckon([priced('labour', gross)], { taxes: taxed(tax_bp), prices: 'inclusive' });
    return { tax: totals.tax, net: totals.net };
  }),
  T04: mapped(z.strictObject({ line_nets: z.array(whole), tax_bp: whole }), ({ line_nets, tax_bp }) => {
    const lines = line_nets.map((net) => priced('part', net));
    const taxOf = (taxRounding: MoneyRules['taxRounding']) => reckon(lines, { taxes: taxed(tax_bp), taxRounding }).tax;
    return { tax_by_line: taxOf('line'), tax_by_document: taxOf('document') };
  }),
  T05: mapped(z.strictObject({ gross: z.array(whole), step: whole }), ({ gross, step }) => {
    const paid = gross.map((amount) => cashRounding(money(amount), step));
    return { payable: paid.map(({ payable }) => payable), difference: paid.map(({ difference }) => difference) };
  }),
  T08: mapped(z.strictObject({ pct_bp: whole, cap: whole, labour: z.array(whole) }), ({ pct_bp, cap, labour }) => ({
    supplies: labour.map(
      (amount) =>
        reckon([priced('labour', amount)], { supplies: { mode: 'percent', bp: pct_bp, cap: money(cap), floor: null } })
          .supplies,
    ),
  })),
  T09: mapped(
    z.strictObject({
      a: z.strictObject({ labour: whole, parts: whole, labour_disc_bp: whole, tax_bp: whole }),
      b: z.strictObject({ lines: z.array(z.tuple([whole, whole])), discount: whole }),
      c: z.strictObject({ lines: z.array(whole), discount: whole }),
    }),
    ({ a, b, c }) => {
      const onLabour = reckon([priced('labour', a.labour), priced('part', a.parts)], { taxes: taxed(a.tax_bp) }, [
        percent('labour', a.labour_disc_bp),
      ]);
      const rates = byRate(b.lines);
      const twoRates = reckon(rates.lines, rates.rules, [amountOff(b.discount)]);
      const plain = reckon(
        c.lines.map((amount) => priced('part', amount)),
        {},
        [amountOff(c.discount)],
      );
      return {
        a: { discount: onLabour.discount, net: onLabour.net, tax: onLabour.tax, gross: onLabour.gross },
        b: { shares: shareOf(twoRates), tax: twoRates.tax, gross: twoRates.gross },
        c: { shares: shareOf(plain) },
      };
    },
  ),
  T13: mapped(
    z.strictObject({
      teardown_h_x100: whole,
      reassembly_h_x100: whole,
      rate: whole,
      destroyed_parts: whole,
      tax_bp: whole,
      deposit: whole,
    }),
    (inputs) => {
      const totals = reckon(
        [
          priced('labour', inputs.rate, inputs.teardown_h_x100 * 10),
          priced('labour', inputs.rate, inputs.reassembly_h_x100 * 10),
          priced('part', inputs.destroyed_parts),
        ],
        { taxes: taxed(inputs.tax_bp) },
      );
      const [balance = 0] = balancesAfter(totals.gross, [money(inputs.deposit)]);
      return { net: totals.net, tax: totals.tax, gross: totals.gross, refund: Math.max(0, -balance) };
    },
  ),
  T15: mapped(
    z.strictObject({ gross: whole, applied: z.array(z.strictObject({ kind: z.string(), amount: whole })) }),
    ({ gross, applied }) => ({
      balances: balancesAfter(
        money(gross),
        applied.map(({ amount }) => money(amount)),
      ),
    }),
  ),
  T16: mapped(
    z.strictObject({ billed_ml: whole, used_ml: whole, price_per_l: whole, tax_bp: whole }),
    ({ billed_ml, used_ml, price_per_l, tax_bp }) => {
      const taxes = taxed(tax_bp);
      const original = reckon([priced('fluid', price_per_l, billed_ml)], { taxes });
      const rules: MoneyRules = {
        taxes,
        prices: 'exclusive',
        taxRounding: 'document',
        supplies: { mode: 'itemise' },
      };
      const base = original.lines[0]?.base ?? money(0);
      const credited = { id: 'oil', kind: 'fluid' as const, base, quantity: billed_ml, creditedBefore: 0 };
      const credit = reckonCredit([{ ...credited, creditNow: billed_ml - used_ml }], rules, false);
      return {
        credit_net: credit.net,
        credit_tax: credit.tax,
        credit_gross: credit.gross,
        original_gross: original.gross,
        after: original.gross - credit.gross,
      };
    },
  ),
  T44: mapped(z.strictObject({ costs: z.array(whole), pct_bp: whole, cap: whole }), ({ costs, pct_bp, cap }) => ({
    sell: monies(costs).map((cost) => outsidePrice(cost, pct_bp, money(cap))),
  })),
};
