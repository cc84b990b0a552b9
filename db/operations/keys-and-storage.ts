import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { storageOf, visitOf } from '../order/storage.ts';
import { signedIn } from '../people.ts';
import { notFound } from '../refusal.ts';

async function orderRow(context: Context, orderId: string) {
  const row = await context.tx.selectFrom('work_order').selectAll().where('id', '=', orderId).executeTakeFirst();
  if (!row) throw notFound('order', orderId);
  return row;
}

export const keysAndStorageHandlers: Handlers = {
  'key.handOut': async ({ orderId, toWhom, words }, context) => {
    await orderRow(context, orderId);
    const id = newId();
    await context.write.insert('key_out', {
      ...{ id, work_order_id: orderId, to_whom: toWhom, words },
      ...{ person_id: signedIn(context).id, at: context.now },
    });
    return { id };
  },
  'key.list': async ({ orderId }, context) => {
    const rows = await context.tx
      .selectFrom('key_out')
      .innerJoin('person', 'person.id', 'key_out.person_id')
      .selectAll('key_out')
      .select('person.name as by')
      .where('work_order_id', '=', orderId)
      .orderBy('key_out.at')
      .orderBy('key_out.id')
      .execute();
    return { rows: rows.map(({ id, at, to_whom: toWhom, words, by }) => ({ id, at, toWhom, words, by })) };
  },
  'storage.get': async ({ orderId, on }, context) => {
    const visit = await visitOf(context, await orderRow(context, orderId));
    const { orders, standing, daysInAll: _, ...storage } = await storageOf(context, visit, on);
    const named = (id: string | undefined) => {
      const order = orders.find((one) => one.id === id);
      return order === undefined ? null : { id: order.id, number: order.number };
    };
    return {
      ...storage,
      standsOn: named(standing?.work_order_id),
      ownOrder: orders[0]?.invoiced === 1,
      visit: visit.id === orderId ? null : named(visit.id),
    };
  },
};
