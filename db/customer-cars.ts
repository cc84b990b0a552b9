import type { OutputOf } from '../core/contract/index.ts';
import type { Context } from './context.ts';

type Customer = OutputOf<'customer.get'>;

/**
 * The cars of a customer and those that were once theirs. A car that is gone keeps the plate that it had in their time; who
 * has it now is not told here. Ids are those of an entry and of what was joined into it.
 */
export async function carsOfCustomer(
  { tx }: Context,
  ids: readonly string[],
): Promise<Pick<Customer, 'cars' | 'carsGone'>> {
  const owned = await tx
    .selectFrom('car_owner')
    .innerJoin('car', 'car.id', 'car_owner.car_id')
    .selectAll('car')
    .select(['car_owner.from_day', 'car_owner.to_day'])
    .where('car_owner.customer_id', 'in', ids)
    .orderBy('car_owner.from_day')
    .orderBy('car_owner.id')
    .execute();
  const now = owned.filter((row) => row.to_day === null);
  const has = new Set(now.map((row) => row.id));
  // Bought back, or entered twice under entries that were joined: theirs is what counts.
  const gone = new Map(owned.filter((row) => row.to_day !== null && !has.has(row.id)).map((row) => [row.id, row]));
  const carIds = [...has, ...gone.keys()];
  const plates =
    gone.size === 0
      ? []
      : await tx
          .selectFrom('car_plate')
          .select(['car_id', 'plate', 'from_day', 'to_day'])
          .where('car_id', 'in', [...gone.keys()])
          .orderBy('from_day')
          .execute();
  const visits =
    carIds.length === 0
      ? []
      : await tx
          .selectFrom('work_order')
          .select(['car_id', 'number', 'opened_at', 'arrived_at', 'handed_over_at', 'cancelled_at'])
          .where('car_id', 'in', carIds)
          .where('customer_id', 'in', ids)
          // An order for the storage after a visit is no visit.
          .where('storage_of', 'is', null)
          .orderBy('opened_at')
          .execute();
  const last = new Map(visits.map((row) => [row.car_id, row]));
  const brief = (row: (typeof owned)[number]) => ({
    ...{ id: row.id, vin: row.vin, words: row.words, year: row.year, unit: row.unit },
  });
  return {
    cars: now.map((row) => {
      const visit = last.get(row.id);
      const here = visit !== undefined && visit.arrived_at !== null && visit.handed_over_at === null;
      return {
        ...brief(row),
        plate: row.plate,
        from: row.from_day,
        lastHere: visit?.opened_at ?? null,
        inShop: here ? visit.number : null,
      };
    }),
    carsGone: [...gone.values()].map((row) => {
      const to = row.to_day ?? '';
      const plate = plates.findLast((one) => one.car_id === row.id && one.from_day <= to);
      return { ...brief(row), plate: plate?.plate ?? row.plate, from: row.from_day, to };
    }),
  };
}
