import { type BayTime, clashesWith } from '../../core/order/bay-clash.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { badInput, notFound } from '../refusal.ts';
import { openSheet } from './on-the-sheet.ts';

/** Bookings from one day to another with their cars, in the order of the clock; cancelled orders have none. */
async function booked(context: Context, from: string, to: string) {
  const rows = await context.tx
    .selectFrom('booking')
    .innerJoin('bay', 'bay.id', 'booking.bay_id')
    .innerJoin('work_order', 'work_order.id', 'booking.work_order_id')
    .innerJoin('car', 'car.id', 'work_order.car_id')
    .innerJoin('customer', 'customer.id', 'work_order.customer_id')
    .select(['booking.bay_id', 'booking.day', 'booking.from_time', 'booking.hours', 'bay.name as bay'])
    .select(['work_order.id', 'work_order.number', 'work_order.revision', 'work_order.complaint'])
    .select(['work_order.arrived_at', 'work_order.handed_over_at', 'work_order.promise_at'])
    .select(['car.plate', 'car.words', 'customer.name'])
    .where('booking.day', '>=', from)
    .where('booking.day', '<=', to)
    .where('work_order.cancelled_at', 'is', null)
    .orderBy('booking.day')
    .orderBy('booking.from_time')
    .orderBy('work_order.number')
    .execute();
  return rows.map((row) => ({
    orderId: row.id,
    number: row.number,
    revision: row.revision,
    bayId: row.bay_id,
    bay: row.bay,
    day: row.day,
    from: row.from_time,
    hours: row.hours,
    plate: row.plate,
    car: row.words,
    customer: row.name,
    complaint: row.complaint,
    arrivedAt: row.arrived_at,
    handedOverAt: row.handed_over_at,
    promiseAt: row.promise_at,
  }));
}

export const bookingHandlers: Handlers = {
  'booking.change': async ({ orderId, revision, booking }, context) => {
    await openSheet(context, orderId);
    const bay = await context.tx.selectFrom('bay').select('id').where('id', '=', booking.bayId).executeTakeFirst();
    if (!bay) throw notFound('bay', booking.bayId);
    const before = await context.tx
      .selectFrom('booking')
      .selectAll()
      .where('work_order_id', '=', orderId)
      .executeTakeFirst();
    const was = before && { bayId: before.bay_id, day: before.day, from: before.from_time, hours: before.hours };
    const next = await context.write.edit('work_order', orderId, revision, {}, booking, () => was ?? null);
    const columns = { bay_id: bay.id, day: booking.day, from_time: booking.from, hours: booking.hours };
    if (before) await context.write.update('booking', before.id, columns);
    else
      await context.write.insert('booking', {
        id: newId(),
        work_order_id: orderId,
        ...columns,
        revision: null,
        words: null,
        person_id: null,
        no_show_at: null,
        taken_out: null,
      });
    const mine: BayTime = { orderId, ...booking };
    const clashes = clashesWith(mine, await booked(context, booking.day, booking.day));
    return {
      id: orderId,
      revision: next,
      clashes: clashes.map((other) => ({
        orderId: other.orderId,
        number: other.number,
        plate: other.plate,
        from: other.from,
        hours: other.hours,
      })),
    };
  },
  'booking.list': async ({ from, to }, context) => {
    if (to < from) throw badInput('to', 'before-from');
    const rows = await booked(context, from, to);
    const days = new Map<string, number>();
    for (const row of rows) days.set(row.day, (days.get(row.day) ?? 0) + row.hours);
    const bays = await context.tx.selectFrom('bay').select(['id', 'name', 'words']).orderBy('place').execute();
    return {
      bays,
      rows: rows.map((row) => ({ ...row, clashes: clashesWith(row, rows).map((other) => other.orderId) })),
      days: [...days].map(([day, hours]) => ({ day, hours })),
    };
  },
};
