import { z } from 'zod';
import { price, words } from './scalars.ts';
import { lawNote } from './sheet-settings.ts';

/**
 * Who sees what beside the owner, who sees everything. The desk always sees prices: it writes the papers and takes the
 * money. Enforced in what an operation returns.
 */
export const seesRule = z.strictObject({
  mechanicPrices: z.boolean(),
  deskCost: z.boolean(),
  mechanicCost: z.boolean(),
});

/**
 * From when a unit's own lab history says something: so many earlier samples, so many kilometres on the fluid; and past how
 * many standard deviations over the mean, in tenths, it is an alert and an alarm. Common practice, no source.
 */
export const fluidGuards = z
  .strictObject({
    fewestSamples: z.int().min(2).max(50),
    fewestKm: z.int().min(1).max(100_000),
    alertTenths: z.int().min(1).max(100),
    alarmTenths: z.int().min(1).max(100),
  })
  .refine((guards) => guards.alarmTenths > guards.alertTenths, { path: ['alarmTenths'], error: 'alarm-below-alert' });

/** What leaving a car here costs a calendar day, after so many free working days. Told at the door, order by order. */
export const storageTerms = z.strictObject({
  perDay: price.min(1),
  freeWorkingDays: z.int().min(0).max(60),
  ...lawNote,
});

/** Above this sum, tax in, an estimate in writing is wanted before a yes. Exactly the sum is not above it. */
export const writtenEstimate = z.strictObject({ above: price, ...lawNote });

/** Sentences that a local rule wants printed, each where it belongs; '' for none. */
export const printedNotices = z.strictObject({
  oldParts: words(600),
  labourBasis: words(600),
  storage: words(600),
  testDrive: words(600),
});
export type PrintedNotice = keyof z.output<typeof printedNotices>;

/** How a date is written: as the language does it, or in figures. */
export const dateForm = z.enum(['language', 'day-month', 'month-day', 'year-month']);
