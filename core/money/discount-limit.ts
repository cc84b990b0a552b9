import { type Money, money, scale } from './money.ts';

/** What some lines would cost, and what discounts take off them; minor units. */
export interface Discounted {
  readonly full: Money;
  /** All discounts on these lines together, the one in question among them. */
  readonly off: Money;
  /** The one in question. */
  readonly asked: Money;
}

export interface DiscountRight {
  readonly inside: boolean;
  /** The greatest sum that the one in question may be. */
  readonly fits: Money;
}

/**
 * Whether a discount is inside what a person may give: all discounts on the same lines together, in basis points of what
 * these would cost. Exactly at the limit is inside.
 */
export function discountRight({ full, off, asked }: Discounted, limitBp: number): DiscountRight {
  const most = scale(full, limitBp, 10_000);
  return { inside: off <= most, fits: money(Math.max(0, most - (off - asked))) };
}
