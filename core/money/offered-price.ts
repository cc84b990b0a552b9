import type { LineKind } from './line.ts';
import { type Money, money } from './money.ts';
import { type MarkupBand, markedUp, markedUpGuarded, outsidePrice } from './pricing.ts';

/** The shop's markups: bands by cost for parts and fluids, a share with a limit for outside work; null: none. */
export interface Markups {
  readonly parts: { readonly bands: readonly MarkupBand[]; readonly guard: boolean } | null;
  readonly outside: { readonly bp: number; readonly limit: Money | null } | null;
}

/** As the settings keep them, in plain minor units. */
export interface MarkupSettings {
  readonly partsMarkup: {
    readonly bands: readonly { readonly upTo: number | null; readonly bp: number }[];
    readonly guard: boolean;
  } | null;
  readonly outsideMarkup: { readonly bp: number; readonly limit: number | null } | null;
}

/** The markups of a shop's settings. */
export function markupsOf({ partsMarkup, outsideMarkup }: MarkupSettings): Markups {
  const sum = (amount: number | null) => (amount === null ? null : money(amount));
  return {
    parts:
      partsMarkup === null
        ? null
        : { guard: partsMarkup.guard, bands: partsMarkup.bands.map(({ upTo, bp }) => ({ upTo: sum(upTo), bp })) },
    outside: outsideMarkup === null ? null : { bp: outsideMarkup.bp, limit: sum(outsideMarkup.limit) },
  };
}

/**
 * What a thing of this kind that costs so much is offered at, minor units; null where no markup of the shop is for it or
 * its cost is not known. It is a proposal: what somebody types stands.
 */
export function offeredPrice(kind: LineKind, cost: number | null, { parts, outside }: Markups): Money | null {
  if (cost === null) return null;
  if (kind === 'outside') return outside === null ? null : outsidePrice(money(cost), outside.bp, outside.limit);
  if ((kind !== 'part' && kind !== 'fluid') || parts === null) return null;
  return (parts.guard ? markedUpGuarded : markedUp)(money(cost), parts.bands);
}
