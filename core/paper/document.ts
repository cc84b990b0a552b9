import type { LineKind } from '../money/line.ts';

/**
 * The frozen data of a paper: plain JSON, worked out once when the paper is issued, stored, and printed from there.
 * Every sum stands in the document already; whoever draws it adds up nothing.
 * Amounts are minor units of `currency`, quantities thousandths of their unit, dates and times those of the shop's
 * own zone. A text that is not there is '', a thing that is not there is null, a list that is not there is [].
 */
export type PaperDocument = QuotePaper | InvoicePaper | CreditNotePaper | ReceiptPaper;
export type PaperKind = PaperDocument['kind'];

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

/** What every paper has. */
export interface PaperCommon {
  /** The shape of this document; a later shape gets a later number, stored papers keep theirs. */
  readonly shape: 1;
  /** Practice shop: the paper says so and is not a real one. */
  readonly practice: boolean;
  /** Tag of the words' language. */
  readonly language: 'en' | 'de';
  readonly size: 'A4' | 'Letter';
  readonly currency: PaperCurrency;
  readonly garage: PaperGarage;
  readonly number: number;
  /** The date of issue. */
  readonly date: PaperDate;
  /** The same moment in epoch milliseconds: the date inside the PDF file. */
  readonly issuedAt: number;
  readonly orderNumber: number;
  /** Name first, then the lines of the address: who the paper is made out to. */
  readonly billTo: readonly string[];
  /** The customer's tax number, where one must be shown. */
  readonly billToTaxNumber: string;
  /** The customer's own order number (PO), '' where there is none. */
  readonly purchaseOrder: string;
  readonly car: PaperCar | null;
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
}

export type PaperMethod = 'cash' | 'card' | 'transfer' | 'account';

export interface PaperTaken {
  readonly what: 'deposit' | 'payment' | 'credit';
  readonly method: PaperMethod | null;
  readonly date: PaperDate;
  /** Positive; printed as taken off. */
  readonly amount: number;
}

export interface PaperSums {
  /** Subtotals by kind in the order they are printed; a kind that is not on the sheet is left out. */
  readonly rows: readonly {
    readonly kind: PaperSumKind;
    /** Hours charged in thousandths, for labour; null else. */
    readonly hours: number | null;
    readonly amount: number;
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

export interface QuotePaper extends PaperCommon {
  readonly kind: 'quote';
  readonly version: number;
  readonly validUntil: PaperDate | null;
  readonly mileage: PaperMileage;
  readonly dates: { readonly in: PaperDate | null };
  /** The customer's own words. */
  readonly complaint: string;
  readonly found: string;
  readonly jobs: readonly PaperJob[];
  readonly sums: PaperSums;
  /** Priced jobs that stand under the sum and are not in it. */
  readonly offered: readonly PaperJob[];
  readonly yes: readonly PaperYes[];
  readonly declined: readonly PaperDeclined[];
  /** The customer's wish for the old parts, as a sentence; '' when not asked yet. */
  readonly oldParts: string;
  readonly warranty: string;
  /** Sentences of the shop and of local law, as the owner typed them. */
  readonly notices: readonly string[];
}

export interface InvoicePaper extends PaperCommon {
  readonly kind: 'invoice';
  readonly mileage: PaperMileage;
  readonly dates: { readonly in: PaperDate | null; readonly out: PaperDate | null };
  readonly complaint: string;
  readonly found: string;
  readonly jobs: readonly PaperJob[];
  readonly sums: PaperSums;
  readonly taken: readonly PaperTaken[];
  /** What cash rounding adds (or, below zero, takes off); 0 for none. */
  readonly cashRounding: number;
  readonly toPay: number;
  readonly payBy: PaperDate | null;
  /** How to pay, as a sentence of the shop; '' for the usual one. */
  readonly payTerms: string;
  readonly yes: readonly PaperYes[];
  readonly declined: readonly PaperDeclined[];
  readonly tightened: readonly PaperTightened[];
  /** Owner's reasons for what was let pass, printed. */
  readonly overrides: readonly { readonly what: string; readonly reason: string; readonly by: string }[];
  /** What became of the old parts, as a sentence. */
  readonly oldParts: string;
  readonly nextDue: readonly PaperNextDue[];
  readonly warranty: string;
  readonly notices: readonly string[];
}

/** Amounts are positive: the paper itself says that they are credited. */
export interface CreditNotePaper extends PaperCommon {
  readonly kind: 'credit-note';
  readonly corrects: { readonly number: number; readonly date: PaperDate };
  readonly reason: string;
  readonly jobs: readonly PaperJob[];
  readonly sums: PaperSums;
  /** What happens with the money, as a sentence; '' for none. */
  readonly settlement: string;
  readonly notices: readonly string[];
}

export interface ReceiptPaper extends PaperCommon {
  readonly kind: 'receipt';
  readonly what: 'deposit' | 'payment' | 'refund';
  readonly method: PaperMethod;
  /** Positive. */
  readonly amount: number;
  /** The invoice it is for; null when it is for the order (a deposit). */
  readonly invoice: { readonly number: number; readonly date: PaperDate; readonly total: number } | null;
  /** Cash handed over and given back; null for other methods. */
  readonly cash: { readonly handed: number; readonly back: number } | null;
  /** What cash rounding added (or, below zero, took off). */
  readonly cashRounding: number;
  /** Still to pay after this; null where there is no invoice yet. */
  readonly balance: number | null;
  readonly takenBy: string;
  readonly note: string;
  readonly notices: readonly string[];
}
