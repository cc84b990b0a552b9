import { type Money, money, scale } from '../money/money.ts';
import { addDays } from '../time/civil.ts';

export interface CoreCredit {
  /** Given back to the customer, before tax. */
  readonly credit: Money;
  /** Given back to the shop by its supplier. */
  readonly supplierCredit: Money;
  /** What the shop keeps of its customer less what it loses to its supplier. */
  readonly shopResult: Money;
}

/** An old unit comes back and is graded (basis points of the full deposit, each side its own grade). */
export function coreCredit(sold: Money, cost: Money, grade: number, supplierGrade: number): CoreCredit {
  const credit = scale(sold, grade, 10_000);
  const supplierCredit = scale(cost, supplierGrade, 10_000);
  return { credit, supplierCredit, shopResult: money(sold - credit - (cost - supplierCredit)) };
}

/** The last civil date on which the old unit may come back. */
export function coreLastDay(soldOn: string, windowDays: number): string {
  return addDays(soldOn, windowDays);
}
