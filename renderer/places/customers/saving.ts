import type { OutputOf } from '../../../core/contract/index.ts';
import { act, ask } from '../../state/call.ts';

type Customer = OutputOf<'customer.get'>;

/** How a cell of a customer is saved: the whole row on the revision it was read at. */
export function savingOf(customer: Customer) {
  const { id } = customer;
  return {
    row: customer,
    send: ({ revision, fields }: { readonly revision: number; readonly fields: Customer['fields'] }) =>
      act('customer.change', { id, revision, change: fields }),
    read: () => ask('customer.get', { id }),
  };
}
