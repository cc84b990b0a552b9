import { type OpenHours, reachBack, type Span, spreadOver } from '../core/order/spread.ts';
import { addDays } from '../core/time/civil.ts';
import type { Context } from './context.ts';
import { settingsOf } from './people.ts';

const OF_BOOKING = [
  'booking.bay_id',
  'booking.day',
  'booking.from_time',
  'booking.hours',
  'booking.person_id',
] as const;

function openOf(context: Context): OpenHours {
  const { planOpens, planCloses, workingWeekdays } = settingsOf(context);
  return { opens: planOpens, closes: planCloses, weekdays: workingWeekdays };
}

/** A row for each day between two that a booking takes, in the order of the clock. */
function dayByDay<R extends Span>(rows: readonly R[], from: string, to: string, open: OpenHours) {
  return rows
    .flatMap((row) =>
      spreadOver(row, open).map((part) => ({ ...part, whole: { day: row.day, from: row.from, hours: row.hours } })),
    )
    .filter((part) => part.day >= from && part.day <= to)
    .toSorted((a, b) => a.day.localeCompare(b.day) || a.from.localeCompare(b.from));
}

/** What orders take of the days from one to another, in the order of the clock; cancelled orders take nothing. */
export async function bookedBetween(context: Context, from: string, to: string) {
  const open = openOf(context);
  const rows = await context.tx
    .selectFrom('booking')
    .innerJoin('bay', 'bay.id', 'booking.bay_id')
    .innerJoin('work_order', 'work_order.id', 'booking.work_order_id')
    .innerJoin('car', 'car.id', 'work_order.car_id')
    .innerJoin('customer', 'customer.id', 'work_order.customer_id')
    .leftJoin('person', 'person.id', 'booking.person_id')
    .select([
      ...OF_BOOKING,
      'booking.id as booking_id',
      'booking.no_show_at',
      'bay.name as bay',
      'person.name as person',
    ])
    .select(['work_order.id', 'work_order.number', 'work_order.revision', 'work_order.complaint'])
    .select(['work_order.arrived_at', 'work_order.handed_over_at', 'work_order.promise_at'])
    .select(['car.plate', 'car.words', 'customer.name'])
    .select((on) =>
      on
        .exists(
          on
            .selectFrom('job')
            .select('job.id')
            .whereRef('job.work_order_id', '=', 'work_order.id')
            .where('job.taken_out', '=', 0)
            .where('job.moved_to', 'is', null),
        )
        .as('worked'),
    )
    .where('booking.day', '>=', addDays(from, -reachBack(open)))
    .where('booking.day', '<=', to)
    .where('work_order.cancelled_at', 'is', null)
    .orderBy('booking.day')
    .orderBy('booking.from_time')
    .orderBy('work_order.number')
    .execute();
  const found = rows.map((row) => {
    const leftWithoutWork = row.handed_over_at !== null && Number(row.worked) === 0;
    return {
      bookingId: row.booking_id,
      orderId: row.id,
      number: row.number,
      revision: row.revision,
      bayId: row.bay_id,
      bay: row.bay,
      day: row.day,
      from: row.from_time,
      hours: row.hours,
      personId: row.person_id,
      person: row.person ?? '',
      plate: row.plate,
      car: row.words,
      customer: row.name,
      complaint: row.complaint,
      arrivedAt: row.arrived_at,
      handedOverAt: row.handed_over_at,
      promiseAt: row.promise_at,
      noShowAt: row.no_show_at,
      leftWithoutWork,
      /** Whether its hours are taken from the day. */
      counts: row.no_show_at === null && !leftWithoutWork,
    };
  });
  return dayByDay(found, from, to, open);
}

export type Booked = Awaited<ReturnType<typeof bookedBetween>>[number];

/** The shop's own bookings as bookedBetween tells those of orders, without those taken out. */
export async function internalBetween(context: Context, from: string, to: string) {
  const open = openOf(context);
  const rows = await context.tx
    .selectFrom('booking')
    .innerJoin('bay', 'bay.id', 'booking.bay_id')
    .leftJoin('person', 'person.id', 'booking.person_id')
    .select([
      ...OF_BOOKING,
      'booking.id',
      'booking.revision',
      'booking.words',
      'bay.name as bay',
      'person.name as person',
    ])
    .where('booking.work_order_id', 'is', null)
    .where((on) => on.or([on('booking.taken_out', 'is', null), on('booking.taken_out', '=', 0)]))
    .where('booking.day', '>=', addDays(from, -reachBack(open)))
    .where('booking.day', '<=', to)
    .orderBy('booking.day')
    .orderBy('booking.from_time')
    .execute();
  const found = rows.map((row) => ({
    id: row.id,
    revision: row.revision ?? 1,
    bayId: row.bay_id,
    bay: row.bay,
    day: row.day,
    from: row.from_time,
    hours: row.hours,
    personId: row.person_id,
    person: row.person ?? '',
    words: row.words ?? '',
  }));
  return dayByDay(found, from, to, open);
}

export type InternalBooked = Awaited<ReturnType<typeof internalBetween>>[number];
