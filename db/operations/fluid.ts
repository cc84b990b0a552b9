import { standing } from '../../core/fluid/fills.ts';
import { scale, sum } from '../../core/money/money.ts';
import { addDays } from '../../core/time/civil.ts';
import { civilDateOf, wallToInstant } from '../../core/time/instant.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { calibrationOf, carName, type FluidAmount, fluidEntries, litresOf, serialOf } from '../order/fluids.ts';
import { lastFills } from '../order/last-fills.ts';
import { loadOrder } from '../order/load.ts';
import { stepsOf } from '../order/steps.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, notFound } from '../refusal.ts';
import type { PumpRow } from '../tables.ts';
import { heldUnlessCovered, jobRow, openSheet } from './on-the-sheet.ts';

const pumpFieldsOf = (row: PumpRow) => ({ name: row.name, takenOut: row.taken_out === 1 });

async function calibrate(context: Context, pumpId: string, fill: { strokes: number; quantity: number }) {
  const id = newId();
  const { strokes, quantity } = fill;
  const row = { id, pump_id: pumpId, strokes, quantity, person_id: signedIn(context).id, at: context.now };
  await context.write.insert('pump_calibration', row);
  return { id };
}

/** The step of a job. Throws not-found. */
async function stepOf(context: Context, jobId: string, n: number) {
  const job = await jobRow(context, jobId);
  const found = stepsOf(await loadOrder(context, job.work_order_id), jobId).find(({ step }) => step.n === n);
  if (!found) throw notFound('step', String(n));
  return found.step;
}

export const fluidHandlers: Handlers = {
  'pump.add': async ({ name, takenOut, calibration }, context) => {
    const id = newId();
    await context.write.insert('pump', { id, revision: 1, name, taken_out: takenOut ? 1 : 0 });
    if (calibration) await calibrate(context, id, calibration);
    return { id, revision: 1 };
  },
  'pump.change': async ({ id, revision, change }, context) => {
    const patch = {
      ...(change.name === undefined ? {} : { name: change.name }),
      ...(change.takenOut === undefined ? {} : { taken_out: change.takenOut ? (1 as const) : (0 as const) }),
    };
    return { id, revision: await context.write.edit('pump', id, revision, patch, change, pumpFieldsOf) };
  },
  'pump.calibrate': async ({ pumpId, ...fill }, context) => {
    const pump = await context.tx.selectFrom('pump').select('id').where('id', '=', pumpId).executeTakeFirst();
    if (!pump) throw notFound('pump', pumpId);
    return calibrate(context, pumpId, fill);
  },
  'pump.list': async (_input, context) => {
    const pumps = await context.tx.selectFrom('pump').selectAll().orderBy('name').orderBy('id').execute();
    const rows = [];
    for (const pump of pumps) {
      const row = await calibrationOf(context, pump.id);
      const calibration = row && {
        strokes: row.strokes,
        quantity: row.quantity,
        at: row.at,
        by: row.name,
        perStroke: scale(row.quantity, 1000, row.strokes) as number,
      };
      rows.push({ id: pump.id, revision: pump.revision, ...pumpFieldsOf(pump), calibration });
    }
    return { rows };
  },
  'fluid.record': async ({ jobId, step, unit, direction, fluid, amount }, context) => {
    const job = await heldUnlessCovered(context, jobId);
    if (step !== null) await stepOf(context, jobId, step);
    const quantity = await litresOf(context, amount);
    const order = await context.tx
      .selectFrom('work_order')
      .select('car_id')
      .where('id', '=', job.work_order_id)
      .executeTakeFirstOrThrow();
    const id = newId();
    await context.write.insert('fluid_entry', {
      id,
      job_id: jobId,
      step,
      car_id: order.car_id,
      unit: unit.name,
      serial: serialOf(unit),
      direction,
      fluid,
      quantity,
      entered: JSON.stringify(amount),
      strokes: 'strokes' in amount ? amount.strokes : null,
      pump_id: 'strokes' in amount ? amount.pumpId : null,
      undoes: null,
      person_id: signedIn(context).id,
      at: context.now,
    });
    return { id, quantity };
  },
  'fluid.undo': async ({ id }, context) => {
    const row = await context.tx.selectFrom('fluid_entry').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row || row.undoes !== null) throw notFound('fluid_entry', id);
    await openSheet(context, (await jobRow(context, row.job_id)).work_order_id);
    const before = await context.tx.selectFrom('fluid_entry').select('id').where('undoes', '=', id).executeTakeFirst();
    if (before) throw badInput('id', 'undone-already');
    const undoing = newId();
    const person = signedIn(context).id;
    await context.write.insert('fluid_entry', { ...row, id: undoing, undoes: id, person_id: person, at: context.now });
    return { id: undoing };
  },
  'fluid.list': async ({ orderId }, context) => {
    const rows = await fluidEntries(context).where('work_order.id', '=', orderId).execute();
    const counting = new Set(standing(rows).map(({ id }) => id));
    return {
      rows: rows
        .filter((row) => row.undoes === null)
        .map((row) => ({
          id: row.id,
          jobId: row.job_id,
          step: row.step,
          unit: { name: row.unit, serial: row.serial },
          direction: row.direction,
          fluid: row.fluid,
          quantity: row.quantity,
          entered: JSON.parse(row.entered) as FluidAmount,
          pump: row.name ?? '',
          by: row.by,
          at: row.at,
          undone: !counting.has(row.id),
        })),
    };
  },
  'fluid.lastTimes': async ({ jobId, step, unit }, context) => {
    const job = await jobRow(context, jobId);
    const order = await context.tx
      .selectFrom('work_order')
      .select('car_id')
      .where('id', '=', job.work_order_id)
      .executeTakeFirstOrThrow();
    return {
      level: step === null ? '' : (await stepOf(context, jobId, step)).level,
      rows: await lastFills(context, job, order.car_id, unit),
    };
  },
  'fluid.usedOil': async ({ from, to }, context) => {
    if (to < from) throw badInput('to', 'before-from');
    const { zone } = settingsOf(context);
    // A filling is taken back by a later entry, which may lie beyond the last day.
    const out = await fluidEntries(context)
      .where('direction', '=', 'out')
      .where('fluid_entry.at', '>=', wallToInstant(`${from}T00:00`, zone))
      .execute();
    const end = wallToInstant(`${addDays(to, 1)}T00:00`, zone);
    const rows = standing(out).filter((row) => row.at < end);
    const byFluid = [...Map.groupBy(rows, ({ fluid }) => fluid)].map(([fluid, those]) => ({
      fluid,
      quantity: sum(those.map(({ quantity }) => quantity)) as number,
    }));
    return {
      rows: rows.map((row) => ({
        id: row.id,
        on: civilDateOf(row.at, zone),
        at: row.at,
        orderId: row.visit,
        orderNumber: row.number,
        car: carName(row),
        unit: { name: row.unit, serial: row.serial },
        fluid: row.fluid,
        quantity: row.quantity,
        by: row.by,
      })),
      byFluid: byFluid.sort((a, b) => a.fluid.localeCompare(b.fluid)),
      total: sum(byFluid.map(({ quantity }) => quantity)) as number,
    };
  },
};
