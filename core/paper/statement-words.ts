import type { EntryKind } from '../books/statement.ts';
import type { StatementDocument } from './statement.ts';
import { paperWords } from './words.ts';

/** Every word that a statement adds to those of the other papers. */
export interface StatementWords {
  readonly title: string;
  readonly span: (from: string, until: string) => string;
  readonly madeFrom: string;
  readonly asOf: (date: string, time: string) => string;
  readonly column: Readonly<Record<'day' | 'paper' | 'about' | 'owed' | 'paid' | 'balance', string>>;
  readonly openColumn: Readonly<Record<'due' | 'standing' | 'of' | 'open', string>>;
  readonly kind: Readonly<Record<EntryKind, string>>;
  readonly order: (number: string) => string;
  readonly opening: (from: string) => string;
  readonly carried: string;
  readonly nothingMoved: string;
  readonly openingSum: string;
  readonly invoiced: string;
  readonly credited: string;
  readonly paid: string;
  readonly back: string;
  readonly rounding: string;
  readonly toPay: string;
  readonly inYourFavour: string;
  readonly settled: string;
  readonly open: string;
  readonly pastDue: (days: number) => string;
  readonly dueToday: string;
  readonly toGo: (days: number) => string;
  readonly ageing: string;
  readonly notDue: string;
  readonly upTo: (from: number, to: number) => string;
  readonly above: (days: number) => string;
  readonly unapplied: string;
  readonly unappliedOf: (order: string) => string;
  readonly unappliedNote: string;
  readonly howToPay: readonly [string, string];
  readonly nothingToPay: string;
  readonly doubt: string;
}

const ENGLISH: StatementWords = {
  title: 'Statement',
  span: (from, until) => `${from} to ${until}`,
  madeFrom: 'Made from',
  asOf: (date, time) => `what was written down by ${date}, ${time}`,
  column: { day: 'Day', paper: 'Paper', about: 'For', owed: 'Charged', paid: 'Paid', balance: 'Owed' },
  openColumn: { due: 'Due', standing: 'Stands', of: 'Of', open: 'Open' },
  kind: {
    invoice: 'Invoice',
    'credit-note': 'Credit note',
    deposit: 'Deposit',
    payment: 'Payment',
    refund: 'Paid back',
    rounding: 'Cash rounding',
  },
  order: (number) => `order\u00a0${number}`,
  opening: (from) => `Owed before ${from}`,
  carried: 'Carried over',
  nothingMoved: 'Nothing was charged and nothing was paid in these days.',
  openingSum: 'Owed before',
  invoiced: 'Invoices',
  credited: 'Credit notes',
  paid: 'Payments',
  back: 'Paid back',
  rounding: 'Cash rounding',
  toPay: 'Owed',
  inYourFavour: 'In your favour',
  settled: 'Settled',
  open: 'Open invoices',
  pastDue: (days) => (days === 1 ? '1 day past due' : `${days} days past due`),
  dueToday: 'due on the last day',
  toGo: (days) => (days === 1 ? '1 day to go' : `${days} days to go`),
  ageing: 'By days past due',
  notDue: 'not due',
  upTo: (from, to) => `${from} to ${to}`,
  above: (days) => `over ${days}`,
  unapplied: 'Stands alone',
  unappliedOf: (order) => `paid for ${order}`,
  unappliedNote: 'Money that stands on no invoice. It is in the sum owed, and makes no open invoice smaller.',
  howToPay: [
    'Please pay what is due',
    'at the desk, or by transfer with the numbers of the invoices as the reference.',
  ],
  nothingToPay: 'Nothing is to be paid. Thank you.',
  doubt: 'If something here is not as you have it, please ring us. What was paid after the day above is not in it.',
};

const GERMAN: StatementWords = {
  title: 'Kontoauszug',
  span: (from, until) => `${from} bis ${until}`,
  madeFrom: 'Erstellt aus',
  asOf: (date, time) => `allem, was bis ${date}, ${time} Uhr erfasst war`,
  column: { day: 'Tag', paper: 'Beleg', about: 'Für', owed: 'Berechnet', paid: 'Gezahlt', balance: 'Offen' },
  openColumn: { due: 'Fällig', standing: 'Stand', of: 'Von', open: 'Offen' },
  kind: {
    invoice: 'Rechnung',
    'credit-note': 'Rechnungskorrektur',
    deposit: 'Anzahlung',
    payment: 'Zahlung',
    refund: 'Zurückgezahlt',
    rounding: 'Barrundung',
  },
  order: (number) => `Auftrag\u00a0${number}`,
  opening: (from) => `Offen vor dem ${from}`,
  carried: 'Übertrag',
  nothingMoved: 'In diesen Tagen wurde nichts berechnet und nichts gezahlt.',
  openingSum: 'Offen davor',
  invoiced: 'Rechnungen',
  credited: 'Korrekturen',
  paid: 'Zahlungen',
  back: 'Zurückgezahlt',
  rounding: 'Barrundung',
  toPay: 'Offen',
  inYourFavour: 'Zu Ihren Gunsten',
  settled: 'Ausgeglichen',
  open: 'Offene Rechnungen',
  pastDue: (days) => (days === 1 ? '1 Tag überfällig' : `${days} Tage überfällig`),
  dueToday: 'am letzten Tag fällig',
  toGo: (days) => (days === 1 ? 'noch 1 Tag' : `noch ${days} Tage`),
  ageing: 'Nach Tagen der Überfälligkeit',
  notDue: 'nicht fällig',
  upTo: (from, to) => `${from} bis ${to}`,
  above: (days) => `über ${days}`,
  unapplied: 'Steht für sich',
  unappliedOf: (order) => `gezahlt für ${order}`,
  unappliedNote: 'Geld, das zu keiner Rechnung gehört. Es ist im offenen Betrag und macht keine Rechnung kleiner.',
  howToPay: ['Bitte zahlen Sie, was fällig ist,', 'bei uns oder per Überweisung mit den Rechnungsnummern als Zweck.'],
  nothingToPay: 'Es ist nichts zu zahlen. Vielen Dank.',
  doubt: 'Wenn etwas nicht stimmt, rufen Sie uns bitte an. Was nach dem genannten Tag gezahlt wurde, steht nicht hier.',
};

export const statementWords = (language: 'en' | 'de'): StatementWords => (language === 'de' ? GERMAN : ENGLISH);

/** 'Statement 2026-06-30 Hollow Lane Farm', as a file or a message calls it. */
export const statementName = ({
  language,
  to,
  until,
}: {
  readonly language: 'en' | 'de';
  readonly to: readonly string[];
  readonly until: string;
}): string => `${statementWords(language).title} ${until} ${to[0] ?? ''}`.trim();

/** Both days in words; the first without its year where the second has the same. */
export const spanText = ({
  language,
  dateForm,
  from,
  until,
}: Pick<StatementDocument, 'language' | 'dateForm' | 'from' | 'until'>): string => {
  const { date } = paperWords(language, dateForm);
  return statementWords(language).span(date(from, from.slice(0, 4) === until.slice(0, 4)), date(until, false));
};
