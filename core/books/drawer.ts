import { type Money, money } from '../money/money.ts';

/** A day of the cash drawer, minor units, all above zero. */
export interface DrawerDay {
  readonly float: Money;
  readonly cashIn: Money;
  readonly refunds: Money;
  readonly paidOut: Money;
  readonly drops: Money;
}

/** What should lie in the drawer, and counted less expected: below zero is short. */
export function closeDrawer(day: DrawerDay, counted: Money): { expected: Money; difference: Money } {
  const expected = money(day.float + day.cashIn - day.refunds - day.paidOut - day.drops);
  return { expected, difference: money(counted - expected) };
}
