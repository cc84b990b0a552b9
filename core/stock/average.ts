import { type Money, money, roundDivide, sum, ZERO } from '../money/money.ts';

/**
 * A stocked good: quantity in thousandths and what it is worth in minor units. The average is worked from the two and
 * never kept rounded (weighted average at each receipt, as IAS 2 describes it). Parts with a serial number or bought
 * for one job carry their own cost instead.
 */
export interface Stock {
  readonly quantity: number;
  readonly value: Money;
}

export const EMPTY: Stock = { quantity: 0, value: ZERO };

/** Comes in at a unit cost: a receipt, or a customer's return at what it was issued at. */
export function takeIn(stock: Stock, quantity: number, unitCost: Money): Stock {
  return moved(stock, quantity, atUnitCost(quantity, unitCost));
}

/** Goes out at a unit cost: back to the supplier at what was paid. */
export function sendBack(stock: Stock, quantity: number, unitCost: Money): Stock {
  return moved(stock, -quantity, money(-atUnitCost(quantity, unitCost)));
}

/** Goes out at the average. More than is there may go out: the part is on the car, and a count puts it right. */
export function issue(stock: Stock, quantity: number, lastUnitCost: Money): Stock {
  return moved(stock, -quantity, money(-issueCost(stock, quantity, lastUnitCost)));
}

/** What `quantity` costs at the average; at `lastUnitCost` when nothing is there to take an average of. */
export function issueCost(stock: Stock, quantity: number, lastUnitCost: Money): Money {
  if (stock.quantity === 0) return atUnitCost(quantity, lastUnitCost);
  return roundDivide(BigInt(stock.value) * BigInt(quantity), BigInt(stock.quantity));
}

/** Average cost of one whole unit, rounded for showing; null when there is none. */
export function average(stock: Stock): Money | null {
  return stock.quantity === 0 ? null : roundDivide(BigInt(stock.value) * 1000n, BigInt(stock.quantity));
}

function moved(stock: Stock, quantity: number, value: Money): Stock {
  return { quantity: stock.quantity + quantity, value: sum([stock.value, value]) };
}

function atUnitCost(quantity: number, unitCost: Money): Money {
  return roundDivide(BigInt(quantity) * BigInt(unitCost), 1000n);
}
