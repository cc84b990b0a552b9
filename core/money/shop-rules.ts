import type { LineKind, MoneyRules, SuppliesRule, Tax } from './line.ts';
import { money } from './money.ts';

/** The shop's settings, as far as sums go. Rates in millionths, shares in basis points, sums in minor units. */
export interface MoneySettings {
  readonly taxes: readonly (Tax & { readonly kinds: readonly LineKind[] })[];
  readonly prices: MoneyRules['prices'];
  readonly taxRounding: MoneyRules['taxRounding'];
  readonly supplies:
    | { readonly mode: 'itemise' }
    | { readonly mode: 'percent'; readonly bp: number; readonly cap: number | null; readonly floor: number | null };
}

/** The shop's money rules, as the totals take them. */
export function rulesOf(settings: MoneySettings): MoneyRules {
  const taxes: Partial<Record<LineKind, Tax[]>> = {};
  for (const { id, name, ratePpm, kinds } of settings.taxes) {
    for (const kind of kinds) {
      const all = taxes[kind] ?? [];
      all.push({ id, name, ratePpm });
      taxes[kind] = all;
    }
  }
  return { taxes, prices: settings.prices, taxRounding: settings.taxRounding, supplies: suppliesOf(settings.supplies) };
}

function suppliesOf(rule: MoneySettings['supplies']): SuppliesRule {
  const amount = (sum: number | null) => (sum === null ? null : money(sum));
  return rule.mode === 'itemise'
    ? rule
    : { mode: 'percent', bp: rule.bp, cap: amount(rule.cap), floor: amount(rule.floor) };
}
