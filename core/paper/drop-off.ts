import type { DrawnView } from '../car/outline.ts';
import type { CarShape } from '../car/outline-shapes.ts';
import type { DateForm } from '../time/date-form.ts';
import type { PaperCar, PaperCurrency, PaperGarage, PaperMileage, PaperMoment } from './parts.ts';

/** A mark on the car. `view` null: a side that is not drawn. Places in thousandths of the drawing's width and height. */
export interface PaperMark {
  readonly words: string;
  readonly view: DrawnView | null;
  readonly x: number;
  readonly y: number;
}

/**
 * What the garage took over at the door, for whoever left the car. No order for work and no series of numbers. A text that
 * is not there is '', a thing that was not asked or is not for whoever prints it is null.
 */
export interface DropOffSlip {
  /** Practice shop: the slip says so. */
  readonly practice: boolean;
  readonly language: 'en' | 'de';
  /** Absent: as the language writes a date. */
  readonly dateForm?: DateForm;
  readonly size: 'A4' | 'Letter';
  readonly currency: PaperCurrency;
  readonly garage: PaperGarage;
  /** Epoch milliseconds. */
  readonly madeAt: number;
  readonly orderNumber: number;
  readonly customer: string;
  readonly phone: string;
  readonly car: PaperCar;
  readonly mileage: Pick<PaperMileage, 'unit' | 'in'>;
  /** When the car came; null: it is still to come. */
  readonly came: PaperMoment | null;
  readonly booked: (PaperMoment & { readonly bay: string }) | null;
  /** Left without meeting anybody: nobody signed. */
  readonly night: boolean;
  readonly complaint: string;
  readonly keys: number | null;
  readonly keysWhere: string;
  readonly wheelLockKey: string;
  readonly fuel: string;
  readonly valuables: string;
  readonly testDrive: boolean | null;
  readonly testDriveLimit: string;
  readonly oldParts: 'unasked' | 'show' | 'return' | 'dispose';
  /** The yes that stands when it is printed, up to so much, tax in. */
  readonly yesUpTo: number | null;
  readonly deposit: number | null;
  /** What was promised, as it was said. */
  readonly promise: string;
  readonly promiseAt: PaperMoment | null;
  readonly storage: { readonly perDay: number; readonly freeWorkingDays: number } | null;
  readonly storageTold: boolean;
  /** null: nobody said what shape the car has. */
  readonly shape: CarShape | null;
  readonly marks: readonly PaperMark[];
  /** Marks that are only words. */
  readonly otherMarks: readonly string[];
  /** Sentences of the shop and of local law about storage and test drives, as the owner typed them. */
  readonly notices: readonly string[];
  /** Polylines in thousandths of the pad's width and height. */
  readonly signature: readonly (readonly (readonly [number, number])[])[] | null;
  /** Who took the car in. */
  readonly by: string;
}
