import type { z } from 'zod';
import type { step } from '../contract/procedure.ts';
import type { DateForm } from '../time/date-form.ts';
import type { PaperCurrency, PaperGarage, PaperMileage, PaperMoment } from './parts.ts';

export type WorkSheetStep = z.output<typeof step> & {
  /** Who has done it when the sheet is printed, '' where it is still to do. */
  readonly done: string;
  /** Touches of the wrench that are made by then, in their order. */
  readonly made: number;
};

/**
 * The bench copy of a procedure: what is worked on when the power is out, and keyed in later. No prices, no series of
 * numbers. A text that is not there is '', a thing that is not there is null.
 */
export interface WorkSheetDocument {
  /** Practice shop: the sheet says so. */
  readonly practice: boolean;
  readonly language: 'en' | 'de';
  /** Absent: as the language writes a date. */
  readonly dateForm?: DateForm;
  readonly size: 'A4' | 'Letter';
  /** How figures are written; there are no sums. */
  readonly currency: PaperCurrency;
  readonly garage: PaperGarage;
  readonly printed: PaperMoment;
  /** The same moment in epoch milliseconds: the date inside the PDF file. */
  readonly writtenAt: number;
  /** The visit it is for; null for a copy straight from the job book. */
  readonly visit: {
    readonly order: number;
    readonly letter: string;
    readonly plate: string;
    readonly car: string;
    readonly vin: string;
    readonly bay: string;
    /** The day that the job was last said yes to. */
    readonly yesOn: string;
    readonly mileage: PaperMileage;
  } | null;
  readonly title: string;
  readonly version: number;
  readonly source: string;
  readonly cautions: readonly string[];
  /** Who is to clock on it, hours in thousandths; null where nobody said. */
  readonly people: readonly { readonly name: string; readonly hours: number | null }[];
  readonly steps: readonly WorkSheetStep[];
}
