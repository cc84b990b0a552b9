import type { EntryKind, StatementSums } from '../books/statement.ts';
import type { DateForm } from '../time/date-form.ts';
import type { PaperCurrency, PaperDate, PaperGarage, PaperMethod, PaperMoment } from './parts.ts';

/** What an entry belongs to: the customer's car and the shop's order. */
export interface StatementAbout {
  readonly orderNumber: number;
  readonly plate: string;
}

export interface StatementRow {
  readonly on: PaperDate;
  readonly kind: EntryKind;
  /** Of the invoice, the credit note or the receipt; null where there is no paper. */
  readonly number: number | null;
  readonly method: PaperMethod | null;
  readonly about: StatementAbout;
  /** Above zero owed, below zero paid or credited. */
  readonly amount: number;
  /** Owed after it. */
  readonly balance: number;
}

export interface StatementOpen {
  readonly number: number | null;
  readonly on: PaperDate;
  readonly dueOn: PaperDate;
  readonly about: StatementAbout;
  readonly gross: number;
  readonly open: number;
  /** Below zero: days still to go. */
  readonly daysPastDue: number;
}

/**
 * What stands between the garage and a customer from day to day: made on demand, in no series, kept nowhere. It says what
 * it was made from, so that a later one that says otherwise explains itself. Amounts are minor units; all were added
 * before.
 */
export interface StatementDocument {
  readonly practice: boolean;
  readonly language: 'en' | 'de';
  /** Absent: as the language writes a date. */
  readonly dateForm?: DateForm;
  readonly size: 'A4' | 'Letter';
  readonly currency: PaperCurrency;
  readonly garage: PaperGarage;
  /** Name first, then the lines of the address. */
  readonly to: readonly string[];
  readonly taxNumber: string;
  readonly from: PaperDate;
  readonly until: PaperDate;
  /** What was recorded by then is in it. */
  readonly asOf: PaperMoment;
  /** The same moment in epoch milliseconds. */
  readonly asOfInstant: number;
  readonly opening: number;
  readonly rows: readonly StatementRow[];
  readonly sums: StatementSums;
  readonly closing: number;
  /** Oldest due first. */
  readonly open: readonly StatementOpen[];
  /** Money that stands on no invoice, as positive sums; about: what it was taken for. */
  readonly unapplied: readonly { readonly about: StatementAbout | null; readonly sum: number }[];
  /** Open sums by days past due, up to each edge, the last all above. */
  readonly ageing: readonly { readonly upTo: number | null; readonly sum: number }[];
}
