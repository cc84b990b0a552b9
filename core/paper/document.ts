import type { DateForm } from '../time/date-form.ts';
import type {
  PaperCar,
  PaperCurrency,
  PaperDate,
  PaperDeclined,
  PaperGarage,
  PaperJob,
  PaperMethod,
  PaperMileage,
  PaperNextDue,
  PaperSums,
  PaperTaken,
  PaperTightened,
  PaperYes,
} from './parts.ts';

export type * from './parts.ts';

/**
 * The frozen data of a paper: plain JSON, worked out once when the paper is issued, stored, and printed from there.
 * Every sum stands in the document already; whoever draws it adds up nothing.
 * Amounts are minor units of `currency`, quantities thousandths of their unit, dates and times those of the shop's
 * own zone. A text that is not there is '', a thing that is not there is null, a list that is not there is [].
 */
export type PaperDocument = QuotePaper | InvoicePaper | CreditNotePaper | ReceiptPaper;
export type PaperKind = PaperDocument['kind'];

/** What every paper has. */
export interface PaperCommon {
  /** The shape of this document; a later shape gets a later number, stored papers keep theirs. */
  readonly shape: 1;
  /** Practice shop: the paper says so and is not a real one. */
  readonly practice: boolean;
  /** Tag of the words' language. */
  readonly language: 'en' | 'de';
  /** Absent: as the language writes a date. */
  readonly dateForm?: DateForm;
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
