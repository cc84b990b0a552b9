import type { Bearer } from './bearer.ts';
import type { SuppliesRule } from './line.ts';
import { type Money, money, scale, sum, ZERO } from './money.ts';
import type { Steps } from './reckoning.ts';

/**
 * Shop supplies once a sheet: a share of charged labour, at least the floor, at most the cap. Nothing on labour that is
 * given or inside a fixed price, and nothing where no labour is charged. Common practice, no source; a local rule may
 * forbid or limit it.
 */
export function suppliesOf(rule: SuppliesRule, bearers: readonly Bearer[], steps: Steps): Money {
  if (rule.mode === 'itemise') return ZERO;
  const labour = sum(bearers.filter((b) => b.kind === 'labour' && !b.inFixedPrice).map((b) => b.value));
  const supplies = suppliesOn(labour, rule);
  const limits = {
    ...(rule.cap === null ? {} : { cap: rule.cap }),
    ...(rule.floor === null ? {} : { floor: rule.floor }),
  };
  steps.add('supplies', { labour, bp: rule.bp, ...limits }, supplies);
  return supplies;
}

/** The share of `labour` (minor units) that the rule asks for. */
export function suppliesOn(labour: Money, rule: Extract<SuppliesRule, { mode: 'percent' }>): Money {
  if (labour <= 0) return ZERO;
  const atLeast = Math.max(scale(labour, rule.bp, 10_000), rule.floor ?? 0);
  return money(rule.cap === null ? atLeast : Math.min(atLeast, rule.cap));
}
