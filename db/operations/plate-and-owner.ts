import type { Context, Handlers } from '../context.ts';
import { foldPlate } from '../fold.ts';
import { newId } from '../id.ts';
import { badInput, notFound } from '../refusal.ts';
import { carFieldsOf } from './desk.ts';

/** The row that holds now, closed on the day the next begins. Throws bad-input for a day before it began or still to come. */
async function closeLast(context: Context, table: 'car_plate' | 'car_owner', carId: string, from: string) {
  if (from > context.today) throw badInput('from', 'in-the-future');
  const last = await context.tx
    .selectFrom(table)
    .select(['id', 'from_day'])
    .where('car_id', '=', carId)
    .where('to_day', 'is', null)
    .executeTakeFirst();
  if (!last) return;
  if (from < last.from_day) throw badInput('from', 'before-the-last', { from: last.from_day });
  await context.write.update(table, last.id, { to_day: from });
}

export const plateAndOwnerHandlers: Handlers = {
  'car.plate': async ({ id, revision, plate, from }, context) => {
    const shown = plate.toUpperCase();
    const columns = { plate: shown, find_plate: foldPlate(shown) };
    const next = await context.write.edit('car', id, revision, columns, { plate: shown }, carFieldsOf);
    await closeLast(context, 'car_plate', id, from);
    await context.write.insert('car_plate', { id: newId(), car_id: id, ...columns, from_day: from, to_day: null });
    return { id, revision: next };
  },
  'car.owner': async ({ id, revision, customerId, from }, context) => {
    const customer = await context.tx
      .selectFrom('customer')
      .select('id')
      .where('id', '=', customerId)
      .executeTakeFirst();
    if (!customer) throw notFound('customer', customerId);
    const next = await context.write.edit('car', id, revision, {}, { customerId }, carFieldsOf);
    await closeLast(context, 'car_owner', id, from);
    await context.write.insert('car_owner', {
      id: newId(),
      car_id: id,
      customer_id: customerId,
      from_day: from,
      to_day: null,
    });
    return { id, revision: next };
  },
};
