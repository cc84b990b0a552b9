import { type Money, money, roundDivide, scale } from './money.ts';

/** A band of the markup matrix: costs up to and with `upTo` (null: all above) get `bp` on top. */
export interface MarkupBand {
  readonly upTo: Money | null;
  readonly bp: number;
}

/** Cost x (1 + the band's percentage). Bands in rising order; throws RangeError when no band takes the cost. */
export function markedUp(cost: Money, bands: readonly MarkupBand[]): Money {
  const band = bands.find(({ upTo }) => upTo === null || cost <= upTo);
  if (band === undefined) throw new RangeError(`No band for a cost of ${cost}`);
  return scale(cost, 10_000 + band.bp, 10_000);
}

/** As {@link markedUp}, but never below the price of the dearest item of any cheaper band. Common practice, no source. */
export function markedUpGuarded(cost: Money, bands: readonly MarkupBand[]): Money {
  const dearest = bands.flatMap(({ upTo }) => (upTo !== null && upTo < cost ? [markedUp(upTo, bands)] : []));
  return money(Math.max(markedUp(cost, bands), ...dearest));
}

/** Price of outside work: cost plus a percentage, at most `limit` (minor units; null: no limit) on top. */
export function outsidePrice(cost: Money, bp: number, limit: Money | null): Money {
  const share = scale(cost, bp, 10_000);
  return money(cost + (limit === null ? share : Math.min(share, limit)));
}

/** The price at the multiplier that was quoted, on a cost that has moved: quoted price x new cost / quoted cost. */
export function priceAtSameMultiplier(quotedPrice: Money, quotedCost: Money, cost: Money): Money {
  return roundDivide(BigInt(quotedPrice) * BigInt(cost), BigInt(quotedCost));
}
