import { z } from 'zod';
import { act, ask } from './operation.ts';
import { stage, torque } from './procedure.ts';
import { changeOf, civilDate, done, id, instant, needed, revision } from './scalars.ts';

/** Torque in thousandths of a newton metre. */
const milliNewtonMetres = z.int().min(0).max(5_000_000);

const wrenchFields = z.strictObject({
  /** Its number or name, as it goes into the record. */
  name: needed(60),
  least: milliNewtonMetres.default(0),
  most: milliNewtonMetres.min(1),
  /** Hand to drive, thousandths of a millimetre; null where nobody measured it. */
  lever: z.int().min(1).max(3_000_000).nullable().default(null),
  /** When its calibration is due; null: nobody said. */
  dueOn: civilDate.nullable().default(null),
});

const wrenchBrief = wrenchFields.extend({ id, revision, overdue: z.boolean() });

/** Both units; a printed pair as printed. */
const bothUnits = z.strictObject({ Nm: z.number(), lbfft: z.number() });

const touchMade = z.strictObject({
  by: z.string(),
  at: instant,
  /** '' where none was named. */
  wrench: z.string(),
  overdue: z.boolean(),
  /** It shares its minute with another: tapped after the work rather than with it. */
  together: z.boolean(),
  /** It was keyed in later, from paper: by whom; '' where it was not. */
  lateBy: z.string(),
});

export const torqueRoom = {
  /** A torque step as it stands: every touch of the wrench in its order, what is made, what is due, what to set. */
  'torque.get': ask(
    'crew',
    z.strictObject({
      jobId: id,
      step: z.int(),
      /** The wrench in hand, for the setting; null: the step's own lever alone. */
      wrenchId: id.nullable().default(null),
    }),
    z.strictObject({
      jobId: id,
      step: z.int(),
      letter: z.string(),
      do: z.string(),
      group: torque,
      /** Where the figures are from. */
      source: z.string(),
      state: z.enum(['open', 'done', 'not-needed', 'failed']),
      stages: z.array(
        z.strictObject({
          entered: stage,
          /** null for an angle. */
          torque: bothUnits.nullable(),
          degrees: z.number().nullable(),
          /** What to set on the wrench with the extension; null without one, or without a lever to reckon with. */
          setting: bothUnits.nullable(),
          /** An estimate in kilonewtons, with the span that friction alone makes of it; null without a thread. */
          clampLoad: z.strictObject({ load: z.number(), least: z.number(), most: z.number() }).nullable(),
          /** The wrench in hand does not reach it, by what is to be set. */
          outsideWrench: z.boolean(),
        }),
      ),
      touches: z.array(
        z.strictObject({
          /** Place in the order, from 0. */
          touch: z.int(),
          side: z.int(),
          hole: z.int(),
          stage: z.int(),
          check: z.boolean(),
          made: touchMade.nullable(),
        }),
      ),
      made: z.int(),
      /** Place of the touch that is due; null when all are made. */
      due: z.int().nullable(),
      wrench: wrenchBrief.nullable(),
    }),
  ),
  /**
   * The touch that is due is made; with a count, so many from it on. Any other touch is held, so that none is missed and
   * none is made twice.
   */
  'torque.make': act(
    'crew',
    z.strictObject({
      jobId: id,
      step: z.int(),
      touch: z.int().min(0).max(2000),
      count: z.int().min(1).max(2000).default(1),
      wrenchId: id.nullable().default(null),
      /** When it was done, where it is keyed in later from paper. */
      at: instant.nullable().default(null),
    }),
    z.strictObject({ made: z.int(), due: z.int().nullable(), warning: z.enum(['', 'wrench-overdue']) }),
  ),
  /** The last touch that was made is taken back; both stay in the record. */
  'torque.back': act(
    'crew',
    z.strictObject({ jobId: id, step: z.int() }),
    z.strictObject({ made: z.int(), due: z.int() }),
  ),
  'wrench.add': act('desk', wrenchFields, done),
  'wrench.change': act(
    'desk',
    z.strictObject({
      id,
      revision,
      change: changeOf(wrenchFields.extend({ takenOut: z.boolean() })),
    }),
    done,
  ),
  'wrench.list': ask('crew', z.strictObject({}), z.strictObject({ rows: z.array(wrenchBrief) })),
};
