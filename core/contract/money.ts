import { z } from 'zod';
import { ask } from './operation.ts';
import { amount, civilDate, id, instant, seenAmount, words } from './scalars.ts';
import { paperBrief } from './whole-order.ts';

const paperKind = paperBrief.shape.kind;

/** A paper in a list, with whom and what it is about. */
export const paperRow = z.strictObject({
  id,
  kind: paperKind,
  number: z.int(),
  version: z.int().nullable(),
  orderId: id,
  orderNumber: z.int(),
  customerId: id,
  /** Whom it is made out to. */
  customer: z.string(),
  plate: z.string(),
  issuedAt: instant,
  issuedOn: civilDate,
  gross: seenAmount,
  dueOn: civilDate.nullable(),
  validUntil: civilDate.nullable(),
  /** Number of the invoice that a credit note corrects. */
  corrects: z.int().nullable(),
  /** When it was last recorded as sent. */
  sentAt: instant.nullable(),
});

export const moneyRoom = {
  /** All papers, newest first. The next page is asked for with the last row's id as `before`. */
  'paper.list': ask(
    'desk',
    z.strictObject({
      kind: paperKind.nullable().default(null),
      /** A number, a name or a plate. */
      text: words(60).default(''),
      before: id.nullable().default(null),
      most: z.int().min(1).max(200).default(50),
    }),
    z.strictObject({ rows: z.array(paperRow) }),
  ),
  /** Issued and not recorded as sent, oldest first; of a quote only the newest version, and none once it is invoiced. */
  'paper.toSend': ask(
    'desk',
    z.strictObject({ most: z.int().min(1).max(500).default(200) }),
    z.strictObject({
      rows: z.array(paperRow.extend({ tellBy: z.string(), email: z.string(), phone: z.string() })),
    }),
  ),
  /** What is owed and by when, what came in today, what lies in the drawer of it. */
  'money.get': ask(
    'desk',
    z.strictObject({}),
    z.strictObject({
      asOf: civilDate,
      unpaid: z.array(
        z.strictObject({
          paperId: id,
          number: z.int(),
          orderId: id,
          orderNumber: z.int(),
          customerId: id,
          customer: z.string(),
          plate: z.string(),
          issuedOn: civilDate,
          dueOn: civilDate,
          /** Days since the invoice. */
          age: z.int(),
          /** Below zero: days still to go. */
          daysPastDue: z.int(),
          gross: amount,
          open: amount,
        }),
      ),
      /** Sum of what is open, without what stands in a customer's favour. */
      owed: amount,
      /** By days past due: up to each edge in days, the last one all above. Common practice, no source. */
      ageing: z.array(z.strictObject({ upTo: z.int().nullable(), sum: amount })),
      /** Invoices that were paid or credited beyond their sum, as positive sums. */
      inFavour: z.array(
        z.strictObject({ paperId: id, number: z.int(), orderId: id, customer: z.string(), sum: amount }),
      ),
      /** Deposits on orders that are not invoiced yet. */
      deposits: amount,
      today: z.strictObject({
        ways: z.array(
          z.strictObject({
            way: z.enum(['cash', 'card', 'transfer']),
            in: amount,
            /** Paid back, as a positive sum. */
            back: amount,
            count: z.int(),
          }),
        ),
        in: amount,
        back: amount,
        /** Cash taken less cash paid back today; a float and what was carried to the bank are not recorded here. */
        drawer: amount,
      }),
    }),
  ),
};
