import { metalHistories } from '../../core/fluid/history.ts';
import { trendRule } from '../../core/fluid/trend.ts';
import { inKilometres } from '../../core/measure/distance.ts';
import { civilDateOf } from '../../core/time/instant.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { carName, serialOf } from '../order/fluids.ts';
import {
  drawnOf,
  resultOf,
  type SampleFound,
  sampleFound,
  sampleRows,
  shownSample,
  unitHistory,
} from '../order/samples.ts';
import { settingsOf, signedIn } from '../people.ts';
import { badInput, notFound } from '../refusal.ts';
import type { FluidSampleRow } from '../tables.ts';
import { given, heldUnlessCovered, openSheet } from './on-the-sheet.ts';

type Drawn = ReturnType<typeof drawnOf>;

const drawnColumns = (fields: Drawn) => ({
  unit: fields.unit.name,
  serial: serialOf(fields.unit),
  fluid: fields.fluid,
  distance: fields.distance,
  mileage: fields.mileage,
  lab: fields.lab,
  starts_history: fields.startsHistory ? (1 as const) : (0 as const),
});

/** The shop's own number on the bottle: the order, and the how manieth of it. */
async function nextLabel(context: Context, orderId: string, orderNumber: number): Promise<string> {
  const { count } = await context.tx
    .selectFrom('fluid_sample')
    .select((on) => on.fn.countAll<number>().as('count'))
    .where('work_order_id', '=', orderId)
    .executeTakeFirstOrThrow();
  return `${orderNumber}-${count + 1}`;
}

/** A day for a sample: not before it was drawn, not yet to come. Throws bad-input. */
function fits(context: Context, sample: SampleFound, on: string): void {
  if (on < civilDateOf(sample.drawn_at, settingsOf(context).zone)) throw badInput('on', 'before-from');
  if (on > context.today) throw badInput('on', 'in-the-future');
}

const sentShown = (row: FluidSampleRow) => ({ lab: row.lab, on: row.sent_on });
const resultShown = (row: FluidSampleRow) => ({ on: row.result_on, remark: row.remark, result: resultOf(row) });

export const sampleHandlers: Handlers = {
  'sample.draw': async ({ orderId, jobId, step, ...drawn }, context) => {
    if (jobId !== null && (await heldUnlessCovered(context, jobId)).work_order_id !== orderId)
      throw notFound('job', jobId);
    const order = await openSheet(context, orderId);
    const id = newId();
    const label = await nextLabel(context, orderId, order.number);
    await context.write.insert('fluid_sample', {
      id,
      revision: 1,
      work_order_id: orderId,
      job_id: jobId,
      step,
      car_id: order.car_id,
      label,
      ...drawnColumns({ ...drawn, mileage: drawn.mileage ?? order.mileage_in }),
      drawn_at: context.now,
      drawn_by: signedIn(context).id,
      sent_on: null,
      result_on: null,
      result: null,
      remark: '',
    });
    return { id, revision: 1, label };
  },
  'sample.change': async ({ id, revision, change }, context) => {
    const fields = Object.assign(drawnOf(await sampleFound(context, id)), given(change));
    const next = await context.write.edit('fluid_sample', id, revision, drawnColumns(fields), change, drawnOf);
    return { id, revision: next };
  },
  'sample.send': async ({ id, revision, lab, on }, context) => {
    fits(context, await sampleFound(context, id), on);
    const patch = { lab, sent_on: on };
    return { id, revision: await context.write.edit('fluid_sample', id, revision, patch, { lab, on }, sentShown) };
  },
  'sample.result': async ({ id, revision, on, remark, result }, context) => {
    fits(context, await sampleFound(context, id), on);
    const elements = result.metals.map(({ element }) => element);
    const twice = elements.findIndex((element, at) => elements.indexOf(element) < at);
    if (twice >= 0) throw badInput(`result.metals.${twice}.element`, 'same-row-twice');
    const patch = { result_on: on, remark, result: JSON.stringify(result) };
    const yours = { on, remark, result };
    return { id, revision: await context.write.edit('fluid_sample', id, revision, patch, yours, resultShown) };
  },
  'sample.list': async (which, context) => {
    const all = sampleRows(context);
    const some =
      'orderId' in which
        ? all.where('fluid_sample.work_order_id', '=', which.orderId)
        : 'carId' in which
          ? all.where('fluid_sample.car_id', '=', which.carId)
          : 'serial' in which
            ? all.where('fluid_sample.serial', '=', which.serial.toUpperCase())
            : all.where('result_on', 'is', null);
    return { rows: (await some.execute()).map(shownSample) };
  },
  'sample.trend': async ({ id }, context) => {
    const sample = await sampleFound(context, id);
    const rule = trendRule(settingsOf(context).fluidGuards);
    const history = (await unitHistory(context, sample)).map((row) => ({
      row,
      km: row.distance === null ? null : inKilometres(row.distance, row.distance_unit),
    }));
    return {
      unit: drawnOf(sample).unit,
      samples: history.map(({ row, km }) => ({
        id: row.id,
        label: row.label,
        drawnAt: row.drawn_at,
        orderNumber: row.number,
        car: carName(row),
        mileage: row.mileage,
        distanceUnit: row.distance_unit,
        km,
        remark: row.remark,
      })),
      metals: metalHistories(
        history.map(({ row, km }) => ({ id: row.id, km, metals: resultOf(row)?.metals ?? null })),
        rule,
      ).map((metal) => ({ ...metal, points: [...metal.points] })),
      fewestSamples: rule.fewestSamples,
      fewestKm: rule.fewestKm,
    };
  },
};
