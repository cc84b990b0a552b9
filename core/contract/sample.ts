import { z } from 'zod';
import { unitOfCar } from './fluid.ts';
import { act, ask } from './operation.ts';
import {
  changeOf,
  civilDate,
  distanceUnit,
  done,
  id,
  instant,
  mileage,
  needed,
  quantity,
  revision,
  words,
} from './scalars.ts';

/** What is known when a sample is drawn. */
const drawn = z.strictObject({
  unit: unitOfCar,
  fluid: needed(80),
  /** How far the fluid was in, in whole units of the car's own clock. */
  distance: mileage.min(1).nullable().default(null),
  mileage: mileage.nullable().default(null),
  lab: words(80).default(''),
  /** The unit was changed since the last sample: its history starts here. */
  startsHistory: z.boolean().default(false),
});

/** A lab's answer. Figures in thousandths: of a part per million, of a mm²/s, of a percent. */
export const labResult = z.strictObject({
  metals: z
    .array(
      z.strictObject({
        /** The sign of the element: Fe, Cu, Si. */
        element: z.string().regex(/^[A-Z][a-z]?$/),
        ppm: quantity,
        /** What the lab itself calls the limit; null where it names none. */
        limit: quantity.nullable().default(null),
      }),
    )
    .max(40),
  /** Kinematic, at 100 °C. */
  viscosity: quantity.nullable().default(null),
  water: quantity.nullable().default(null),
});

export const sampleRow = z.strictObject({
  id,
  revision,
  label: z.string(),
  orderId: id,
  orderNumber: z.int(),
  jobId: id.nullable(),
  step: z.int().nullable(),
  carId: id,
  car: z.string(),
  distanceUnit,
  ...drawn.shape,
  drawnAt: instant,
  drawnBy: z.string(),
  sentOn: civilDate.nullable(),
  resultOn: civilDate.nullable(),
  /** The lab's own words; they come first. */
  remark: z.string(),
  result: labResult.nullable(),
});

/** Parts per million for each 1000 km, in thousandths; null without the distance. */
const rate = z.int().nullable();

/** Samples of fluid, their label, the lab's answer, and the unit's own history. */
export const sampleRoom = {
  /** Held while the job, where one is named, has no yes. The label is the shop's own, and no other sample has it. */
  'sample.draw': act(
    'crew',
    drawn.extend({
      orderId: id,
      jobId: id.nullable().default(null),
      step: z.int().min(1).max(200).nullable().default(null),
    }),
    z.strictObject({ id, revision, label: z.string() }),
  ),
  'sample.change': act('crew', z.strictObject({ id, revision, change: changeOf(drawn) }), done),
  'sample.send': act('crew', z.strictObject({ id, revision, lab: needed(80), on: civilDate }), done),
  /** When it comes, after the invoice too; entered again it takes the place of the one before. */
  'sample.result': act(
    'crew',
    z.strictObject({ id, revision, on: civilDate, remark: words(2000).default(''), result: labResult }),
    done,
  ),
  /** Newest first: of one order, of a car, of a unit by its serial, or those whose result has not come. */
  'sample.list': ask(
    'crew',
    z.union([
      z.strictObject({ orderId: id }),
      z.strictObject({ carId: id }),
      z.strictObject({ serial: needed(60) }),
      z.strictObject({ waiting: z.literal(true) }),
    ]),
    z.strictObject({ rows: z.array(sampleRow) }),
  ),
  /**
   * The history of the unit that a sample was drawn from, up to that sample: it goes with the serial, and without one with
   * the name on this car; it starts anew where the unit was changed. A hint with its count, never a verdict.
   */
  'sample.trend': ask(
    'crew',
    z.strictObject({ id }),
    z.strictObject({
      unit: unitOfCar,
      /** Oldest first; the last one is the sample that was asked for. */
      samples: z.array(
        z.strictObject({
          id,
          label: z.string(),
          drawnAt: instant,
          orderNumber: z.int(),
          car: z.string(),
          mileage: mileage.nullable(),
          distanceUnit,
          /** Kilometres that the fluid was in. */
          km: z.int().nullable(),
          remark: z.string(),
        }),
      ),
      metals: z.array(
        z.strictObject({
          element: z.string(),
          /** One for each sample whose result names it. */
          points: z.array(z.strictObject({ sampleId: id, ppm: quantity, rate })),
          /** The lab's own limit for the raw figure, as it last named one. */
          limit: quantity.nullable(),
          /** Of the samples before the last one. */
          count: z.int(),
          mean: rate,
          deviation: rate,
          alert: rate,
          alarm: rate,
          says: z.enum(['none', 'normal', 'alert', 'alarm']),
          /** Why nothing is said. */
          because: z.enum(['', 'no-result', 'no-distance', 'few-samples', 'short-distance']),
        }),
      ),
      fewestSamples: z.int(),
      fewestKm: z.int(),
    }),
  ),
};
