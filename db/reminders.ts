import { trueReadings } from '../core/car/readings.ts';
import { ahead, type Standing, standingOf } from '../core/car/reminder.ts';
import { civilDateOf } from '../core/time/instant.ts';
import type { Context } from './context.ts';
import { settingsOf } from './people.ts';
import { notFound } from './refusal.ts';
import type { ReminderRow } from './tables.ts';

/** A reminder's row. Throws not-found. */
export async function reminderRow(context: Context, id: string): Promise<ReminderRow> {
  const row = await context.tx.selectFrom('reminder').selectAll().where('id', '=', id).executeTakeFirst();
  if (!row) throw notFound('reminder', id);
  return row;
}

/** A car's readings as written, oldest first, and the distance that its present clock does not show. */
export async function readingsOf(context: Context, carId: string) {
  const rows = await context.tx
    .selectFrom('odometer_reading')
    .select(['reading', 'on_day', 'event', 'new_start'])
    .where('car_id', '=', carId)
    .orderBy('at')
    .orderBy('id')
    .execute();
  return trueReadings(
    rows.map((row) => ({ on: row.on_day, reading: row.reading, event: row.event, newStart: row.new_start })),
  );
}

/** Who owns a car now, and since which day. */
export async function ownerOf(context: Context, carId: string) {
  const row = await context.tx
    .selectFrom('car_owner')
    .innerJoin('customer', 'customer.id', 'car_owner.customer_id')
    .selectAll('customer')
    .select('car_owner.from_day')
    .where('car_owner.car_id', '=', carId)
    .where('car_owner.to_day', 'is', null)
    .executeTakeFirst();
  return row ?? null;
}

/** What came of asking so far, oldest first. */
export const triesOf = (context: Context, reminderId: string) =>
  context.tx
    .selectFrom('reminder_try')
    .innerJoin('person', 'person.id', 'reminder_try.person_id')
    .selectAll('reminder_try')
    .select('person.name as by')
    .where('reminder_id', '=', reminderId)
    .orderBy('reminder_try.at')
    .orderBy('reminder_try.id')
    .execute();

/** Where a reminder stands by what came of asking. */
export async function standing(context: Context, reminderId: string): Promise<Standing> {
  const { zone } = settingsOf(context);
  const tries = await triesOf(context, reminderId);
  return standingOf(tries.map((row) => ({ outcome: row.outcome, askOn: row.ask_on, on: civilDateOf(row.at, zone) })));
}

/** A reminder with its car and owner, and when it falls due; distances as the car's present clock shows them, too. */
export async function aheadOf(context: Context, row: ReminderRow) {
  const car = await context.tx.selectFrom('car').selectAll().where('id', '=', row.car_id).executeTakeFirstOrThrow();
  const { all, carried } = await readingsOf(context, row.car_id);
  const when = ahead(all, { onDate: row.due_on, atDistance: row.due_mileage }, car.unit, context.today);
  const shown = (distance: number | null) => (distance === null ? null : Math.max(0, distance - carried));
  return {
    car,
    customer: await ownerOf(context, row.car_id),
    ahead: { ...when, shownDue: shown(row.due_mileage), shownExpected: shown(when.expected) },
  };
}
