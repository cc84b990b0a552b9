import { type Money, money, sum } from '../money/money.ts';

/** What an account owes or will owe, minor units, tax in. */
export interface AccountDebt {
  readonly openInvoices: Money;
  /** Said yes to and not yet invoiced. */
  readonly authorised: Money;
  readonly newJob: Money;
}

export interface Exposure {
  readonly exposure: Money;
  /** By how much it is over the limit; 0 when inside. Exactly at the limit is inside. */
  readonly over: Money;
}

/** Open invoices + work said yes to + the new job against the account's limit (null: none was set). */
export function exposureOf(debt: AccountDebt, limit: Money | null): Exposure {
  const exposure = sum([debt.openInvoices, debt.authorised, debt.newJob]);
  return { exposure, over: money(limit === null ? 0 : Math.max(0, exposure - limit)) };
}

/** Whether an account that wants its order number on the invoice still owes it. */
export function poMissing(required: boolean, po: string): boolean {
  return required && po.trim() === '';
}

/** An order of an account that has a yes and no invoice yet. */
export interface OpenYes {
  readonly orderId: string;
  /** Minor units, tax in. */
  readonly upTo: Money;
  /** What was paid ahead on it. */
  readonly paidAhead: Money;
  /** When the yes that counts was recorded, epoch milliseconds. */
  readonly at: number;
}

/** What a yes adds to what an account will owe: its sum less what was paid ahead, never below nothing. */
export const willOwe = ({ upTo, paidAhead }: Pick<OpenYes, 'upTo' | 'paidAhead'>): Money =>
  money(Math.max(0, upTo - paidAhead));

/**
 * What an account owes and will owe when one of its orders is looked at. What was said yes to before counts before it;
 * what was said later does not, so that a later yes never holds up work that stood inside the limit when it was agreed.
 * `orderId` null: everything that was said yes to, and nothing new.
 */
export function debtOf(openInvoices: Money, yeses: readonly OpenYes[], orderId: string | null): AccountDebt {
  const mine = yeses.find((one) => one.orderId === orderId);
  const before = yeses.filter((one) => one !== mine && (mine === undefined || one.at < mine.at));
  return {
    openInvoices,
    authorised: sum(before.map(willOwe)),
    newJob: mine === undefined ? money(0) : willOwe(mine),
  };
}
