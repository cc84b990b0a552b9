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
