import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { signedIn } from '../people.ts';
import { badInput, held, notFound } from '../refusal.ts';
import type { QuarantineRow } from '../tables.ts';

/** Marks a car or a part as not to be released or used. Returns the id. */
export async function setQuarantine(
  context: Context,
  of: Pick<QuarantineRow, 'work_order_id' | 'what' | 'part_id' | 'words'>,
): Promise<string> {
  const id = newId();
  await context.write.insert('quarantine', {
    id,
    revision: 1,
    ...of,
    person_id: signedIn(context).id,
    at: context.now,
    lifted_at: null,
    lifted_by: null,
    lift_why: '',
  });
  return id;
}

/** Nothing goes on with what is marked and not lifted. Throws held with every mark, the oldest first. */
async function heldWhereMarked(context: Context, on: { order: string } | { part: string }): Promise<void> {
  const marked = context.tx.selectFrom('quarantine').select('words').where('lifted_at', 'is', null).orderBy('at');
  const standing = await ('order' in on
    ? marked.where('work_order_id', '=', on.order).where('what', '=', 'car')
    : marked.where('part_id', '=', on.part)
  ).execute();
  if (standing.length > 0) throw held(standing.map(({ words }) => ({ what: 'quarantine', with: { words } })));
}

/** A car that is not to be released does not leave. */
export const heldCar = (context: Context, orderId: string) => heldWhereMarked(context, { order: orderId });

/** A part that must not be used is drawn for no job. */
export const heldPart = (context: Context, partId: string) => heldWhereMarked(context, { part: partId });

export const quarantineHandlers: Handlers = {
  'quarantine.set': async ({ orderId, what, partId, words }, context) => {
    const { tx } = context;
    const order = await tx.selectFrom('work_order').select('id').where('id', '=', orderId).executeTakeFirst();
    if (!order) throw notFound('order', orderId);
    if (partId !== null) {
      const part = await tx.selectFrom('part').select('id').where('id', '=', partId).executeTakeFirst();
      if (!part) throw notFound('part', partId);
    }
    const of = { work_order_id: orderId, what, part_id: what === 'part' ? partId : null, words };
    return { id: await setQuarantine(context, of), revision: 1 };
  },
  'quarantine.lift': async ({ id, revision, why }, context) => {
    const row = await context.tx.selectFrom('quarantine').select('lifted_at').where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('quarantine', id);
    if (row.lifted_at !== null) throw badInput('id', 'closed-already');
    const patch = { lifted_at: context.now, lifted_by: signedIn(context).id, lift_why: why };
    const next = await context.write.edit('quarantine', id, revision, patch, { why }, (now) => ({
      why: now.lift_why,
    }));
    return { id, revision: next };
  },
};
