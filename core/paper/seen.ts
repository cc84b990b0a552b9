import type { Turn } from '../photo/picture.ts';
import type { DateForm } from '../time/date-form.ts';
import type { PaperCar, PaperCurrency, PaperDate, PaperGarage, PaperMoment } from './parts.ts';

/** A photo for a paper. Width and height in pixels as they are stored; `turn` stands it upright. */
export interface PaperPicture {
  readonly kind: 'jpeg' | 'png';
  readonly width: number;
  readonly height: number;
  readonly turn: Turn;
  readonly base64: string;
  /** What it shows, in words; '' for none. */
  readonly words: string;
  readonly taken: PaperMoment;
  readonly by: string;
}

/** What was measured, in thousandths of its unit; null: no limit on that side. */
export interface PaperMeasured {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly least: number | null;
  readonly most: number | null;
  readonly source: string;
}

export type PaperSeen = 'unsafe' | 'soon' | 'watch' | 'fine' | 'not-seen';

/** Something that was looked at, and what was seen. A text that is not there is ''. */
export interface PaperSeenRow {
  readonly seen: PaperSeen;
  readonly words: string;
  readonly place: string;
  readonly said: string;
  readonly measured: PaperMeasured | null;
  readonly pictures: readonly PaperPicture[];
}

/**
 * What was seen on a car, for its owner: a list that was gone through, or the photos of an order alone. No prices, no
 * number of its own; made when it is wanted.
 */
export interface SeenPaper {
  /** Practice shop: the paper says so. */
  readonly practice: boolean;
  readonly language: 'en' | 'de';
  /** Absent: as the language writes a date. */
  readonly dateForm?: DateForm;
  readonly size: 'A4' | 'Letter';
  /** For how figures are written. */
  readonly currency: PaperCurrency;
  readonly garage: PaperGarage;
  readonly orderNumber: number;
  readonly customer: string;
  readonly car: PaperCar;
  readonly mileage: { readonly unit: 'km' | 'mi'; readonly reading: number | null };
  /** The list's title; '' for photos alone. */
  readonly title: string;
  readonly by: string;
  readonly at: PaperMoment;
  /** Epoch milliseconds: the date inside the PDF file. */
  readonly madeAt: number;
  readonly rows: readonly PaperSeenRow[];
  /** Of nothing in the list. */
  readonly pictures: readonly PaperPicture[];
}

/** What stands on a bottle. Distances in whole units of the car's own clock. */
export interface SampleLabel {
  readonly practice: boolean;
  readonly language: 'en' | 'de';
  /** Absent: as the language writes a date. */
  readonly dateForm?: DateForm;
  readonly currency: PaperCurrency;
  readonly garage: string;
  readonly label: string;
  readonly car: PaperCar;
  readonly unit: string;
  readonly serial: string;
  readonly fluid: string;
  readonly distanceUnit: 'km' | 'mi';
  readonly distance: number | null;
  readonly mileage: number | null;
  readonly drawn: PaperDate;
  readonly by: string;
  /** Epoch milliseconds: the date inside the PDF file. */
  readonly madeAt: number;
}
