import type { LineKind } from '../money/line.ts';

/** A civil date 'YYYY-MM-DD'. */
export type PaperDate = string;

/** A moment on the shop's own clock. */
export interface PaperMoment {
  readonly date: PaperDate;
  /** 'HH:MM', 24 hours; '' where only the day is known. */
  readonly time: string;
}

/** How money is written on this paper. */
export interface PaperCurrency {
  /** ISO 4217, such as 'USD'. */
  readonly code: string;
  /** What stands over the column of amounts, such as 'US$' or '€'. */
  readonly sign: string;
  /** Digits of the minor unit: 2 for cents, 0 where there is none. */
  readonly digits: number;
  readonly decimal: '.' | ',';
  readonly group: ',' | '.' | ' ' | '';
}

/** The shop's mark: paths of an SVG that is drawn in the accent, or a PNG picture. */
export type PaperLogo =
  | {
      readonly kind: 'paths';
      readonly width: number;
      readonly height: number;
      /** `stroke` is a width in the drawing's units; null fills the path. */
      readonly paths: readonly { readonly d: string; readonly stroke: number | null }[];
    }
  | { readonly kind: 'png'; readonly base64: string };

export interface PaperGarage {
  readonly name: string;
  readonly address: readonly string[];
  readonly phone: string;
  readonly email: string;
  readonly registration: string;
  readonly taxNumber: string;
  readonly logo: PaperLogo | null;
}

export interface PaperCar {
  /** Make, model and year as the shop writes them. */
  readonly name: string;
  readonly plate: string;
  readonly vin: string;
}

export interface PaperMileage {
  readonly unit: 'km' | 'mi';
  readonly in: number | null;
  readonly out: number | null;
}

export interface PaperLine {
  readonly kind: LineKind;
  readonly words: string;
  readonly partNumber: string;
  /** '' where a condition makes no sense (labour, fees …). */
  readonly condition: '' | 'new' | 'used' | 'rebuilt' | 'reconditioned';
  /** Thousandths of `unit`. */
  readonly quantity: number;
  /** 'h', 'L', '' for pieces … */
  readonly unit: string;
  readonly unitPrice: number;
  /** What the line comes to, after its own discount; 0 when given or inside a fixed price. */
  readonly amount: number;
  /** The line's own discount as a positive amount, 0 for none. */
  readonly discount: number;
  readonly given: boolean;
  /** The price is a good guess, because the bill from outside is not there yet. */
  readonly estimated: boolean;
  readonly note: string;
}

export interface PaperJob {
  readonly letter: string;
  readonly title: string;
  /** The sum of the job as printed at its head. */
  readonly amount: number;
  /** The lines are inside one price: they are printed without amounts. */
  readonly fixedPrice: boolean;
  readonly given: boolean;
  readonly note: string;
  readonly lines: readonly PaperLine[];
}

export type PaperSumKind = 'labour' | 'parts-and-fluids' | 'outside' | 'supplies' | 'fees' | 'core';

export interface PaperTaxRow {
  readonly name: string;
  /** Millionths: 20 % = 200 000. */
  readonly ratePpm: number;
  readonly base: number;
  readonly amount: number;
  /** On the value of old units taken in exchange: added to the sum even where prices hold their tax. */
  readonly oldUnits?: true;
}

export type PaperMethod = 'cash' | 'card' | 'transfer' | 'account';

export interface PaperTaken {
  readonly what: 'deposit' | 'payment' | 'refund' | 'credit';
  readonly method: PaperMethod | null;
  readonly date: PaperDate;
  /** Positive, printed as taken off; what was paid back is below zero. */
  readonly amount: number;
}

export interface PaperSums {
  /** Subtotals by kind in the order they are printed; a kind that is not on the sheet is left out. */
  readonly rows: readonly {
    readonly kind: PaperSumKind;
    /** Hours charged in thousandths, for labour; null else. */
    readonly hours: number | null;
    readonly amount: number;
    /** What a rule of the shop adds under a name of its own; left out for the kind's usual one. */
    readonly words?: string;
  }[];
  /** Discounts over the sheet, as positive amounts; printed as taken off. */
  readonly discounts: readonly { readonly words: string; readonly amount: number }[];
  /** exclusive: tax is added to the rows; inclusive: the rows hold it and it is only named. */
  readonly prices: 'exclusive' | 'inclusive';
  readonly taxes: readonly PaperTaxRow[];
  /** Why no tax is charged (certificate …), '' else. */
  readonly exempt: string;
  readonly net: number;
  readonly tax: number;
  /** Tax in. */
  readonly total: number;
}

/** A yes, as the dated list tells it. */
export interface PaperYes {
  readonly at: PaperMoment;
  readonly way: 'signed' | 'phone' | 'message' | 'person';
  /** Who said it. */
  readonly name: string;
  /** The number rung, or where the message came from; '' else. */
  readonly reached: string;
  /** Ceiling, tax in. */
  readonly upTo: number;
  /** Letters of the jobs it names. */
  readonly jobs: readonly string[];
}

/** Work that the customer said no to. */
export interface PaperDeclined {
  readonly title: string;
  readonly amount: number;
  readonly date: PaperDate;
  readonly unsafe: boolean;
  /** The risk as it was told. */
  readonly risk: string;
}

/** A torque as it was reached: words for the bolts and the figure with its units, ready to print. */
export interface PaperTightened {
  readonly what: string;
  readonly figure: string;
}

export interface PaperNextDue {
  readonly what: string;
  readonly date: PaperDate | null;
  readonly mileage: number | null;
}
