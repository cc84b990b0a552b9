import { HISTORY_WORDS } from './history-words.ts';

/** One visit, or a replaced clock, as it is told. Dates and figures are written already; a text that is not there is ''. */
export interface HistoryVisit {
  readonly date: string;
  readonly mileage: string;
  readonly order: number | null;
  readonly invoice: number | null;
  /** The customer's own words; never for a later owner. */
  readonly complaint: string;
  readonly found: readonly string[];
  readonly jobs: readonly { readonly title: string; readonly amount: string; readonly parts: readonly string[] }[];
  readonly declined: readonly string[];
  readonly replaced: { readonly old: string; readonly start: string } | null;
}

export interface History {
  readonly car: string;
  readonly plate: string;
  readonly vin: string;
  /** Oldest first. */
  readonly visits: readonly HistoryVisit[];
  /** Visits that an earlier owner wished to keep back. */
  readonly keptBack: number;
}

/** A car's history as the subject and the text of a letter: it reads like a story, oldest visit first. */
export function writeHistory(history: History, language: 'en' | 'de'): { subject: string; text: string } {
  const words = HISTORY_WORDS[language];
  const visit = (one: HistoryVisit): string => {
    const head = [
      one.date,
      one.mileage,
      one.order === null ? '' : words.order(one.order),
      one.invoice === null ? '' : words.invoice(one.invoice),
    ];
    const jobs = one.jobs.flatMap((job) => [
      [job.title, job.amount].filter((text) => text !== '').join(', '),
      ...(job.parts.length === 0 ? [] : [`    ${job.parts.join('; ')}`]),
    ]);
    return [
      head.filter((text) => text !== '').join(', '),
      ...(one.complaint === '' ? [] : [`“${one.complaint}”`]),
      ...(one.replaced ? [words.replaced(one.replaced.old, one.replaced.start)] : []),
      ...one.found.map(words.found),
      ...jobs,
      ...one.declined.map(words.declined),
    ].join('\n');
  };
  const parts = [
    ...(history.vin === '' ? [] : [words.vin(history.vin)]),
    ...(history.visits.length === 0 ? [words.none] : history.visits.map(visit)),
    ...(history.keptBack === 0 ? [] : [words.keptBack(history.keptBack)]),
    words.noPromise,
  ];
  return { subject: words.title(history.car, history.plate), text: parts.join('\n\n') };
}
