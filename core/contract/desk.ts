import { z } from 'zod';
import { orderCredit } from './account.ts';
import { bookingFields } from './booking.ts';
import { consentSaid } from './customer.ts';
import { act, ask } from './operation.ts';
import {
  amount,
  changeOf,
  civilDate,
  distanceUnit,
  done,
  id,
  instant,
  mileage,
  needed,
  plate,
  price,
  revision,
  seenAmount,
  strokes,
  words,
} from './scalars.ts';

const email = z.union([z.literal(''), z.string().max(254).regex(z.regexes.unicodeEmail)]);

/** What is known of a customer; a yes may also be given by the people named here, up to their sum. */
export const customerFields = z.strictObject({
  name: needed(120),
  phone: words(40).default(''),
  phone2: words(40).default(''),
  email: email.default(''),
  address: z.array(words(120)).max(4).default([]),
  tellBy: words(60).default(''),
  taxNumber: words(60).default(''),
  taxExempt: words(120).default(''),
  poRequired: z.boolean().default(false),
  /** Where their own order number is wanted: before the invoice, or before any work. */
  poBefore: z.enum(['invoice', 'work']).default('invoice'),
  /** How much an account may owe with what it said yes to, minor units, tax in; null: none is set. The owner's to change. */
  creditLimit: price.nullable().default(null),
  mayYes: z
    .array(z.strictObject({ name: needed(120), upTo: price.nullable() }))
    .max(10)
    .default([]),
  note: words(1000).default(''),
  /** Of papers and messages; null: the shop's own. */
  language: z.enum(['en', 'de']).nullable().default(null),
  /** What the customer said: true yes, false no, null not asked. When and how is written down by `customer.consent`. */
  consents: z
    .strictObject({
      reminders: z.boolean().nullable(),
      photos: z.boolean().nullable(),
      /** Whether the car's technical history may go to its next owner. */
      history: z.boolean().nullable(),
    })
    .nullable()
    .default(null),
  /** Who pays for what is done for them (an employer, a fleet); null: they themselves. An order may name another. */
  invoiceTo: id.nullable().default(null),
});

export const carFields = z.strictObject({
  plate: plate.default(''),
  vin: words(17).default(''),
  words: needed(120),
  year: z.int().min(1900).max(2100).nullable().default(null),
  unit: distanceUnit,
  axleCode: words(60).default(''),
  note: words(1000).default(''),
});

export const carBrief = z.strictObject({
  id,
  plate: z.string(),
  vin: z.string(),
  words: z.string(),
  year: z.int().nullable(),
  unit: distanceUnit,
});
export const customerBrief = z.strictObject({ id, name: z.string(), phone: z.string() });

export const declinedWork = z.strictObject({
  decisionId: id,
  jobId: id,
  orderId: id,
  orderNumber: z.int(),
  title: z.string(),
  amount: seenAmount,
  declinedOn: civilDate,
  answer: z.enum(['no', 'later']),
  risk: z.string(),
  unsafe: z.boolean(),
  mileage: mileage.nullable(),
  followUpOn: civilDate.nullable(),
  followUpMileage: mileage.nullable(),
});

export const visit = z.strictObject({
  orderId: id,
  number: z.int(),
  openedAt: instant,
  mileageIn: mileage.nullable(),
  mileageOut: mileage.nullable(),
  complaint: z.string(),
  jobs: z.array(z.strictObject({ title: z.string(), letter: z.string(), amount: seenAmount })),
  invoice: z.strictObject({ paperId: id, number: z.int(), gross: seenAmount }).nullable(),
  /** While the order is open: since when the car is here (null: it is still to come), and its place in the plan. */
  open: z
    .strictObject({
      arrivedAt: instant.nullable(),
      booking: z.strictObject({ bay: z.string(), day: civilDate, from: z.string() }).nullable(),
    })
    .nullable(),
});

/** What the customer says of a booked or standing car, and what was taken over at the door. */
export const atTheDoor = z.strictObject({
  fuel: words(20).default(''),
  keys: z.int().min(0).max(9).nullable().default(null),
  keysWhere: words(60).default(''),
  wheelLockKey: words(60).default(''),
  marks: z.array(words(160)).max(30).default([]),
  valuables: words(200).default(''),
  testDrive: z.boolean().nullable().default(null),
  testDriveLimit: words(60).default(''),
  oldParts: z.enum(['unasked', 'show', 'return', 'dispose']).default('unasked'),
  storageTold: z.boolean().default(false),
  /** What the customer was told that leaving the car here costs: a calendar day, after so many free working days. */
  storage: z
    .strictObject({ perDay: price, freeWorkingDays: z.int().min(0).max(60) })
    .nullable()
    .default(null),
  strokes: strokes.nullable().default(null),
  /** Left here without meeting anybody, its key in the box. */
  nightDrop: z.boolean().default(false),
});

export const odometerEvent = z.enum(['read', 'replaced', 'owner-told']);

export const deskRoom = {
  'find.line': ask(
    'crew',
    z.strictObject({ text: words(60), most: z.int().min(1).max(50).default(20) }),
    z.strictObject({
      hits: z.array(
        z.strictObject({
          kind: z.enum(['car', 'customer', 'order', 'paper', 'part']),
          id,
          headline: z.string(),
          detail: z.string(),
          /** Which of its fields answered: plate, VIN, name, phone, order, number. */
          by: z.string(),
          /** What is open of a car or a customer, the newest first; at most three, and only of the best hits. */
          open: z.array(z.strictObject({ id, number: z.int(), car: z.string() })),
        }),
      ),
    }),
  ),
  'customer.add': act('desk', customerFields, done),
  'customer.change': act('desk', z.strictObject({ id, revision, change: changeOf(customerFields) }), done),
  'customer.get': ask(
    'crew',
    z.strictObject({ id }),
    z.strictObject({
      id,
      revision,
      fields: customerFields,
      cars: z.array(
        carBrief.extend({
          from: civilDate,
          /** When it was last brought by them. */
          lastHere: instant.nullable(),
          /** The order that it is here for now. */
          inShop: z.int().nullable(),
        }),
      ),
      /** Cars that were once theirs, with the plate of that time; whose they are now is not told. */
      carsGone: z.array(carBrief.extend({ from: civilDate, to: civilDate })),
      orders: z.array(z.strictObject({ id, number: z.int(), openedAt: instant, car: z.string(), toPay: seenAmount })),
      /** Orders whose invoice is made out to them and that do not come to nought, also those of others that they pay for. */
      open: z.array(z.strictObject({ id, number: z.int(), car: z.string(), toPay: seenAmount })),
      /** The sum of these, minor units. */
      owed: seenAmount,
      since: instant,
      /** What they were asked, with when and how they answered, and who wrote it down; oldest first. */
      consents: z.array(consentSaid),
      /** Bookings that they did not come to. */
      noShows: z.int(),
      /** Entries that were joined into this one, and can be parted from it again. */
      joined: z.array(z.strictObject({ joinId: id, id, name: z.string(), at: instant })),
      /** The entry that this one was joined into. */
      joinedInto: z.strictObject({ id, name: z.string() }).nullable(),
    }),
  ),
  'customer.list': ask(
    'crew',
    z.strictObject({ text: words(60).default(''), most: z.int().min(1).max(200).default(100) }),
    z.strictObject({ rows: z.array(customerBrief.extend({ cars: z.int(), lastVisit: instant.nullable() })) }),
  ),
  'car.add': act('desk', carFields.extend({ customerId: id.nullable() }), done),
  'car.change': act('desk', z.strictObject({ id, revision, change: changeOf(carFields) }), done),
  /** A new plate from a day on; the old one is kept with the day it ended. A slip of the pen is put right by car.change. */
  'car.plate': act('desk', z.strictObject({ id, revision, plate: plate.min(1), from: civilDate }), done),
  /** A new owner from a day on; the old one is kept with the day it ended. */
  'car.owner': act('desk', z.strictObject({ id, revision, customerId: id, from: civilDate }), done),
  /** A reading outside a visit, or a clock replaced: old reading, new start (TRADE 11). */
  'car.odometer': act(
    'crew',
    z.strictObject({
      id,
      reading: mileage,
      on: civilDate,
      event: odometerEvent,
      newStart: mileage.nullable().default(null),
      why: words(200).default(''),
    }),
    z.strictObject({ id }),
  ),
  'car.get': ask(
    'crew',
    z.strictObject({ id }),
    z.strictObject({
      id,
      revision,
      fields: carFields,
      owner: customerBrief.nullable(),
      owners: z.array(z.strictObject({ name: z.string(), from: civilDate, to: civilDate.nullable() })),
      plates: z.array(z.strictObject({ plate: z.string(), from: civilDate, to: civilDate.nullable() })),
      readings: z.array(
        z.strictObject({
          reading: mileage,
          on: civilDate,
          event: odometerEvent,
          newStart: mileage.nullable(),
          trueDistance: mileage,
        }),
      ),
      visits: z.array(visit),
      /** Visits before this program, as they were brought in, the newest first. */
      pastVisits: z.array(
        z.strictObject({ id, on: civilDate, mileage: mileage.nullable(), words: z.string(), amount: seenAmount }),
      ),
      declined: z.array(declinedWork),
    }),
  ),
  'car.list': ask(
    'crew',
    z.strictObject({ text: words(60).default(''), most: z.int().min(1).max(200).default(100) }),
    z.strictObject({ rows: z.array(carBrief.extend({ owner: z.string(), lastVisit: instant.nullable() })) }),
  ),
  'order.book': act(
    'desk',
    z.strictObject({
      customer: z.union([z.strictObject({ id }), z.strictObject({ add: customerFields })]),
      /** none: a sale over the counter, without a car. */
      car: z.union([
        z.strictObject({ id }),
        z.strictObject({ add: carFields }),
        z.strictObject({ none: z.literal(true) }),
      ]),
      payerId: id.nullable().default(null),
      complaint: needed(4000),
      when: z.array(words(40)).max(12).default([]),
      door: atTheDoor.prefault({}),
      mileage: mileage.nullable().default(null),
      /** What the desk answered to a doubt about the mileage (lower than last time, miles for kilometres). */
      mileageDoubt: z.enum(['none', 'as-typed', 'clock-replaced', 'owner-told']).default('none'),
      /** Already here, or still to come. */
      here: z.boolean(),
      booking: bookingFields.nullable().default(null),
      promiseAt: instant.nullable().default(null),
      promiseWords: words(80).default(''),
      ownMaximum: price.nullable().default(null),
      poNumber: words(60).default(''),
      /** Taken at the door, with a receipt of its own. */
      deposit: z
        .strictObject({ amount: price.min(1), way: z.enum(['cash', 'card', 'transfer']) })
        .nullable()
        .default(null),
    }),
    z.strictObject({
      id,
      number: z.int(),
      customerId: id,
      carId: id,
      revision,
      /** Of the deposit. */
      receipt: z.strictObject({ paperId: id, number: z.int() }).nullable(),
      /** The account that pays against its limit; null where none is set. */
      credit: orderCredit.nullable(),
    }),
  ),
  'payment.take': act(
    'desk',
    z.strictObject({
      orderId: id,
      kind: z.enum(['deposit', 'payment', 'refund']),
      way: z.enum(['cash', 'card', 'transfer']),
      /** What it settles, minor units. Cash, the whole or a part, is rounded to the shop's step by a rounding line of its own. */
      amount: price.min(1),
      invoicePaperId: id.nullable().default(null),
      note: words(200).default(''),
    }),
    z.strictObject({ id, receiptPaperId: id, receiptNumber: z.int(), handed: amount, balance: amount.nullable() }),
  ),
};
