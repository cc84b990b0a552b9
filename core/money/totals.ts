import { type Bearer, bearersOf } from './bearer.ts';
import { oldUnitTaxes, taxesOn } from './core-tax.ts';
import { discountShares } from './discount.ts';
import {
  LINE_KINDS,
  type LineKind,
  type LineTotal,
  type MoneyRules,
  type Sheet,
  type SheetTotals,
  type UnlinedTotal,
} from './line.ts';
import { type Money, money, sum, ZERO } from './money.ts';
import { startSteps } from './reckoning.ts';
import { suppliesOf } from './supplies.ts';
import { taxesOf } from './tax.ts';
import { wasteFeeOf } from './waste-fee.ts';

/**
 * The one reckoning of a sheet: lines, fixed prices, supplies, the fee for waste, discounts, taxes, in that order, in minor units.
 * It depends on the lines and their places only. An exempt customer bears no tax and the prices stand as typed.
 * Throws RangeError when a quantity or price is not a whole number, or a sum leaves the safe range.
 */
export function reckonSheet(sheet: Sheet, rules: MoneyRules): SheetTotals {
  const steps = startSteps();
  const typed = bearersOf(sheet, steps);
  const supplies = suppliesOf(rules.supplies, typed, steps);
  const jobs = jobSums(sheet, typed);
  const wasteFee = wasteFeeOf(rules.wasteFee, sheet, jobs, steps);
  const bearers = [...typed, ...byRule('supplies', supplies), ...byRule('fee', wasteFee)];
  const shares = discountShares(sheet.discounts, bearers, steps);
  const bases = bearers.map((bearer, at) => money(bearer.value - (shares[at] ?? 0)));
  const taxed = bearers.map((bearer, at) => ({
    base: bases[at] ?? ZERO,
    taxes: sheet.exempt ? [] : taxesOn(bearer, rules),
  }));
  const { totals, byLine } = taxesOf(taxed, rules, steps);
  const onOldUnits = oldUnitTaxes(sheet, rules, bearers, bases, steps);
  const taxes = [...totals, ...onOldUnits];

  const prices = sum(bases);
  const tax = sum(taxes.map((total) => total.amount));
  const inclusive = rules.prices === 'inclusive';
  // Prices that hold their tax do not hold the one on old units: it comes on top of them.
  const net = inclusive ? money(prices - sum(totals.map((total) => total.amount))) : prices;
  const gross = money(net + tax);
  steps.add('net', inclusive ? { gross, tax } : { lines: bearers.length }, net);
  steps.add('tax', { taxes: taxes.length }, tax);
  steps.add('gross', inclusive ? { lines: bearers.length } : { net, tax }, gross);

  return {
    lines: bearers.flatMap((bearer, at) =>
      lineTotal(bearer, shares[at] ?? ZERO, bases[at] ?? ZERO, byLine[at] ?? ZERO),
    ),
    unlined: bearers.flatMap((bearer, at) => unlinedTotal(bearer, bases[at] ?? ZERO)),
    jobs,
    byKind: kindSums(typed),
    labourHours: typed.reduce((hours, bearer) => hours + bearer.hours, 0),
    supplies,
    wasteFee,
    discount: sum(shares),
    taxes,
    prices,
    net,
    tax,
    gross,
    reckoning: steps.all,
  };
}

/** What a rule adds to the sheet: it stands on no line and in no job. */
function byRule(kind: LineKind, value: Money): Bearer[] {
  if (value === 0) return [];
  const nowhere = { lineId: null, jobId: null, hours: 0, inFixedPrice: false, exchange: false, untaxed: false };
  return [{ ...nowhere, kind, amount: value, value }];
}

function lineTotal(bearer: Bearer, discountShare: Money, base: Money, tax: Money): LineTotal[] {
  const { lineId, jobId, kind, amount } = bearer;
  return lineId === null || jobId === null ? [] : [{ lineId, jobId, kind, amount, discountShare, base, tax }];
}

function unlinedTotal({ lineId, jobId, kind }: Bearer, base: Money): UnlinedTotal[] {
  if (lineId !== null) return [];
  const what = jobId !== null ? 'fixed-price' : kind === 'supplies' ? 'supplies' : 'waste-fee';
  return [{ what, jobId, kind, base }];
}

function jobSums(sheet: Sheet, bearers: readonly Bearer[]): ReadonlyMap<string, Money> {
  const jobs = new Map<string, Money>(sheet.jobs.map((job) => [job.id, ZERO]));
  for (const { jobId, value } of bearers) if (jobId !== null) jobs.set(jobId, money((jobs.get(jobId) ?? 0) + value));
  return jobs;
}

function kindSums(bearers: readonly Bearer[]): Readonly<Record<LineKind, Money>> {
  const of = (kind: LineKind) => sum(bearers.filter((bearer) => bearer.kind === kind).map((bearer) => bearer.value));
  return Object.fromEntries(LINE_KINDS.map((kind) => [kind, of(kind)])) as Record<LineKind, Money>;
}
