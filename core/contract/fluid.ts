import { z } from 'zod';
import { act, ask } from './operation.ts';
import { changeOf, civilDate, done, id, instant, mileage, needed, quantity, revision, words } from './scalars.ts';

/** A unit of the car that holds fluid: what it is called, and its serial number where one can be read. */
export const unitOfCar = z.strictObject({ name: needed(80), serial: words(60).default('') });

export const volumeUnit = z.enum(['L', 'mL', 'US gal', 'US qt', 'US pt', 'US fl oz', 'imp gal', 'imp qt', 'imp fl oz']);

const some = quantity.min(1);

/** How much, as it was read: a volume in thousandths of its unit, or strokes of a calibrated pump. */
export const fluidAmount = z.union([
  z.strictObject({ value: some, in: volumeUnit }),
  z.strictObject({ strokes: z.int().min(1).max(10_000), pumpId: id }),
]);

export const fluidEntry = z.strictObject({
  id,
  jobId: id,
  step: z.int().nullable(),
  unit: unitOfCar,
  direction: z.enum(['in', 'out']),
  fluid: z.string(),
  /** Thousandths of a litre. */
  quantity,
  entered: fluidAmount,
  /** The pump's name, where it went by strokes. */
  pump: z.string(),
  by: z.string(),
  at: instant,
  /** Taken back; it counts nothing. */
  undone: z.boolean(),
});

const pumpFields = z.strictObject({ name: needed(60), takenOut: z.boolean().default(false) });

/** A measured fill: so many strokes gave so much, in thousandths of a litre. */
const calibration = z.strictObject({ strokes: z.int().min(1).max(10_000), quantity: some });

export const fluidRoom = {
  'pump.add': act('crew', pumpFields.extend({ calibration: calibration.nullable().default(null) }), done),
  'pump.change': act('crew', z.strictObject({ id, revision, change: changeOf(pumpFields) }), done),
  /** A new measured fill; from now on it holds. What was reckoned with an older one stays. */
  'pump.calibrate': act('crew', calibration.extend({ pumpId: id }), z.strictObject({ id })),
  'pump.list': ask(
    'crew',
    z.strictObject({}),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          id,
          revision,
          name: z.string(),
          takenOut: z.boolean(),
          calibration: calibration
            .extend({
              at: instant,
              by: z.string(),
              /** Millionths of a litre that one stroke gives. */
              perStroke: z.int(),
            })
            .nullable(),
        }),
      ),
    }),
  ),
  /** Fluid that went into a unit or came out of it. Held while the job has no yes. */
  'fluid.record': act(
    'crew',
    z.strictObject({
      jobId: id,
      step: z.int().min(1).max(200).nullable().default(null),
      unit: unitOfCar,
      direction: z.enum(['in', 'out']),
      fluid: needed(80),
      amount: fluidAmount,
    }),
    z.strictObject({ id, quantity }),
  ),
  /** Takes an entry back; both stay written down. */
  'fluid.undo': act('crew', z.strictObject({ id }), z.strictObject({ id })),
  'fluid.list': ask('crew', z.strictObject({ orderId: id }), z.strictObject({ rows: z.array(fluidEntry) })),
  /**
   * What went in last times, newest first, added up by visit: into the same unit, else into the same car under that name,
   * else by the same job of the book into other cars. With the level rule of the step in hand.
   */
  'fluid.lastTimes': ask(
    'crew',
    z.strictObject({ jobId: id, step: z.int().min(1).max(200).nullable().default(null), unit: unitOfCar.nullable() }),
    z.strictObject({
      level: z.string(),
      rows: z.array(
        z.strictObject({
          same: z.enum(['unit', 'car', 'job']),
          orderNumber: z.int(),
          at: instant,
          car: z.string(),
          /** With which that car came in then, on its own clock: how far the fluid has been in since. */
          mileage: mileage.nullable(),
          unit: unitOfCar,
          fluid: z.string(),
          quantity,
          /** null where some of it was not pumped. */
          strokes: z.int().nullable(),
          pump: z.string(),
        }),
      ),
    }),
  ),
  /** What came out of cars from one day to another, both within, for the waste book. */
  'fluid.usedOil': ask(
    'crew',
    z.strictObject({ from: civilDate, to: civilDate }),
    z.strictObject({
      rows: z.array(
        z.strictObject({
          id,
          on: civilDate,
          at: instant,
          orderId: id,
          orderNumber: z.int(),
          car: z.string(),
          unit: unitOfCar,
          fluid: z.string(),
          quantity,
          by: z.string(),
        }),
      ),
      byFluid: z.array(z.strictObject({ fluid: z.string(), quantity })),
      total: quantity,
    }),
  ),
};
