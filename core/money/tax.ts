import type { MoneyRules, Tax, TaxTotal } from './line.ts';
import { type Money, money, roundDivide, sum } from './money.ts';
import type { Steps } from './reckoning.ts';
import { spread } from './spread.ts';

const MILLION = 1_000_000n;

/** A sum to be taxed, and the taxes that it bears. */
export interface Taxed {
  readonly base: Money;
  readonly taxes: readonly Tax[];
}

export interface Taxes {
  readonly totals: TaxTotal[];
  /** Tax of each sum when taxes are rounded by line, else 0, in the order given. */
  readonly byLine: Money[];
}

/** All taxes of a sheet, rounded by document or by line, on top of prices or held in them. */
export function taxesOf(
  sums: readonly Taxed[],
  rules: Pick<MoneyRules, 'prices' | 'taxRounding'>,
  steps: Steps,
): Taxes {
  const parts = rules.taxRounding === 'line' ? sums : byCombination(sums);
  const work = rules.prices === 'inclusive' ? heldIn : onTop;
  const worked = parts.map((part) => ({ part, amounts: work(part) }));
  const totals = totalsByTax(worked);
  const rule = `tax-${rules.prices}-by-${rules.taxRounding}`;
  if (rules.prices === 'exclusive' && rules.taxRounding === 'document') {
    for (const [at, total] of totals.entries()) {
      totals[at] = { ...total, amount: roundDivide(BigInt(total.base) * BigInt(total.tax.ratePpm), MILLION) };
    }
  }
  for (const { tax, base, amount } of totals) {
    steps.add(rule, { tax: tax.id, name: tax.name, ratePpm: tax.ratePpm, base }, amount);
  }
  const byLine = rules.taxRounding === 'line' ? worked.map(({ amounts }) => sum(amounts)) : sums.map(() => money(0));
  return { totals, byLine };
}

/** Tax on top of a net sum, each tax by itself: round(base x rate). */
function onTop({ base, taxes }: Taxed): Money[] {
  return taxes.map((tax) => roundDivide(BigInt(base) * BigInt(tax.ratePpm), MILLION));
}

/**
 * Tax held in a gross sum: round(gross x R / (1 + R)) with R all rates together, split over several taxes by rate.
 * The net is what is left, so gross - tax = net exactly.
 */
function heldIn({ base, taxes }: Taxed): Money[] {
  const rate = taxes.reduce((all, tax) => all + BigInt(tax.ratePpm), 0n);
  return spread(
    taxes.length === 0 ? money(0) : roundDivide(BigInt(base) * rate, MILLION + rate),
    taxes.map((tax) => tax.ratePpm),
  );
}

const key = (tax: Tax): string => `${tax.id} ${tax.ratePpm}`;

/** Sums that bear the same taxes are one sum, so that rounding happens once for each. */
function byCombination(sums: readonly Taxed[]): Taxed[] {
  const groups = new Map<string, Taxed>();
  for (const { base, taxes } of sums) {
    const name = taxes.map(key).sort().join('|');
    groups.set(name, { base: money(base + (groups.get(name)?.base ?? 0)), taxes: groups.get(name)?.taxes ?? taxes });
  }
  return [...groups.values()];
}

function totalsByTax(worked: readonly { part: Taxed; amounts: readonly Money[] }[]): TaxTotal[] {
  const totals = new Map<string, TaxTotal>();
  for (const { part, amounts } of worked) {
    for (const [at, tax] of part.taxes.entries()) {
      const before = totals.get(key(tax));
      totals.set(key(tax), {
        tax,
        base: money(part.base + (before?.base ?? 0)),
        amount: money((amounts[at] ?? 0) + (before?.amount ?? 0)),
      });
    }
  }
  return [...totals.values()];
}
