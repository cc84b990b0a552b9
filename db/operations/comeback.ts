import { trueReadings } from '../../core/car/readings.ts';
import { covered } from '../../core/car/warranty.ts';
import { type DistanceUnit, inKilometres, inMiles } from '../../core/measure/distance.ts';
import { addDays, addMonths } from '../../core/time/civil.ts';
import { civilDateOf } from '../../core/time/instant.ts';
import type { Context, Handlers, Settings } from '../context.ts';
import { settingsOf } from '../people.ts';
import { notFound } from '../refusal.ts';
import type { WorkOrderRow } from '../tables.ts';
import { addJob, jobRow, openSheet } from './on-the-sheet.ts';

/** What a car's clock showed at a visit, on the way out where that was read, with its true distance. */
async function readingsOf(context: Context, carId: string) {
  const rows = await context.tx
    .selectFrom('odometer_reading')
    .selectAll()
    .where('car_id', '=', carId)
    .orderBy('at')
    .orderBy('id')
    .execute();
  const { all } = trueReadings(
    rows.map((row) => ({ on: row.on_day, reading: row.reading, event: row.event, newStart: row.new_start })),
  );
  return rows.map((row, at) => ({ orderId: row.work_order_id, shown: row.reading, distance: all[at]?.distance ?? 0 }));
}

type Readings = Awaited<ReturnType<typeof readingsOf>>;

const inUnitOf = (unit: DistanceUnit, distance: number, from: DistanceUnit) =>
  unit === 'km' ? inKilometres(distance, from) : inMiles(distance, from);

/** Whether a visit falls under the warranty of an earlier one: a hint from the shop's own terms, in the car's own unit. */
function coverOf(
  settings: Settings,
  unit: DistanceUnit,
  readings: Readings,
  first: WorkOrderRow & { issued_on: string },
  back: { order: WorkOrderRow; today: string },
) {
  const repairedOn = first.handed_over_at === null ? first.issued_on : civilDateOf(first.handed_over_at, settings.zone);
  const repaired = readings.findLast((one) => one.orderId === first.id);
  const now = readings.find((one) => one.orderId === back.order.id) ?? readings.at(-1);
  const shown = { repairedOn, repairedAt: repaired?.shown ?? null, unit };
  const terms = settings.warrantyTerms;
  if (terms === null || repaired === undefined || now === undefined)
    return { ...shown, covered: null, until: null, untilMileage: null };
  const own = { ...terms, distance: inUnitOf(unit, terms.distance, settings.distance) };
  const cameOn = back.order.arrived_at === null ? back.today : civilDateOf(back.order.arrived_at, settings.zone);
  const edge = terms.edgesIncluded ? 0 : 1;
  return {
    ...shown,
    covered: covered({ on: repairedOn, distance: repaired.distance }, own, { on: cameOn, distance: now.distance }),
    until: addDays(addMonths(repairedOn, terms.months), -edge),
    untilMileage: repaired.shown + own.distance - edge,
  };
}

export const comebackHandlers: Handlers = {
  'comeback.firstJobs': async ({ orderId }, context) => {
    const settings = settingsOf(context);
    const { tx } = context;
    const order = await tx.selectFrom('work_order').selectAll().where('id', '=', orderId).executeTakeFirst();
    if (!order) throw notFound('order', orderId);
    const car = await tx.selectFrom('car').select('unit').where('id', '=', order.car_id).executeTakeFirstOrThrow();
    const readings = await readingsOf(context, order.car_id);
    const rows = await tx
      .selectFrom('work_order')
      .innerJoin('paper', (on) =>
        on.onRef('paper.work_order_id', '=', 'work_order.id').on('paper.kind', '=', 'invoice'),
      )
      .innerJoin('job', 'job.work_order_id', 'work_order.id')
      .selectAll('work_order')
      .select(['paper.issued_on', 'job.id as job_id', 'job.title'])
      .where('work_order.car_id', '=', order.car_id)
      .where('work_order.id', '!=', orderId)
      .where('job.taken_out', '=', 0)
      .where('job.moved_to', 'is', null)
      .orderBy('paper.issued_at', 'desc')
      .orderBy('job.place')
      .execute();
    return {
      rows: rows.map(({ job_id, title, ...first }) => ({
        ...{ jobId: job_id, title, orderId: first.id, orderNumber: first.number },
        cover: coverOf(settings, car.unit, readings, first, { order, today: context.today }),
      })),
    };
  },
  'comeback.add': async ({ orderId, firstJobId, title, kind, bearer, cause }, context) => {
    const order = await openSheet(context, orderId);
    const first = await jobRow(context, firstJobId);
    const firstOrder = await context.tx
      .selectFrom('work_order')
      .select('car_id')
      .where('id', '=', first.work_order_id)
      .executeTakeFirstOrThrow();
    if (firstOrder.car_id !== order.car_id || first.work_order_id === orderId) throw notFound('job', firstJobId);
    const fields = { title, kind, fixedPrice: null, note: '', bearer, offered: false };
    const { id, revision, letter } = await addJob(context, orderId, fields, []);
    await context.write.update('job', id, { first_job_id: firstJobId, comeback_cause: cause === '' ? null : cause });
    return { id, revision, letter };
  },
};
