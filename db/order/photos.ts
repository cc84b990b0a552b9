import type { z } from 'zod';
import type { photoOf, photoRow } from '../../core/contract/photo.ts';
import type { Context } from '../context.ts';
import { notFound } from '../refusal.ts';
import type { PhotoRow } from '../tables.ts';
import { loadOrder } from './load.ts';
import { stepsOf } from './steps.ts';

type PhotoOf = z.output<typeof photoOf>;

const ofRow = (row: Pick<PhotoRow, 'of_what' | 'of_id' | 'step'>): PhotoOf =>
  row.of_what === 'step' ? { what: 'step', id: row.of_id, step: row.step ?? 0 } : { what: row.of_what, id: row.of_id };

/** Whether what a photo is said to be of belongs to the order. Throws not-found. */
export async function checkOf(context: Context, orderId: string, of: PhotoOf): Promise<void> {
  const order = await context.tx.selectFrom('work_order').selectAll().where('id', '=', orderId).executeTakeFirst();
  if (!order) throw notFound('order', orderId);
  if (of.what === 'step') {
    const found = stepsOf(await loadOrder(context, orderId), of.id).some(({ step }) => step.n === of.step);
    if (!found) throw notFound('step', String(of.step));
    return;
  }
  const owner = {
    order: () => of.id === orderId,
    car: () => of.id === order.car_id,
    finding: async () => {
      const row = await context.tx
        .selectFrom('finding')
        .select('work_order_id')
        .where('id', '=', of.id)
        .executeTakeFirst();
      return row?.work_order_id === orderId;
    },
    mark: async () => {
      const row = await context.tx.selectFrom('car_mark').select('car_id').where('id', '=', of.id).executeTakeFirst();
      return row?.car_id === order.car_id;
    },
  }[of.what];
  if (!(await owner())) throw notFound(of.what, of.id);
}

/** The photos of an order or of a car, oldest first. */
export async function photosOf(
  context: Context,
  whose: { readonly orderId: string } | { readonly carId: string },
): Promise<z.output<typeof photoRow>[]> {
  const rows = await context.tx
    .selectFrom('photo')
    .innerJoin('photo_use', 'photo_use.id', 'photo.id')
    .innerJoin('work_order', 'work_order.id', 'photo.work_order_id')
    .innerJoin('person', 'person.id', 'photo.person_id')
    .selectAll('photo')
    .select(['photo_use.revision', 'photo_use.printed', 'photo_use.taken_out', 'work_order.number', 'person.name'])
    .where((on) =>
      'orderId' in whose ? on('photo.work_order_id', '=', whose.orderId) : on('work_order.car_id', '=', whose.carId),
    )
    .orderBy('photo.at')
    .orderBy('photo.id')
    .execute();
  return rows.map((row) => ({
    id: row.id,
    orderId: row.work_order_id,
    orderNumber: row.number,
    of: ofRow(row),
    kind: row.kind,
    bytes: row.size,
    words: row.words,
    at: row.at,
    by: row.name,
    revision: row.revision,
    printed: row.printed === 1,
    takenOut: row.taken_out === 1,
  }));
}
