import type { Bearer } from './bearer.ts';
import type { LineKind, SuppliesBase, SuppliesRule } from './line.ts';
import { type Money, money, scale, sum, ZERO } from './money.ts';
import type { Steps } from './reckoning.ts';

const KINDS: Readonly<Record<SuppliesBase, readonly LineKind[]>> = {
  labour: ['labour'],
  parts: ['part', 'fluid'],
  both: ['labour', 'part', 'fluid'],
};

/**
 * Shop supplies once a sheet: a share of the charged labour, the charged parts and fluids, or both, at least the floor, at
 * most the cap. Nothing on what is given or inside a fixed price, and nothing where nothing of the base is charged.
 * Common practice, no source; a local rule may forbid or limit it.
 */
export function suppliesOf(rule: SuppliesRule, bearers: readonly Bearer[], steps: Steps): Money {
  if (rule.mode === 'itemise') return ZERO;
  const base = rule.base ?? 'labour';
  const kinds = KINDS[base];
  const charged = sum(bearers.filter((b) => kinds.includes(b.kind) && !b.inFixedPrice).map((b) => b.value));
  const supplies = suppliesOn(charged, rule);
  const limits = {
    ...(rule.cap === null ? {} : { cap: rule.cap }),
    ...(rule.floor === null ? {} : { floor: rule.floor }),
  };
  steps.add(base === 'labour' ? 'supplies' : `supplies-${base}`, { [base]: charged, bp: rule.bp, ...limits }, supplies);
  return supplies;
}

/** The share of `charged` (minor units) that the rule asks for. */
function suppliesOn(charged: Money, rule: Extract<SuppliesRule, { mode: 'percent' }>): Money {
  if (charged <= 0) return ZERO;
  const atLeast = Math.max(scale(charged, rule.bp, 10_000), rule.floor ?? 0);
  return money(rule.cap === null ? atLeast : Math.min(atLeast, rule.cap));
}
