import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { signedIn } from '../people.ts';
import { notFound } from '../refusal.ts';
import type { CarMarkRow } from '../tables.ts';

/** The car of an order. Throws not-found for an order that is not there, and for a sale without a car. */
async function carOfOrder(context: Context, orderId: string): Promise<string> {
  const order = await context.tx
    .selectFrom('work_order')
    .select(['car_id', 'counter_sale'])
    .where('id', '=', orderId)
    .executeTakeFirst();
  if (!order) throw notFound('order', orderId);
  if (order.counter_sale === 1) throw notFound('car', order.car_id);
  return order.car_id;
}

/** A mark of this car. Throws not-found for one of another. */
async function markOf(context: Context, carId: string, id: string): Promise<CarMarkRow> {
  const row = await context.tx.selectFrom('car_mark').selectAll().where('id', '=', id).executeTakeFirst();
  if (row?.car_id !== carId) throw notFound('mark', id);
  return row;
}

async function seen(context: Context, markId: string, orderId: string): Promise<void> {
  const before = await context.tx
    .selectFrom('car_mark_seen')
    .select('id')
    .where('car_mark_id', '=', markId)
    .where('work_order_id', '=', orderId)
    .executeTakeFirst();
  if (before) return;
  await context.write.insert('car_mark_seen', {
    ...{ id: newId(), car_mark_id: markId, work_order_id: orderId },
    ...{ person_id: signedIn(context).id, at: context.now },
  });
}

const shown = ({ view, x, y, words, gone_order_id }: CarMarkRow) => ({
  ...{ view, x, y, words, goneOrderId: gone_order_id },
});

export const markHandlers: Handlers = {
  'mark.list': async ({ carId }, context) => {
    const car = await context.tx.selectFrom('car').select('outline').where('id', '=', carId).executeTakeFirst();
    if (!car) throw notFound('car', carId);
    const rows = await context.tx
      .selectFrom('car_mark')
      .innerJoin('work_order', 'work_order.id', 'car_mark.seen_order_id')
      .leftJoin('work_order as gone', 'gone.id', 'car_mark.gone_order_id')
      .selectAll('car_mark')
      .select(['work_order.number', 'work_order.opened_at'])
      .select(['gone.number as gone_number', 'gone.opened_at as gone_at'])
      .where('car_mark.car_id', '=', carId)
      .orderBy('car_mark.id')
      .execute();
    const looks = await context.tx
      .selectFrom('car_mark_seen')
      .innerJoin('car_mark', 'car_mark.id', 'car_mark_seen.car_mark_id')
      .innerJoin('work_order', 'work_order.id', 'car_mark_seen.work_order_id')
      .select(['car_mark_seen.car_mark_id', 'car_mark_seen.work_order_id', 'car_mark_seen.at', 'work_order.number'])
      .where('car_mark.car_id', '=', carId)
      .orderBy('car_mark_seen.at')
      .execute();
    return {
      outline: car.outline,
      rows: rows.map((row) => {
        const first = { orderId: row.seen_order_id, number: row.number, at: row.opened_at };
        const again = looks.findLast((look) => look.car_mark_id === row.id);
        return {
          ...{ id: row.id, revision: row.revision, view: row.view, x: row.x, y: row.y, words: row.words, first },
          last: again === undefined ? first : { orderId: again.work_order_id, number: again.number, at: again.at },
          gone:
            row.gone_order_id === null
              ? null
              : { orderId: row.gone_order_id, number: row.gone_number ?? 0, at: row.gone_at ?? 0 },
        };
      }),
    };
  },
  'mark.walkRound': async ({ orderId, outline, add, still, gone }, context) => {
    const carId = await carOfOrder(context, orderId);
    // The shape is no field that is edited: it does not touch the car's revision, so nobody's edit is held up by it.
    if (outline !== null) await context.write.update('car', carId, { outline });
    for (const id of still) await seen(context, (await markOf(context, carId, id)).id, orderId);
    for (const id of gone) {
      const { gone_order_id, revision } = await markOf(context, carId, id);
      if (gone_order_id === null)
        await context.write.update('car_mark', id, { gone_order_id: orderId, revision: revision + 1 });
    }
    const ids: string[] = [];
    for (const mark of add) {
      const id = newId();
      const place = { view: mark.view, x: mark.x, y: mark.y, words: mark.words };
      await context.write.insert('car_mark', {
        ...{ id, revision: 1, car_id: carId, ...place, seen_order_id: orderId, gone_order_id: null },
      });
      await seen(context, id, orderId);
      ids.push(id);
    }
    return { ids };
  },
  'mark.change': async ({ id, revision, change }, context) => {
    const { goneOrderId, ...place } = change;
    const row = await context.tx.selectFrom('car_mark').select('car_id').where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('mark', id);
    if (typeof goneOrderId === 'string' && (await carOfOrder(context, goneOrderId)) !== row.car_id)
      throw notFound('order', goneOrderId);
    const patch = Object.fromEntries(Object.entries(place).filter(([, value]) => value !== undefined));
    const gone = goneOrderId === undefined ? {} : { gone_order_id: goneOrderId };
    return { id, revision: await context.write.edit('car_mark', id, revision, { ...patch, ...gone }, change, shown) };
  },
};
