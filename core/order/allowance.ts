import { type Money, money, scale, sum, ZERO } from '../money/money.ts';

/**
 * How far the same scope may drift in price past a yes before the customer must be asked again: a local rule that the
 * owner fills in. `edge` says whether exactly at the limit is inside; `base` whether sums are compared with or without
 * tax. Percentages in basis points, sums in minor units.
 */
export interface AllowanceRule {
  readonly mode: 'none' | 'pct' | 'lesser' | 'greater';
  readonly bp: number;
  readonly fixed: Money;
  readonly cap: Money | null;
  readonly edge: 'inside' | 'outside';
  readonly base: 'gross' | 'net';
}

/** The default: no drift at all without a yes. */
export const NO_ALLOWANCE: AllowanceRule = {
  mode: 'none',
  bp: 0,
  fixed: ZERO,
  cap: null,
  edge: 'inside',
  base: 'gross',
};

export interface Allowance {
  /** By how much the revised sum is over the yes; 0 when it is not. */
  readonly excess: Money;
  readonly allowed: Money;
  /** The highest sum that stands without a new yes. */
  readonly limit: Money;
  readonly mustAsk: boolean;
}

/**
 * Compares a revised sum with the one said yes to, both on the rule's base, in minor units.
 * The allowance is for price drift of the same scope only: new scope always needs a yes.
 */
export function allowance(rule: AllowanceRule, authorised: Money, revised: Money): Allowance {
  const allowed = allowedDrift(rule, authorised);
  const over = revised - authorised;
  const inside = over <= 0 || (rule.edge === 'inside' || rule.mode === 'none' ? over <= allowed : over < allowed);
  const highest = rule.edge === 'outside' && allowed > 0 ? allowed - 1 : allowed;
  return { excess: money(Math.max(0, over)), allowed, limit: sum([authorised, highest]), mustAsk: !inside };
}

function allowedDrift(rule: AllowanceRule, authorised: Money): Money {
  const share = scale(Math.max(0, authorised), rule.bp, 10_000);
  const drift = { none: 0, pct: share, lesser: Math.min(share, rule.fixed), greater: Math.max(share, rule.fixed) };
  const allowed = drift[rule.mode];
  return money(rule.cap === null ? allowed : Math.min(allowed, rule.cap));
}
