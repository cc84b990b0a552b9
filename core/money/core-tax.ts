import type { Bearer } from './bearer.ts';
import type { CoreTax, LineKind, MoneyRules, Sheet, SheetJob, SheetTotals, Tax, TaxTotal } from './line.ts';
import { type Money, money, scale, sum } from './money.ts';
import { type Steps, startSteps } from './reckoning.ts';
import { taxesOf } from './tax.ts';

/** A rebuilt or reconditioned part is sold against an old unit. */
export const isExchange = ({
  kind,
  condition,
}: {
  readonly kind: LineKind;
  readonly condition: string | null;
}): boolean => kind === 'part' && (condition === 'rebuilt' || condition === 'reconditioned');

const wayOf = (rules: MoneyRules): CoreTax => rules.coreTax ?? { way: 'refunded' };

/** The taxes that fall on a line, or on what a rule adds: those of its kind, but for an old unit's charge that bears none. */
export function taxesOn({ kind, untaxed }: Pick<Bearer, 'kind' | 'untaxed'>, rules: MoneyRules): readonly Tax[] {
  const { way } = wayOf(rules);
  const free = untaxed || (kind === 'core' && (way === 'none' || way === 'share'));
  return free ? [] : (rules.taxes[kind] ?? []);
}

/** Whether the tax on a job's core charges stays when they are credited. */
export function coreTaxStays(job: SheetJob, rules: MoneyRules): boolean {
  const { way } = wayOf(rules);
  return way === 'kept' || (way === 'kept-on-new' && !job.lines.some((line) => line.exchange === true));
}

/** What a sum of a kind comes to without the tax that it holds (inclusive prices). */
export function withoutTax(kind: LineKind, base: Money, { exempt }: Pick<Sheet, 'exempt'>, rules: MoneyRules): Money {
  const taxes = exempt ? [] : taxesOn({ kind, untaxed: false }, rules);
  return money(base - sum(taxesOf([{ base, taxes }], rules, startSteps()).totals.map(({ amount }) => amount)));
}

/** What a sheet charges for old units, without the tax that inclusive prices hold: no sale, since it goes back. Minor units. */
export function coreCharge(totals: SheetTotals, sheet: Pick<Sheet, 'exempt'>, rules: MoneyRules): Money {
  const bases = totals.lines.filter((line) => line.kind === 'core').map(({ base }) => base);
  if (rules.prices === 'exclusive') return sum(bases);
  const parts = rules.taxRounding === 'line' ? bases : [sum(bases)];
  return sum(parts.map((base) => withoutTax('core', base, sheet, rules)));
}

/**
 * The tax on old units taken in exchange, where the rule is a share: one value a job that has a core line which is not
 * given, the share of what its exchange parts come to before tax; the taxes of kind core on top of it, in minor units.
 * @param bases what each bearer comes to less discounts, in the sheet's prices
 */
export function oldUnitTaxes(
  sheet: Sheet,
  rules: MoneyRules,
  bearers: readonly Bearer[],
  bases: readonly Money[],
  steps: Steps,
): TaxTotal[] {
  const rule = wayOf(rules);
  if (rule.way !== 'share' || sheet.exempt) return [];
  const values = sheet.jobs
    .filter(handsIn)
    .map((job) => {
      const exchanged = bearers.flatMap((bearer, at) =>
        bearer.jobId === job.id && bearer.exchange
          ? [{ base: bases[at] ?? money(0), taxes: taxesOn(bearer, rules) }]
          : [],
      );
      const held = rules.prices === 'inclusive' ? taxesOf(exchanged, rules, startSteps()).totals : [];
      const price = money(sum(exchanged.map(({ base }) => base)) - sum(held.map(({ amount }) => amount)));
      const value = scale(price, rule.bp, 10_000);
      if (value !== 0) steps.add('old-unit', { job: job.id, bp: rule.bp, price }, value);
      return value;
    })
    .filter((value) => value !== 0);
  const taxed = values.map((base) => ({ base, taxes: rules.taxes.core ?? [] }));
  const onTop = { prices: 'exclusive', taxRounding: rules.taxRounding } as const;
  const { totals } = taxesOf(taxed, onTop, startSteps());
  for (const { tax, base, amount } of totals) {
    steps.add('old-unit-tax', { tax: tax.id, name: tax.name, ratePpm: tax.ratePpm, base }, amount);
  }
  return totals.map((total) => ({ ...total, oldUnits: true }));
}

/** An old unit comes in for this job: it has a core line, at whatever charge, that was not given away. */
const handsIn = (job: SheetJob): boolean =>
  !job.given && job.lines.some(({ kind, given, quantity }) => kind === 'core' && !given && quantity > 0);
