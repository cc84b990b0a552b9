import { Lift } from '../papers/Quarantine.tsx';
import type { Order } from '../sheet/order.ts';
import { useAsk } from '../state/use-ask.ts';

/** The owner releases what is marked not to be released, where it stops the invoice. */
export function MendQuarantine({ order, words }: { readonly order: Order; readonly words: string }) {
  const rows = useAsk('release.get', { orderId: order.id }).data?.quarantines ?? [];
  const row = rows.find((one) => one.lifted === null && one.words === words);
  return row === undefined ? null : <Lift row={row} />;
}
