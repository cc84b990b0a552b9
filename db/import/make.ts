import type { Context } from '../context.ts';
import { newId } from '../id.ts';
import { customerColumns } from '../operations/customer.ts';
import { carColumns } from '../operations/desk.ts';
import type { ImportMadeRow } from '../tables.ts';
import type { Plan } from './work-out.ts';

/** Writes what was worked out, and what came of which line, so that it can be taken back: the last made first. */
export async function makeAll(context: Context, runId: string, plan: Plan): Promise<void> {
  const { write, now, today } = context;
  await write.insertMany(
    'customer',
    plan.customers.map(({ id, fields }) => ({
      id,
      revision: 1,
      made_at: now,
      ...customerColumns(fields),
      answers_from: null,
      joined_into: null,
    })),
  );
  const cars = plan.cars.map(({ id, fields }) => ({
    id,
    revision: 1,
    made_at: now,
    ...carColumns(fields),
    outline: null,
  }));
  await write.insertMany('car', cars);
  await write.insertMany(
    'car_plate',
    cars
      .filter((car) => car.plate !== '')
      .map(({ id, plate, find_plate }) => ({
        ...{ id: newId(), car_id: id, plate, find_plate, from_day: today, to_day: null },
      })),
  );
  await write.insertMany(
    'car_owner',
    plan.owners.map(({ id, carId, customerId }) => ({
      ...{ id, car_id: carId, customer_id: customerId, from_day: today, to_day: null },
    })),
  );
  await write.insertMany(
    'past_visit',
    plan.visits.map(({ id, carId, draft }) => ({
      ...{ id, car_id: carId, on_day: draft.on, mileage: draft.mileage, words: draft.words, amount: draft.amount },
    })),
  );
  const newCars = new Set(plan.cars.map((car) => car.id));
  const made = (
    table: ImportMadeRow['made_table'],
    rows: readonly Pick<Plan['links'][number], 'line' | 'hash' | 'id' | 'fileKey'>[],
    wasHere: 0 | 1 = 0,
  ) =>
    rows.map((row) => ({
      ...{ id: newId(), import_run_id: runId, line: row.line, row_hash: row.hash },
      ...{ made_table: table, made_id: row.id, file_key: row.fileKey, was_here: wasHere },
    }));
  await write.insertMany('import_made', [
    ...made('customer', plan.customers),
    ...made('car', plan.cars),
    // The owner of a new car comes and goes with the car.
    ...made(
      'car_owner',
      plan.owners.filter((owner) => !newCars.has(owner.carId)),
    ),
    ...made('past_visit', plan.visits),
    ...plan.links.flatMap((link) => made(link.table, [link], 1)),
  ]);
}
