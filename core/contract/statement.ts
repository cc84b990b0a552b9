import { z } from 'zod';
import { ENTRY_KINDS } from '../books/statement.ts';
import { act, ask } from './operation.ts';
import { amount, civilDate, id, instant, needed } from './scalars.ts';

/** Both days are in it. from null: the first of the month of the last day; until null: today. */
const period = { from: civilDate.nullable().default(null), until: civilDate.nullable().default(null) };
const periodSaid = { from: civilDate, until: civilDate, asOf: instant };

const step = z.strictObject({
  rule: z.string(),
  on: z.record(z.string(), z.union([z.string(), z.number()])),
  result: amount,
});
/** Open sums by days past due: up to each edge in days, the last one all above. Common practice, no source. */
const ageing = z.array(z.strictObject({ upTo: z.int().nullable(), sum: amount }));
const entry = {
  kind: z.enum(ENTRY_KINDS),
  on: civilDate,
  paperId: id.nullable(),
  number: z.int().nullable(),
  orderId: id,
  orderNumber: z.int(),
  plate: z.string(),
};
const pdf = z.strictObject({ name: z.string(), base64: z.string() });

/** What is done with a statement before it is sent. */
const statementNote = z.enum(['made', 'mail']);

/** A statement that was made in a run, as the list of it shows it. */
const runRow = z.strictObject({
  id,
  customerId: id,
  customer: z.string(),
  email: z.string(),
  /** Owed by it, minor units. */
  closing: amount,
  /** Its own file, or the one that it stands in; null: still to be made. */
  file: z.string().nullable(),
  sent: z.array(z.strictObject({ at: instant, how: z.string(), by: z.string() })),
});

/** The account of a customer from day to day, and the run that makes one for everybody who owes. */
export const statementRoom = {
  /** Opening, what moved, closing, what is open by days past due, and money that stands alone; minor units. */
  'statement.get': ask(
    'desk',
    z.strictObject({ customerId: id, ...period }),
    z.strictObject({
      ...periodSaid,
      opening: amount,
      closing: amount,
      invoiced: amount,
      credited: amount,
      paid: amount,
      back: amount,
      rounding: amount,
      rows: z.array(z.strictObject({ ...entry, amount, balance: amount })),
      open: z.array(z.strictObject({ ...entry, dueOn: civilDate, gross: amount, open: amount, daysPastDue: z.int() })),
      /** As positive sums. */
      unapplied: z.array(z.strictObject({ orderId: id, orderNumber: z.int(), plate: z.string(), sum: amount })),
      ageing,
      reckoning: z.strictObject({ opening: z.array(step), closing: z.array(step) }),
      /** Those that were recorded as sent, the last first. */
      sent: z.array(
        z.strictObject({ id, ...periodSaid, closing: amount, at: instant, how: z.string(), by: z.string() }),
      ),
    }),
  ),
  /**
   * The same as a PDF: in no series, made on demand, kept nowhere. It says what it was made from; with the same `asOf` it
   * says the same again, since nothing that it is made from changes.
   */
  'statement.pdf': ask(
    'desk',
    z.strictObject({ customerId: id, ...period, asOf: instant.nullable().default(null) }),
    pdf,
  ),
  /** Who had an open invoice on a day, the most first; minor units. */
  'statement.owing': ask(
    'desk',
    z.strictObject({ until: civilDate.nullable().default(null) }),
    z.strictObject({
      until: civilDate,
      rows: z.array(
        z.strictObject({
          customerId: id,
          customer: z.string(),
          email: z.string(),
          /** What is owed less what stands in their favour. */
          closing: amount,
          /** Of the open invoices, what is past its day. */
          pastDue: amount,
          invoices: z.int(),
          ageing,
          unapplied: amount,
          /** When a statement was last recorded as sent. */
          sentAt: instant.nullable(),
        }),
      ),
      closing: amount,
    }),
  ),
  /** Records that a statement was sent: one of a run by its id, or the one that was made for these days from then. */
  'statement.sent': act(
    'desk',
    z.union([
      z.strictObject({ id, how: needed(120) }),
      z.strictObject({ customerId: id, ...periodSaid, how: needed(120) }),
    ]),
    z.strictObject({ id }),
  ),
  /**
   * Writes into the customer's contact log that a statement was made as a PDF, or its mail opened in the mail program: one of a run by its
   * id, the one of these days from then, or all that stand in a file of a run. It is not sent by that. Each once.
   */
  'statement.noted': act(
    'desk',
    z.union([
      z.strictObject({ id, what: statementNote }),
      z.strictObject({ customerId: id, ...periodSaid, what: statementNote }),
      z.strictObject({ runId: id, name: needed(200), what: statementNote }),
    ]),
    /** How many were not noted so before. */
    z.strictObject({ noted: z.int() }),
  ),
  /**
   * Begins a statement for everybody who had an open invoice on a day: a file each, or one file for the printer. Made beside
   * the desk, in `papers/statements`; `statement.run` says how far it is.
   */
  'statement.start': act(
    'desk',
    z.strictObject({ ...period, joined: z.boolean().default(false) }),
    z.strictObject({ runId: id, of: z.int() }),
  ),
  /** Stops after the one in hand. What is made stays. */
  'statement.stop': act('desk', z.strictObject({ runId: id }), z.strictObject({ runId: id })),
  /** Makes what is still to be made of a run, from what it was begun with. */
  'statement.goOn': act('desk', z.strictObject({ runId: id }), z.strictObject({ runId: id })),
  /** How far a run is, the last one where none is named; null where there was none. */
  'statement.run': ask(
    'desk',
    z.strictObject({ runId: id.nullable().default(null) }),
    z.strictObject({
      run: z
        .strictObject({
          runId: id,
          ...periodSaid,
          joined: z.boolean(),
          of: z.int(),
          made: z.int(),
          running: z.boolean(),
          /** Asked to stop; it ends with the one in hand. */
          stopping: z.boolean(),
          /** Milliseconds of this stretch of the work so far by the shop's clock; null: none is at work. */
          spent: z.int().nullable(),
          /** How many were made before this stretch. */
          madeBefore: z.int(),
          /** Why it ended early; null: it did not. */
          failed: z.enum(['disk-full', 'read-only', 'damaged', 'fault']).nullable(),
          /** Names with characters that no font has: their statement is not made. */
          leftOut: z.array(z.strictObject({ customerId: id, customer: z.string(), characters: z.string() })),
          /** Where the files lie on the shop's machine. */
          folder: z.string(),
          files: z.array(z.string()),
          rows: z.array(runRow),
        })
        .nullable(),
    }),
  ),
  /** A file of a run. */
  'statement.file': ask('desk', z.strictObject({ runId: id, name: needed(200) }), pdf),
};
