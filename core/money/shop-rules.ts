import type { CoreTax, LineKind, MoneyRules, SuppliesBase, SuppliesRule, Tax, WasteFee } from './line.ts';
import { money } from './money.ts';

/** The shop's settings, as far as sums go. Rates in millionths, shares in basis points, sums in minor units. */
export interface MoneySettings {
  readonly taxes: readonly (Tax & { readonly kinds: readonly LineKind[] })[];
  readonly prices: MoneyRules['prices'];
  readonly taxRounding: MoneyRules['taxRounding'];
  readonly supplies:
    | { readonly mode: 'itemise' }
    | {
        readonly mode: 'percent';
        readonly base?: SuppliesBase | undefined;
        readonly bp: number;
        readonly cap: number | null;
        readonly floor: number | null;
      };
  /** null or left out: none. */
  readonly wasteFee?:
    | { readonly amount: number; readonly words: string; readonly when: WasteFee['when'] }
    | null
    | undefined;
  /** Left out: refunded. `bp` counts for a share alone. */
  readonly coreTax?: { readonly way: CoreTax['way']; readonly bp: number } | undefined;
}

/** For sheets to which no rule adds anything: credits, a fee by itself. */
export const NOTHING_ADDED = { supplies: { mode: 'itemise' }, wasteFee: null } as const;

/** The shop's money rules, as the totals take them. Over the counter nothing is worked on, so no waste is made. */
export function rulesOf(settings: MoneySettings, counterSale = false): MoneyRules {
  const taxes: Partial<Record<LineKind, Tax[]>> = {};
  for (const { id, name, ratePpm, kinds } of settings.taxes) {
    for (const kind of kinds) {
      const all = taxes[kind] ?? [];
      all.push({ id, name, ratePpm });
      taxes[kind] = all;
    }
  }
  const { prices, taxRounding, wasteFee, coreTax } = settings;
  return {
    taxes,
    prices,
    taxRounding,
    supplies: suppliesOf(settings.supplies, counterSale),
    wasteFee:
      !wasteFee || counterSale ? null : { amount: money(wasteFee.amount), words: wasteFee.words, when: wasteFee.when },
    coreTax: coreTax?.way === 'share' ? { way: 'share', bp: coreTax.bp } : { way: coreTax?.way ?? 'refunded' },
  };
}

/** Over the counter a share of parts asks for nothing; what little labour is sold there bears its share as ever. */
function suppliesOf(rule: MoneySettings['supplies'], counterSale: boolean): SuppliesRule {
  const amount = (sum: number | null) => (sum === null ? null : money(sum));
  if (rule.mode === 'itemise') return rule;
  const { base = 'labour' } = rule;
  return counterSale && base === 'parts'
    ? { mode: 'itemise' }
    : {
        mode: 'percent',
        base: counterSale ? 'labour' : base,
        bp: rule.bp,
        cap: amount(rule.cap),
        floor: amount(rule.floor),
      };
}
