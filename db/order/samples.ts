import type { z } from 'zod';
import type { labResult, sampleRow } from '../../core/contract/sample.ts';
import type { Context } from '../context.ts';
import { foldText } from '../fold.ts';
import { notFound } from '../refusal.ts';
import type { FluidSampleRow } from '../tables.ts';
import { carName } from './fluids.ts';

type LabResult = z.output<typeof labResult>;

/** Samples with their order, car and person; newest first. Narrow it before it is run. */
export const sampleRows = (context: Context) =>
  context.tx
    .selectFrom('fluid_sample')
    .innerJoin('work_order', 'work_order.id', 'fluid_sample.work_order_id')
    .innerJoin('car', 'car.id', 'fluid_sample.car_id')
    .innerJoin('person', 'person.id', 'fluid_sample.drawn_by')
    .selectAll('fluid_sample')
    .select(['work_order.number', 'car.plate', 'car.words', 'car.vin', 'car.unit as distance_unit', 'person.name'])
    .orderBy('drawn_at', 'desc')
    .orderBy('fluid_sample.id', 'desc');

export type SampleFound = Awaited<ReturnType<ReturnType<typeof sampleRows>['execute']>>[number];

/** Throws not-found. */
export async function sampleFound(context: Context, id: string): Promise<SampleFound> {
  const row = await sampleRows(context).where('fluid_sample.id', '=', id).executeTakeFirst();
  if (!row) throw notFound('fluid_sample', id);
  return row;
}

export const resultOf = ({ result }: Pick<FluidSampleRow, 'result'>): LabResult | null =>
  result === null ? null : (JSON.parse(result) as LabResult);

/** What was known when it was drawn, as the contract names it. */
export const drawnOf = (row: FluidSampleRow) => ({
  unit: { name: row.unit, serial: row.serial },
  fluid: row.fluid,
  distance: row.distance,
  mileage: row.mileage,
  lab: row.lab,
  startsHistory: row.starts_history === 1,
});

export const shownSample = (row: SampleFound): z.output<typeof sampleRow> => ({
  id: row.id,
  revision: row.revision,
  label: row.label,
  orderId: row.work_order_id,
  orderNumber: row.number,
  jobId: row.job_id,
  step: row.step,
  carId: row.car_id,
  car: carName(row),
  distanceUnit: row.distance_unit,
  ...drawnOf(row),
  drawnAt: row.drawn_at,
  drawnBy: row.name,
  sentOn: row.sent_on,
  resultOn: row.result_on,
  remark: row.remark,
  result: resultOf(row),
});

/**
 * The unit's own samples up to this one, oldest first. The unit is its serial number, in whatever car it sat; without one it
 * is its name on this car. It starts anew with the last sample that says that the unit was changed.
 */
export async function unitHistory(context: Context, sample: SampleFound): Promise<SampleFound[]> {
  const of = sampleRows(context).where('fluid_sample.serial', '=', sample.serial);
  const rows = await (sample.serial === '' ? of.where('fluid_sample.car_id', '=', sample.car_id) : of).execute();
  const own = rows.filter((row) => sample.serial !== '' || foldText(row.unit) === foldText(sample.unit)).reverse();
  const upTo = own.slice(0, own.findIndex((row) => row.id === sample.id) + 1);
  const start = upTo.findLastIndex((row) => row.starts_history === 1);
  return upTo.slice(Math.max(0, start));
}
