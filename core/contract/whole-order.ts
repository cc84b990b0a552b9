import { z } from 'zod';
import { orderCredit } from './account.ts';
import { atTheDoor, carBrief, customerBrief, declinedWork } from './desk.ts';
import { measured, mend, urgency } from './finding.ts';
import { STOP_WHATS } from './held.ts';
import {
  amount,
  civilDate,
  condition,
  id,
  instant,
  lineKind,
  mileage,
  needed,
  price,
  quantity,
  reduction,
  revision,
  seenAmount,
  strokes,
  words,
} from './scalars.ts';
/** A line as it is typed. Labour: book hours less overlap (when the named job is on the sheet), clocked, or typed. */
export const lineFields = z.strictObject({
  kind: lineKind,
  words: needed(300),
  partNumber: words(40).default(''),
  partId: id.nullable().default(null),
  condition: condition.nullable().default(null),
  quantity,
  unit: words(8).default(''),
  unitPrice: price,
  discount: reduction.nullable().default(null),
  billing: z.enum(['book', 'clocked', 'typed']).default('typed'),
  book: quantity.default(0),
  overlap: quantity.default(0),
  overlapJobId: id.nullable().default(null),
  people: z
    .array(z.strictObject({ personId: id, hours: quantity }))
    .max(6)
    .default([]),
  supplier: words(80).default(''),
  /** What it costs us, for outside work and parts bought for this job; null when not known. */
  unitCost: price.nullable().default(null),
});

export const line = lineFields.extend({
  id,
  revision,
  jobId: id,
  place: z.int(),
  /** Quantity charged after billing way and overlap, thousandths. */
  charged: quantity,
  given: z.boolean(),
  giveWhy: z.string(),
  unitPrice: seenAmount,
  unitCost: seenAmount,
  amount: seenAmount,
});

export const jobKind = z.enum(['charged', 'warranty', 'goodwill', 'internal']);
export const jobFields = z.strictObject({
  title: needed(200),
  kind: jobKind.default('charged'),
  fixedPrice: price.nullable().default(null),
  note: words(1000).default(''),
  bearer: words(80).default(''),
  /** Stands under the sum, offered, and is not in it until a yes. */
  offered: z.boolean().default(false),
});

export const stepState = z.strictObject({
  n: z.int(),
  state: z.enum(['open', 'done', 'not-needed', 'failed']),
  by: z.string().nullable(),
  secondBy: z.string().nullable(),
  at: instant.nullable(),
  why: z.string(),
  /** Torque entries that stand. */
  entered: z.int(),
  /** It was keyed in later, from paper: by whom; '' where it was not. */
  lateBy: z.string(),
  /** What was measured, one figure a place. */
  reading: z.array(z.number()),
  /** The wrench of the torque entries; '' where none was named. */
  wrench: z.string(),
});

export const job = jobFields.extend({
  id,
  revision,
  letter: z.string(),
  place: z.int(),
  given: z.boolean(),
  giveWhy: z.string(),
  bookVersionId: id.nullable(),
  fixedPrice: seenAmount,
  lines: z.array(line),
  amount: seenAmount,
  /** Named in a yes and not in a later no. */
  covered: z.boolean(),
  answer: z.enum(['none', 'yes', 'no', 'later']),
  clockedMinutes: z.int(),
  steps: z.array(stepState),
});

export const finding = z.strictObject({
  id,
  revision,
  text: needed(2000),
  urgency,
  place: z.string(),
  part: z.string(),
  measured: measured.nullable(),
  mend: mend.nullable(),
  jobId: id.nullable(),
  by: z.string(),
  at: instant,
});

export const spoken = z.strictObject({
  /** Who spoke. */
  name: needed(120),
  /** For whom: the customer, a person they named, the payer, or the owner for free work. */
  role: z.enum(['customer', 'named', 'payer', 'owner']),
});

export const decision = z.strictObject({
  id,
  number: z.int(),
  at: instant,
  recordedAt: instant,
  lateBy: z.string(),
  jobs: z.array(
    z.strictObject({
      jobId: id,
      answer: z.enum(['yes', 'no', 'later']),
      amount: seenAmount,
      risk: z.string(),
      unsafe: z.boolean(),
    }),
  ),
  /** For all jobs said yes to so far, tax in. null when this decision names no yes. */
  ceiling: seenAmount,
  spoken,
  way: z.enum(['signed', 'phone', 'message', 'person']),
  reached: z.string(),
  words: z.string(),
  quoteNumber: z.int().nullable(),
  quoteVersion: z.int().nullable(),
  strokes: strokes.nullable(),
  takenBy: z.string(),
});

export const paperBrief = z.strictObject({
  id,
  kind: z.enum(['quote', 'invoice', 'credit-note', 'receipt']),
  number: z.int(),
  version: z.int().nullable(),
  issuedAt: instant,
  gross: seenAmount,
  validUntil: civilDate.nullable(),
  sent: z.array(z.strictObject({ at: instant, how: z.string() })),
});

export const sums = z.strictObject({
  labour: amount,
  labourHours: quantity,
  parts: amount,
  outside: amount,
  supplies: amount,
  /** As typed, without the fee for waste. */
  fees: amount,
  /** The fee for waste that the shop's rule adds; 0 if none. */
  wasteFee: z.strictObject({ words: z.string(), amount }),
  core: amount,
  discount: amount,
  /** oldUnits: on the value of old units taken in exchange, always on top of the prices. */
  taxes: z.array(z.strictObject({ name: z.string(), ratePpm: z.int(), base: amount, amount, oldUnits: z.boolean() })),
  net: amount,
  tax: amount,
  gross: amount,
  reckoning: z.array(
    z.strictObject({
      rule: z.string(),
      on: z.record(z.string(), z.union([z.string(), z.number()])),
      result: z.number(),
    }),
  ),
});

/** Yes up to, against on the sheet (RULINGS: the yes, exactly). */
export const yesAgainstSheet = z.strictObject({
  ceiling: amount,
  allowed: amount,
  onSheet: amount,
  coveredTotal: amount,
  coveredExcess: amount,
  /** Jobs without a yes, with the sum they add. */
  held: z.array(z.strictObject({ jobId: id, letter: z.string(), title: z.string() })),
  heldSum: amount,
  /** The most that the customer wants to spend, and by how much the sheet is over it. */
  ownMaximum: amount.nullable(),
  overMaximum: amount,
  inside: z.boolean(),
  /** What the yes lacks in writing where the shop wants that above a sum: told, nothing is held by it. */
  unwritten: z.enum(['no-quote', 'by-word']).nullable(),
});

export const nextMove = z.strictObject({
  whose: z.enum(['ours', 'customer', 'supplier', 'nobody']),
  /** Key of the next thing; its sentence lives in words. */
  what: z.string(),
  with: z.record(z.string(), z.union([z.string(), z.number()])),
  since: instant,
  promise: z.enum(['none', 'fine', 'soon', 'late']),
});

export const clockEntry = z.strictObject({
  id,
  personId: id,
  person: z.string(),
  jobId: id.nullable(),
  kind: z.enum(['work', 'break']),
  on: instant,
  off: instant.nullable(),
  forgotten: z.boolean(),
  corrects: id.nullable(),
  why: z.string(),
  counts: z.boolean(),
});
export const openClock = z.strictObject({
  personId: id,
  person: z.string(),
  orderId: id.nullable(),
  orderNumber: z.int().nullable(),
  jobId: id.nullable(),
  kind: z.enum(['work', 'break']),
  on: instant,
});

export const stop = z.strictObject({
  what: z.enum(STOP_WHATS),
  /** never: no way past it; owner: with a printed reason; note: anybody with a note. */
  override: z.enum(['never', 'owner', 'note']),
  with: z.record(z.string(), z.union([z.string(), z.number()])),
});

export const wholeOrder = z.strictObject({
  id,
  number: z.int(),
  revision,
  openedAt: instant,
  openedBy: z.string(),
  customer: customerBrief.extend({
    tellBy: z.string(),
    email: z.string(),
    address: z.array(z.string()),
    mayYes: z.array(z.strictObject({ name: z.string(), upTo: amount.nullable() })),
  }),
  payer: customerBrief.nullable(),
  car: carBrief,
  lastMileage: mileage.nullable(),
  /** A sale over the counter: its car stands for none. */
  counterSale: z.boolean(),
  complaint: z.string(),
  when: z.array(z.string()),
  door: atTheDoor,
  mileageIn: mileage.nullable(),
  mileageOut: mileage.nullable(),
  arrivedAt: instant.nullable(),
  handedOverAt: instant.nullable(),
  /** Who drove it away; '' while it is here. */
  handedOverTo: z.string(),
  cancelledAt: instant.nullable(),
  cancelWhy: z.string(),
  promiseAt: instant.nullable(),
  promiseWords: z.string(),
  ownMaximum: amount.nullable(),
  poNumber: z.string(),
  poRequired: z.boolean(),
  /** Work waits for the order number of whoever pays. */
  poHoldsWork: z.boolean(),
  /** Against the limit of the account that pays; null where none is set, or it is invoiced. */
  credit: orderCredit.nullable(),
  /** Whoever pays is exempt from tax. */
  taxExempt: z.boolean(),
  oldPartsAnswer: z.string(),
  booking: z
    .strictObject({ bay: z.string(), day: civilDate, from: z.string(), hours: z.int(), personId: id.nullable() })
    .nullable(),
  /** The place that they did not come to, while they have no other one. */
  missed: z.strictObject({ bay: z.string(), day: civilDate, from: z.string() }).nullable(),
  findings: z.array(finding),
  jobs: z.array(job),
  discounts: z.array(z.strictObject({ id, on: z.enum(['labour', 'parts', 'all']), reduction, words: z.string() })),
  /** null without the right to see prices; then `yes.inside` alone tells the bench. */
  sums: sums.nullable(),
  yes: yesAgainstSheet.partial().required({ inside: true, held: true, unwritten: true }),
  decisions: z.array(decision),
  tries: z.array(
    z.strictObject({ id, at: instant, way: z.string(), reached: z.string(), words: z.string(), by: z.string() }),
  ),
  clocks: z.array(clockEntry),
  openClocks: z.array(openClock),
  moves: z.array(
    z.strictObject({
      id,
      lineId: id.nullable(),
      jobId: id,
      partId: id,
      words: z.string(),
      quantity: z.int(),
      at: instant,
      by: z.string(),
      cost: seenAmount,
    }),
  ),
  awaited: z.array(
    z.strictObject({
      id,
      lineId: id,
      kind: z.enum(['part', 'outside']),
      supplier: z.string(),
      reference: z.string(),
      words: z.string(),
      orderedAt: instant,
      dueOn: civilDate.nullable(),
      arrivedAt: instant.nullable(),
      cost: seenAmount,
    }),
  ),
  papers: z.array(paperBrief),
  payments: z.array(
    z.strictObject({
      id,
      at: instant,
      kind: z.enum(['deposit', 'payment', 'refund', 'credit', 'rounding']),
      way: z.string(),
      amount,
      receiptPaperId: id.nullable(),
    }),
  ),
  /** Of what is invoiced; before an invoice, deposits stand as a negative balance. */
  balance: amount.nullable(),
  declinedBefore: z.array(declinedWork),
  next: nextMove,
  stops: z.array(stop),
});
