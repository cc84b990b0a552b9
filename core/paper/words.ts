import type { LineKind } from '../money/line.ts';
import type { PassedStop, Stop } from '../order/stops.ts';
import { type DateForm, dateInFigures } from '../time/date-form.ts';
import type {
  PaperDate,
  PaperDocument,
  PaperKind,
  PaperLine,
  PaperMethod,
  PaperSumKind,
  PaperYes,
} from './document.ts';
import { GERMAN } from './words-de.ts';
import { ENGLISH } from './words-en.ts';

/** Wishes of the intake or the yes, then answers of the close-out. */
export type OldPartsSaid = ('show' | 'return' | 'dispose') | ('returned' | 'shown' | 'core' | 'refused' | 'disposed');

/** Every word that papers add to the garage's own. One table a language; sentences are functions. */
export interface PaperWords {
  readonly title: Readonly<Record<PaperKind, string>>;
  readonly practice: string;
  readonly practiceNote: string;
  readonly page: (page: number, of: number) => string;
  readonly continued: string;
  /** `short` leaves out the year. */
  readonly date: (date: PaperDate, short: boolean) => string;
  readonly facts: Readonly<Record<'for' | 'car' | 'mileage' | 'dates' | 'order' | 'paper', string>>;
  readonly plate: (plate: string) => string;
  readonly vin: (vin: string) => string;
  readonly taxNumber: (number: string) => string;
  readonly purchaseOrder: (number: string) => string;
  readonly orderNumber: (number: string) => string;
  readonly mileageIn: (figure: string) => string;
  readonly mileageOut: (figure: string) => string;
  readonly dateIn: (date: string) => string;
  readonly dateOut: (date: string) => string;
  readonly issued: (date: string) => string;
  readonly validUntil: (date: string) => string;
  readonly version: (version: string) => string;
  readonly quotes: readonly [string, string];
  readonly columns: Readonly<Record<'quantity' | 'each', string>>;
  readonly lineKind: Readonly<Record<LineKind, string>>;
  readonly condition: Readonly<Record<Exclude<PaperLine['condition'], ''>, string>>;
  readonly outsideWork: string;
  readonly given: string;
  readonly estimated: string;
  readonly lineDiscount: (amount: string) => string;
  readonly sum: Readonly<Record<PaperSumKind, string>>;
  readonly hours: (hours: string) => string;
  readonly discount: string;
  readonly net: string;
  readonly taxAdded: (name: string, rate: string, base: string) => string;
  readonly taxHeld: (name: string, rate: string, base: string) => string;
  readonly taxOnOldUnits: (name: string, rate: string, base: string) => string;
  readonly total: string;
  readonly taken: Readonly<Record<'deposit' | 'payment' | 'refund' | 'credit', string>>;
  readonly method: Readonly<Record<PaperMethod, string>>;
  readonly cashRounding: string;
  readonly toPay: string;
  readonly toCredit: string;
  readonly inYourFavour: string;
  /** `name` is '' where several people said yes: then each line names its own. */
  readonly saidYes: (name: string) => string;
  readonly yes: (yes: PaperYes, when: string, upTo: string, named: boolean) => string;
  readonly saidNo: string;
  readonly unsafe: string;
  readonly tightened: string;
  readonly letPass: string;
  /** What was in the way of the invoice and was let pass. */
  readonly letPassWhat: Readonly<Record<PassedStop, (figures: Stop['with']) => string>>;
  readonly letPassBy: (reason: string, by: string) => string;
  readonly oldParts: string;
  /** What the customer wants done with the old parts, and what became of them. */
  readonly oldPartsSaid: Readonly<Record<OldPartsSaid, string>>;
  /** What leaving the car here costs once it is done; `perDay` with its currency. */
  readonly storage: (perDay: string, freeWorkingDays: number, plusTax: boolean) => string;
  readonly storageTitle: string;
  /** The fee with its reckoning; `perDay` bare. */
  readonly storageFee: (days: number, freeWorkingDays: number, perDay: string) => string;
  readonly offered: string;
  readonly offeredNote: string;
  readonly warranty: string;
  readonly nextDue: string;
  readonly due: (what: string, date: string, mileage: string) => string;
  /** Bold start and the rest of the sentence. */
  readonly payBy: (date: string, number: string, ownTerms: string) => readonly [string, string];
  readonly paid: string;
  readonly received: string;
  readonly sayYes: string;
  readonly corrects: (number: string, date: string) => string;
  readonly reason: string;
  readonly receiptFor: Readonly<Record<'deposit' | 'payment' | 'refund', string>>;
  readonly forInvoice: (number: string, date: string, total: string) => string;
  readonly forOrder: (number: string) => string;
  readonly cash: (handed: string, back: string) => string;
  readonly balance: string;
  readonly takenBy: (name: string) => string;
}

/** The words of a language; dates in figures where the shop writes them so. */
export function paperWords(language: PaperDocument['language'], form: DateForm = 'language'): PaperWords {
  const words = language === 'de' ? GERMAN : ENGLISH;
  if (form === 'language') return words;
  // With its year always: day and month in figures alone could be read either way round.
  return { ...words, date: (date, short) => dateInFigures(date, form, false) ?? words.date(date, short) };
}

/** 'Invoice 1187', as a file or a message calls the paper. */
export function paperName(document: PaperDocument): string {
  return `${paperWords(document.language).title[document.kind]} ${document.number}`;
}
