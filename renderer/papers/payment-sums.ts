import type { InputOf } from '../../core/contract/index.ts';
import { cashRounding } from '../../core/money/cash.ts';
import { money } from '../../core/money/money.ts';

export type PaymentKind = InputOf<'payment.take'>['kind'];
export type PaymentWay = InputOf<'payment.take'>['way'];

interface Asked {
  readonly kind: PaymentKind;
  readonly way: PaymentWay;
  /** Minor units. */
  readonly amount: number;
  /** What is open before it, minor units; negative where it is the customer's. */
  readonly balance: number;
  /** The smallest coin, minor units. */
  readonly cashStep: number;
}

/**
 * What really changes hands for a payment, minor units, as the shop reckons it when it is taken: a cash sum that settles
 * all that is open is rounded to the coins there are, nothing else is.
 */
export function payable({ kind, way, amount, balance, cashStep }: Asked): { payable: number; difference: number } {
  const settles = way === 'cash' && kind !== 'deposit' && amount === Math.abs(balance);
  return settles ? cashRounding(money(amount), cashStep) : { payable: amount, difference: 0 };
}

const WAYS: readonly string[] = ['cash', 'card', 'transfer'] satisfies PaymentWay[];
const isWay = (way: string): way is PaymentWay => WAYS.includes(way);

/** How it usually goes: a refund the way the money came last, anything else by card. */
export function usualWay(
  kind: PaymentKind,
  earlier: readonly { readonly way: string; readonly amount: number }[],
): PaymentWay {
  const came = earlier.findLast((one) => one.amount > 0 && isWay(one.way))?.way;
  return kind === 'refund' && came !== undefined && isWay(came) ? came : 'card';
}

/** Which payment comes next: a deposit before the invoice, then what is open, or what goes back. */
export function usualKind(invoiced: boolean, balance: number): PaymentKind {
  if (!invoiced) return 'deposit';
  return balance < 0 ? 'refund' : 'payment';
}
