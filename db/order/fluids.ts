import type { z } from 'zod';
import type { fluidAmount, unitOfCar } from '../../core/contract/fluid.ts';
import { type Calibration, quantityOf } from '../../core/fluid/pump.ts';
import { convert } from '../../core/measure/unit.ts';
import type { Context } from '../context.ts';
import { badInput, notFound } from '../refusal.ts';

export type FluidAmount = z.output<typeof fluidAmount>;
export type UnitOfCar = z.output<typeof unitOfCar>;

/** Serial numbers are written in capitals, so that the same unit is found whoever typed it. */
export const serialOf = ({ serial }: UnitOfCar): string => serial.toUpperCase();

/** The measured fill that holds for a pump now; null where it was never measured. */
export async function calibrationOf(context: Context, pumpId: string) {
  const row = await context.tx
    .selectFrom('pump_calibration')
    .innerJoin('person', 'person.id', 'pump_calibration.person_id')
    .selectAll('pump_calibration')
    .select('person.name')
    .where('pump_id', '=', pumpId)
    .orderBy('at', 'desc')
    .orderBy('pump_calibration.id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row ?? null;
}

/** An amount in thousandths of a litre. Throws bad-input, not-found. */
export async function litresOf(context: Context, amount: FluidAmount): Promise<number> {
  const quantity =
    'strokes' in amount
      ? quantityOf(amount.strokes, await measured(context, amount.pumpId))
      : Math.round(convert('volume', amount.value, amount.in, 'L'));
  if (quantity === 0) throw badInput('amount', 'more-than-nothing');
  return quantity;
}

async function measured(context: Context, pumpId: string): Promise<Calibration> {
  const pump = await context.tx.selectFrom('pump').select('id').where('id', '=', pumpId).executeTakeFirst();
  if (!pump) throw notFound('pump', pumpId);
  const calibration = await calibrationOf(context, pumpId);
  if (!calibration) throw badInput('amount.pumpId', 'not-calibrated');
  return calibration;
}

/** Entries with their order, car, pump and person; oldest first. Narrow it before it is run. */
export const fluidEntries = (context: Context) =>
  context.tx
    .selectFrom('fluid_entry')
    .innerJoin('job', 'job.id', 'fluid_entry.job_id')
    .innerJoin('work_order', 'work_order.id', 'job.work_order_id')
    .innerJoin('car', 'car.id', 'fluid_entry.car_id')
    .innerJoin('person', 'person.id', 'fluid_entry.person_id')
    .leftJoin('pump', 'pump.id', 'fluid_entry.pump_id')
    .selectAll('fluid_entry')
    .select([
      'work_order.id as visit',
      'work_order.number',
      'work_order.mileage_in',
      'car.plate',
      'car.words',
      'person.name as by',
      'pump.name',
    ])
    .orderBy('fluid_entry.at')
    .orderBy('fluid_entry.id');

export const carName = ({ plate, words }: { readonly plate: string; readonly words: string }): string =>
  `${plate} ${words}`.trim();
