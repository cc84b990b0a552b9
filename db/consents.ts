import type { z } from 'zod';
import type { customerFields } from '../core/contract/desk.ts';
import { CONSENTS, consentAnswer } from '../core/customer/consent.ts';
import type { Context } from './context.ts';
import { newId } from './id.ts';
import { signedIn } from './people.ts';
import type { ConsentRow } from './tables.ts';

type Consents = z.output<typeof customerFields>['consents'];

/** Of a customer whom nobody has asked yet. */
export const NOT_ASKED: NonNullable<Consents> = { reminders: null, photos: null, history: null };

/** Writes down what a customer said to one thing. */
export async function noteConsent(
  context: Context,
  customerId: string,
  said: Pick<ConsentRow, 'what' | 'answer' | 'way'> & { readonly on: string },
): Promise<void> {
  await context.write.insert('consent', {
    ...{ id: newId(), customer_id: customerId, what: said.what, answer: said.answer, way: said.way, on_day: said.on },
    ...{ person_id: signedIn(context).id, at: context.now },
  });
}

/** Writes down each answer that a change of the whole entry makes another one; nobody said there how it was given. */
export async function noteChanged(context: Context, customerId: string, was: Consents, now: Consents): Promise<void> {
  for (const what of CONSENTS) {
    const answer = consentAnswer(now?.[what]);
    if (answer !== consentAnswer(was?.[what]))
      await noteConsent(context, customerId, { what, answer, way: 'unsaid', on: context.today });
  }
}

/** Everything these entries said, oldest first. */
export async function consentsOf({ tx }: Context, customerIds: readonly string[]) {
  const rows = await tx
    .selectFrom('consent')
    .innerJoin('person', 'person.id', 'consent.person_id')
    .selectAll('consent')
    .select('person.name as by')
    .where('consent.customer_id', 'in', customerIds)
    .orderBy('consent.id')
    .execute();
  return rows.map(({ id, what, answer, way, on_day, by, at }) => ({ id, what, answer, way, on: on_day, by, at }));
}
