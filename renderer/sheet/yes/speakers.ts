import type { InputOf } from '../../../core/contract/index.ts';
import { useSession } from '../../state/session.ts';
import type { Order } from '../order.ts';

export interface Speaker {
  readonly key: string;
  /** '' where the name is typed. */
  readonly name: string;
  readonly role: InputOf<'decision.record'>['spoken']['role'];
  /** How much they may say yes to, minor units; null without a limit. */
  readonly limit: number | null;
}

/**
 * Who may say yes here: the customer, those they named up to their sum, whoever pays, the owner for free work, or
 * somebody else who speaks for the customer or for whoever pays.
 */
export function speakersOf(order: Order): Speaker[] {
  const { customer, payer } = order;
  const me = useSession.getState().person;
  // Only the owner's own code records the owner's yes.
  const owner = me?.role === 'owner' ? me.name : '';
  const free = order.jobs.some((job) => job.kind !== 'charged');
  return [
    { key: 'customer', name: customer.name, role: 'customer', limit: null },
    ...customer.mayYes.map(
      (one): Speaker => ({ key: `named ${one.name}`, name: one.name, role: 'named', limit: one.upTo }),
    ),
    ...(payer === null ? [] : [{ key: 'payer', name: '', role: 'payer', limit: null } as const]),
    ...(free ? [{ key: 'owner', name: owner, role: 'owner', limit: null } as const] : []),
    { key: 'other', name: '', role: 'customer', limit: null },
  ];
}
