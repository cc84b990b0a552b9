/**
 * The most that one price, line or stock's first filling may come to, minor units. Sums of a whole sheet with its taxes then
 * stay whole numbers that are held exactly.
 */
export const MOST = 900_000_000_000;

/** Whether so much (thousandths) at this price (minor units) comes to no more than the most. */
export const withinMost = (quantity: number, price: number): boolean =>
  BigInt(quantity) * BigInt(price) <= BigInt(MOST) * 1000n;
