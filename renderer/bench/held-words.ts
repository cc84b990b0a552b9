import { invoiceOf, type Job, type Order } from '../sheet/order.ts';
import { t } from '../words/t.ts';

/** Why no clock runs and nothing is done on a job, by the same rule as the shop's own; null where work may go on. */
export function heldWords(order: Order, job: Job): string | null {
  const invoice = invoiceOf(order);
  if (invoice !== undefined) return t('held.invoiced', { number: invoice.number });
  if (!job.covered) return t('bench.heldNoYes', { letter: job.letter });
  if (order.poHoldsWork) return t('held.po-before-work', { name: (order.payer ?? order.customer).name });
  if (order.credit?.held) return t('held.beyond-credit-limit', { name: order.credit.name });
  return (order.yes.coveredExcess ?? 0) > 0 ? t('bench.heldBeyond') : null;
}
