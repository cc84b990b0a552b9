import type { z } from 'zod';
import type { customerFields } from '../core/contract/desk.ts';
import { CONSENTS, type Consent, type ConsentAnswer, consentAnswer, consentStands } from '../core/customer/consent.ts';
import type { Context } from './context.ts';
import { newId } from './id.ts';
import { signedIn } from './people.ts';
import type { ConsentRow, CustomerRow } from './tables.ts';

type Consents = z.output<typeof customerFields>['consents'];

/** Of a customer whom nobody has asked yet. */
const NOT_ASKED: NonNullable<Consents> = { reminders: null, photos: null, history: null };

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

/** Writes down an answer of which nobody said how it was given. */
const noteUnsaid = (context: Context, customerId: string, what: Consent, answer: ConsentAnswer) =>
  noteConsent(context, customerId, { what, answer, way: 'unsaid', on: context.today });

/** Writes down each answer that a change of the whole entry makes another one; nobody said there how it was given. */
export async function noteChanged(context: Context, customerId: string, was: Consents, now: Consents): Promise<void> {
  for (const what of CONSENTS) {
    const answer = consentAnswer(now?.[what]);
    if (answer !== consentAnswer(was?.[what])) await noteUnsaid(context, customerId, what, answer);
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

/** What an entry had agreed to before another one was joined into it, and with the answers of that one. */
export interface AgreedTogether {
  readonly was: NonNullable<Consents>;
  readonly now: NonNullable<Consents>;
}

/** What a customer has agreed to, as the row keeps it. */
export const agreedIn = (row: Pick<CustomerRow, 'consents'>): NonNullable<Consents> => ({
  ...NOT_ASKED,
  ...(row.consents === null ? {} : (JSON.parse(row.consents) as Consents)),
});

/** Writes down what holds where the last that these entries said is something else. */
async function noteStanding(context: Context, ids: readonly string[], customerId: string, now: Consents) {
  const rows = await consentsOf(context, ids);
  for (const what of CONSENTS) {
    const answer = consentAnswer(now?.[what]);
    if (answer !== (consentStands(rows, what)?.row.answer ?? 'unasked'))
      await noteUnsaid(context, customerId, what, answer);
  }
}

/** An answer that is missing is taken from the other entry, and a no of either holds: whoever said it is not asked again. */
export async function agreeTogether(
  context: Context,
  from: CustomerRow,
  into: CustomerRow,
): Promise<AgreedTogether | null> {
  const [theirs, was] = [agreedIn(from), agreedIn(into)];
  const both = (what: Consent) => (theirs[what] === false ? false : (was[what] ?? theirs[what]));
  const now = { reminders: both('reminders'), photos: both('photos'), history: both('history') };
  if (JSON.stringify(now) === JSON.stringify(was)) return null;
  await context.write.update('customer', into.id, { consents: JSON.stringify(now) });
  await noteStanding(context, [from.id, into.id], into.id, now);
  return { was, now };
}

/** What joining changed goes back, unless it was answered anew since. */
export async function agreeApart(context: Context, into: CustomerRow, changed: AgreedTogether | null): Promise<void> {
  const stands = agreedIn(into);
  if (!changed || JSON.stringify(stands) !== JSON.stringify(changed.now)) return;
  await context.write.update('customer', into.id, { consents: JSON.stringify(changed.was) });
  await noteStanding(context, [into.id], into.id, changed.was);
}
