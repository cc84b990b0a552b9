import { trueReadings } from '../core/car/readings.ts';
import { ahead, type Standing, standingOf } from '../core/car/reminder.ts';
import { addDays } from '../core/time/civil.ts';
import { civilDateOf } from '../core/time/instant.ts';
import type { Context } from './context.ts';
import { settingsOf } from './people.ts';
import { notFound } from './refusal.ts';
import type { ReminderRow, ReminderTryRow } from './tables.ts';

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

/** Where a reminder stands by what came of asking, tries oldest first. */
export function standsBy(
  context: Context,
  tries: readonly Pick<ReminderTryRow, 'outcome' | 'ask_on' | 'at'>[],
): Standing {
  const { zone } = settingsOf(context);
  return standingOf(tries.map((row) => ({ outcome: row.outcome, askOn: row.ask_on, on: civilDateOf(row.at, zone) })));
}

/** So long after its day a reminder is nobody's call any more: common practice, no source. */
const OVER_DAYS: Readonly<Record<ReminderRow['source'], number>> = {
  'wheel-recheck': 60,
  warranty: 30,
  'run-in': 180,
  service: 365,
  declined: 730,
  own: 730,
};

/** Whether a reminder is to be spoken of on a day: near enough, not over, and not put off. */
export function isDue(
  context: Context,
  row: Pick<ReminderRow, 'source' | 'look_on'>,
  stands: Standing,
  until: string,
): boolean {
  if (row.look_on === null) return false;
  const early = row.source === 'warranty' || row.source === 'service' ? settingsOf(context).remindDays : 0;
  return (
    addDays(row.look_on, -early) <= until &&
    addDays(row.look_on, OVER_DAYS[row.source]) >= until &&
    (stands.askOn === null || stands.askOn <= until)
  );
}

/**
 * The open reminders to call down until a day, the earliest first: of cars whose owner may be reminded, and owned the car
 * already when the reminder was made.
 */
export async function dueReminders(context: Context, until: string): Promise<ReminderRow[]> {
  const { remindDays, zone } = settingsOf(context);
  const first = addDays(until, -Math.max(...Object.values(OVER_DAYS)));
  const last = addDays(until, remindDays);
  const rows = await context.tx
    .selectFrom('reminder')
    .innerJoin('car_owner', (on) =>
      on.onRef('car_owner.car_id', '=', 'reminder.car_id').on('car_owner.to_day', 'is', null),
    )
    .innerJoin('customer', 'customer.id', 'car_owner.customer_id')
    .selectAll('reminder')
    .select(['car_owner.from_day', 'customer.consents'])
    .where('reminder.closed_at', 'is', null)
    .where('reminder.look_on', '<=', last)
    .where('reminder.look_on', '>=', first)
    .orderBy('reminder.look_on')
    .orderBy('reminder.id')
    .execute();
  const asked = await context.tx
    .selectFrom('reminder_try')
    .innerJoin('reminder', 'reminder.id', 'reminder_try.reminder_id')
    .select(['reminder_try.reminder_id', 'reminder_try.outcome', 'reminder_try.ask_on', 'reminder_try.at'])
    .where('reminder.closed_at', 'is', null)
    .where('reminder.look_on', '<=', last)
    .where('reminder.look_on', '>=', first)
    .orderBy('reminder_try.at')
    .orderBy('reminder_try.id')
    .execute();
  const tries = Map.groupBy(asked, (row) => row.reminder_id);
  return rows.filter(
    (row) =>
      isDue(context, row, standsBy(context, tries.get(row.id) ?? []), until) &&
      row.from_day <= civilDateOf(row.made_at, zone) &&
      !wantsNone(row.consents),
  );
}

const wantsNone = (consents: string | null) =>
  consents !== null && (JSON.parse(consents) as { reminders: boolean | null }).reminders === false;

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
