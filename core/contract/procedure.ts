import { z } from 'zod';
import { afterJob } from './after-job.ts';
import { condition, id, lineKind, needed, price, quantity, words } from './scalars.ts';

const newtonMetres = z.number().positive().max(5000);
const poundFeet = z.number().positive().max(3700);

/**
 * One round of a group, as its source gives it. A pair that is printed in both units stays that pair: neither figure is
 * reckoned from the other, and neither is converted back.
 */
export const stage = z.union([
  z.strictObject({ Nm: newtonMetres }),
  z.strictObject({ lbfft: poundFeet }),
  z.strictObject({ Nm: newtonMetres, lbfft: poundFeet }),
  z.strictObject({ degrees: z.number().positive().max(720) }),
]);

/** Fasteners that are tightened together: where their holes are, in what rounds, and with what on the wrench. */
export const torque = z
  .strictObject({
    what: words(80).default(''),
    /**
     * Where the holes are. `ring`: evenly round; `angles`: round, each at its own degrees; `pairs`: round, in pairs with a
     * clip between; `rows`; `free`: anywhere, in the order of their numbers.
     */
    pattern: z.enum(['ring', 'angles', 'pairs', 'rows', 'free']),
    /** Holes on one side of the car. */
    count: z.int().min(1).max(64),
    /** Pattern `angles`: degrees from the top, clockwise, one a hole. */
    degrees: z.array(z.number().min(0).lt(360)).max(64).default([]),
    /** Pattern `rows`: holes in each row from the top; empty means all in one row. */
    rows: z.array(z.int().min(1).max(64)).max(16).default([]),
    /** The same group again on so many sides of the car. */
    sides: z.int().min(1).max(4).default(1),
    stages: z.array(stage).min(1).max(6),
    /** A last round in a circle at the full figure. */
    checkRound: z.boolean().default(false),
    /** The thread in words (“M12 x 1.75”), its nominal diameter in millimetres, and how it goes in: for the clamp load. */
    thread: z
      .strictObject({
        words: words(40).default(''),
        diameter: z.number().positive().max(200),
        nut: z.enum(['dry', 'lubricated']),
      })
      .nullable()
      .default(null),
    /** What the wrench carries: millimetres, and degrees off straight. `lever` null: that of the wrench in hand. */
    extension: z
      .strictObject({
        length: z.number().positive().max(2000),
        angle: z.number().min(0).max(180).default(0),
        lever: z.number().positive().max(3000).nullable().default(null),
      })
      .nullable()
      .default(null),
  })
  .refine((group) => group.pattern !== 'angles' || group.degrees.length === group.count, {
    path: ['degrees'],
    error: 'angle-for-each-hole',
  })
  .refine(({ pattern, degrees }) => pattern !== 'angles' || new Set(degrees).size === degrees.length, {
    path: ['degrees'],
    error: 'same-row-twice',
  })
  .refine((group) => group.pattern !== 'pairs' || group.count % 2 === 0, { path: ['count'], error: 'even-for-pairs' })
  .refine(
    ({ pattern, rows, count }) =>
      pattern !== 'rows' || rows.length === 0 || rows.reduce((all, row) => all + row, 0) === count,
    { path: ['rows'], error: 'rows-make-count' },
  );

/** One step of a job book entry. All figures are the shop's own, with their source named. */
export const step = z.strictObject({
  n: z.int().min(1).max(200),
  do: needed(400),
  tool: words(120).default(''),
  hold: words(200).default(''),
  second: z.enum(['', 'looks', 'holds', 'signs', 'does it']).default(''),
  care: words(300).default(''),
  /** 'fill-opened', 'drained': what the order of plugs is checked by. */
  plug: z.enum(['', 'fill-opened', 'drained']).default(''),
  torque: torque.nullable().default(null),
  oneTime: z.array(z.strictObject({ part: needed(80), count: z.int().min(1).max(200) })).default([]),
  fluidIn: z
    .strictObject({
      what: needed(80),
      quantity,
      /** About how many strokes of the shop's pump that was; null where nobody knows. */
      strokes: z.int().min(1).max(2000).nullable().default(null),
      /** What went in at earlier visits is offered. */
      lastTime: z.boolean().default(true),
    })
    .nullable()
    .default(null),
  fluidOut: z
    .strictObject({ what: needed(80), quantity })
    .nullable()
    .default(null),
  /** How one knows that it is full, in words. */
  level: words(200).default(''),
  sample: z
    .strictObject({ millilitres: z.int().min(1).max(5000), words: words(120).default('') })
    .nullable()
    .default(null),
  measure: z
    .strictObject({
      what: needed(80),
      unit: words(10),
      least: z.number(),
      most: z.number(),
      places: z.int().min(1).max(16).default(1),
    })
    .nullable()
    .default(null),
  photoWanted: z.boolean().default(false),
  /** Which later steps open again when this one goes back; null: every one after it. */
  reopens: z.array(z.int().min(1).max(200)).max(200).nullable().default(null),
  /** The customer gets a card: tighten the wheels again after so far. */
  recheckCard: z.boolean().default(false),
  /** Where this step's figures are from; '': from where those of the job are. */
  source: words(300).default(''),
});

export const bookLine = z.strictObject({
  kind: lineKind,
  words: needed(300),
  partNumber: words(40).default(''),
  condition: condition.nullable().default(null),
  quantity,
  unit: words(8).default(''),
  unitPrice: price.nullable().default(null),
  unitCost: price.nullable().default(null),
  supplier: words(80).default(''),
});

export const bookJobContent = z.strictObject({
  title: needed(200),
  car: words(200).default(''),
  people: z.int().min(1).max(6).default(1),
  bookHours: quantity,
  /** What the job costs whatever it takes, minor units in the shop's own prices; null: what its lines come to. */
  fixedPrice: price.nullable().default(null),
  sourceOfFigures: words(300),
  lines: z.array(bookLine).max(100),
  steps: z.array(step).max(200),
  cautions: z.array(words(300)).max(20),
  /** The shop's list that is gone through before the car leaves after this job; null for none. */
  finalCheckId: id.nullable().default(null),
  /** What is due on the car afterwards. */
  after: z.array(afterJob).max(6).default([]),
  /**
   * Other jobs of the book that go with it; `hoursLess`: what such a job takes less when this one is on the sheet too,
   * since the taking apart is shared.
   */
  goesWith: z
    .array(z.strictObject({ bookJobId: id, hoursLess: quantity.default(0) }))
    .max(8)
    .default([]),
});

/** What is wrong with a procedure as it is written, and what would mend it. */
export const procedureWarning = z.strictObject({
  rule: z.enum([
    'drain-before-fill',
    'one-time-twice',
    'one-time-without-new',
    'stage-lower',
    'wheel-without-card',
    'torque-without-source',
  ]),
  step: z.int(),
  /** It keeps a version from the bench; a draft may hold it. */
  keepsFromBench: z.boolean(),
  mend: z
    .union([
      /** Move a step so that it stands in place `to`. */
      z.strictObject({ what: z.literal('move-step'), step: z.int(), to: z.int() }),
      /** So many new ones are missing among the parts of the job. */
      z.strictObject({ what: z.literal('add-new-parts'), part: z.string(), count: z.int() }),
      z.strictObject({ what: z.literal('add-recheck-card'), step: z.int() }),
      z.strictObject({ what: z.literal('name-source'), step: z.int() }),
    ])
    .nullable(),
});
