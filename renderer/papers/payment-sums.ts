import type { InputOf } from '../../core/contract/index.ts';

export type PaymentKind = InputOf<'payment.take'>['kind'];
export type PaymentWay = InputOf<'payment.take'>['way'];

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
