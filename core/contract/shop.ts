import { z } from 'zod';
import { SUPPLIES_BASES } from '../money/line.ts';
import { act, ask } from './operation.ts';
import {
  amount,
  basisPoints,
  changeOf,
  distanceUnit,
  done,
  id,
  instant,
  lineKind,
  needed,
  price,
  ratePpm,
  revision,
  role,
  words,
} from './scalars.ts';
import { lawNote, sheetSettings } from './sheet-settings.ts';
import { dateForm, fluidGuards, printedNotices, seesRule, storageTerms, writtenEstimate } from './shop-terms.ts';

export const overrunRule = z.strictObject({
  mode: z.enum(['none', 'pct', 'lesser', 'greater']),
  bp: basisPoints,
  fixed: price,
  cap: price.nullable(),
  base: z.enum(['gross', 'net']),
  edge: z.enum(['inside', 'outside']),
  ...lawNote,
});

export const suppliesRule = z.discriminatedUnion('mode', [
  z.strictObject({ mode: z.literal('itemise') }),
  z.strictObject({
    mode: z.literal('percent'),
    base: z.enum(SUPPLIES_BASES).default('labour'),
    bp: basisPoints,
    cap: price.nullable(),
    floor: price.nullable(),
    sentence: words(300),
  }),
]);

export const tax = z.strictObject({
  id,
  name: needed(60),
  ratePpm,
  kinds: z.array(lineKind),
  ...lawNote,
});

export const shopSettings = z.strictObject({
  ...sheetSettings,
  name: needed(120),
  address: z.array(words(120)).max(4),
  phone: words(40),
  email: words(120),
  registration: words(120),
  taxNumber: words(60),
  /** A picture as data: PNG base64, shown at the head of papers. */
  logoPng: z
    .string()
    .max(400_000)
    .regex(/^[A-Za-z0-9+/=]*$/)
    .nullable(),
  currency: z.string().regex(/^[A-Z]{3}$/),
  decimal: z.enum(['.', ',']),
  group: z.enum([',', '.', ' ', '']),
  zone: needed(60),
  language: z.enum(['en', 'de']),
  paper: z.enum(['A4', 'Letter']),
  distance: distanceUnit,
  torque: z.enum(['N·m', 'lbf·ft']),
  prices: z.enum(['exclusive', 'inclusive']),
  taxRounding: z.enum(['document', 'line']),
  cashStep: z.int().min(1).max(1000),
  supplies: suppliesRule,
  /** The most that the desk takes off a line without the owner, basis points of what it would cost. */
  deskDiscount: basisPoints.default(10_000),
  overrun: overrunRule,
  taxes: z.array(tax).max(6),
  quoteDays: z.int().min(1).max(365),
  payDays: z.int().min(0).max(365),
  followUpDays: z.int().min(0).max(3650),
  followUpDistance: z.int().min(0).max(1_000_000),
  warranty: words(600),
  notices: z.array(words(600)).max(8),
  /** First number of each series, taken once at set-up. */
  firstNumbers: z.strictObject({
    order: z.int().min(1),
    quote: z.int().min(1),
    invoice: z.int().min(1),
    creditNote: z.int().min(1),
    receipt: z.int().min(1),
  }),
  /** Monday = 1 to Sunday = 7. */
  workingWeekdays: z.array(z.int().min(1).max(7)).max(7).default([1, 2, 3, 4, 5]),
  /** Share of the present hours that is promised to customers, hundredths of a percent. Common practice, no source. */
  plannedShareBp: basisPoints.default(8500),
  /** The shop's own wording of messages, with {names} of figures in it; '' for the program's. */
  messages: z
    .strictObject({ ready: words(2000), found: words(2000), partLate: words(2000), reminder: words(2000) })
    .default({ ready: '', found: '', partLate: '', reminder: '' }),
  /** Until when and how far a repair is warranted; null where the shop gives no such promise. Whichever ends first. */
  warrantyTerms: z
    .strictObject({
      months: z.int().min(1).max(120),
      distance: z.int().min(1).max(1_000_000),
      edgesIncluded: z.boolean(),
      ...lawNote,
    })
    .nullable()
    .default(null),
  /** Papers and their orders are kept for so many years after the one they are of. The longest that applies to the shop. */
  retentionYears: z
    .strictObject({ years: z.int().min(0).max(50), ...lawNote })
    .default({ years: 10, source: '', checkedOn: null }),
  /** Somebody who asks what is kept about them has an answer within so many days. */
  privacyDays: z.int().min(1).max(365).default(30),
  /** So many days before a date and so far before a distance a reminder comes up. */
  remindDays: z.int().min(0).max(365).default(14),
  /** Whether a car's storage is charged for the day it is fetched. A local rule may forbid or limit the fee. */
  storageOnCollectionDay: z.boolean().default(true),
  /** Wheels that were off are tightened again after so far, in the shop's own distance; null: no such card. Common practice, no source. */
  wheelRecheckDistance: z.int().min(1).max(10_000).nullable().default(80),
  /** A lab that has not answered, and an old unit that has not come back, are spoken of after so many days. */
  labDays: z.int().min(1).max(365).default(14),
  coreDays: z.int().min(1).max(365).default(30),
  /** A part that lies there and has not moved for so many months is named. Common practice, no source. */
  deadStockMonths: z.int().min(1).max(120).default(12),
  planOpens: z.string().regex(/^\d\d:\d\d$/),
  planCloses: z.string().regex(/^\d\d:\d\d$/),
  sees: seesRule.default({ mechanicPrices: false, deskCost: false, mechanicCost: false }),
  fluidGuards: fluidGuards.default({ fewestSamples: 4, fewestKm: 1000, alertTenths: 20, alarmTenths: 30 }),
  /** The shop's usual storage terms, which booking in fills in; null where none are charged. */
  storage: storageTerms.nullable().default(null),
  writtenEstimate: writtenEstimate.nullable().default(null),
  printed: printedNotices.default({ oldParts: '', labourBasis: '', storage: '', testDrive: '' }),
  dateForm: dateForm.default('language'),
  /** The unit in which the bench asks for fluid; litres are kept. */
  volume: z.enum(['L', 'US qt']).default('L'),
  /** What the warranty leaves out, printed behind it. */
  warrantyExclusions: words(600).default(''),
});

/** The next number of each series. */
const nextNumbers = z.strictObject({
  order: z.int(),
  quote: z.int(),
  invoice: z.int(),
  creditNote: z.int(),
  receipt: z.int(),
});

/** Hours of a person's week, Monday to Sunday, thousandths of an hour. */
const week = z.array(z.int().min(0).max(24_000)).length(7);

export const person = z.strictObject({
  id,
  name: needed(60),
  role,
  payRate: amount.nullable(),
  active: z.boolean(),
  revision,
  /** Hours there, Monday to Sunday, thousandths; null where nobody has said. */
  week: week.nullable(),
});
export const bay = z.strictObject({ id, name: needed(40), words: words(60) });
export const labourRate = z.strictObject({ id, name: needed(60), price, usual: z.boolean() });

const newPerson = z.strictObject({
  name: needed(60),
  role,
  code: z.string().min(4).max(40),
  payRate: price.default(0),
});

export const shopRoom = {
  'shop.setUp': act(
    'anyone',
    z.strictObject({
      settings: shopSettings,
      people: z
        .array(newPerson)
        .min(1)
        .max(20)
        .refine((all) => all.some((p) => p.role === 'owner'), { error: 'owner-needed' }),
      bays: z.array(z.strictObject({ name: needed(40), words: words(60) })).max(12),
      rates: z
        .array(z.strictObject({ name: needed(60), price, usual: z.boolean() }))
        .min(1)
        .max(12),
      /** Put the four starting jobs into the job book. */
      jobBook: z.boolean().default(true),
    }),
    z.strictObject({ people: z.array(z.strictObject({ id, name: z.string(), role })) }),
  ),
  'shop.get': ask(
    'anyone',
    z.strictObject({}),
    z.strictObject({
      isSetUp: z.boolean(),
      practice: z.boolean(),
      folder: z.string(),
      /** Things to know about where the shop is kept: a synced folder and the like. */
      warnings: z.array(
        z.strictObject({
          what: z.enum(['synced-folder', 'network-folder', 'commits-lost', 'other-file', 'no-ballast']),
          with: z.record(z.string(), z.union([z.string(), z.number()])),
        }),
      ),
      settings: shopSettings.nullable(),
      revision: z.int(),
      people: z.array(person),
      bays: z.array(bay),
      rates: z.array(labourRate),
      /** null before somebody has signed in. */
      nextNumbers: nextNumbers.nullable(),
      now: instant,
    }),
  ),
  'shop.change': act(
    'owner',
    z.strictObject({ revision, settings: changeOf(shopSettings) }),
    z.strictObject({ revision }),
  ),
  'person.add': act('owner', newPerson, done),
  'person.change': act(
    'owner',
    z.strictObject({
      id,
      revision,
      name: needed(60).optional(),
      role: role.optional(),
      payRate: price.optional(),
      active: z.boolean().optional(),
      code: z.string().min(4).max(40).optional(),
      week: week.nullable().optional(),
    }),
    done,
  ),
  'presence.come': act('crew', z.strictObject({}), z.strictObject({})),
  'presence.go': act('crew', z.strictObject({}), z.strictObject({})),
};
