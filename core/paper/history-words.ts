/** Words of a car's history on paper, a table a language. */
export interface HistoryWords {
  readonly title: (car: string, plate: string) => string;
  readonly vin: (vin: string) => string;
  readonly order: (number: number) => string;
  readonly invoice: (number: number) => string;
  readonly found: (text: string) => string;
  readonly declined: (title: string) => string;
  readonly replaced: (old: string, start: string) => string;
  readonly none: string;
  readonly keptBack: (visits: number) => string;
  readonly noPromise: string;
}

export const HISTORY_WORDS: Readonly<Record<'en' | 'de', HistoryWords>> = {
  en: {
    title: (car, plate) => `What was done on ${car}, ${plate}`,
    vin: (vin) => `VIN ${vin}`,
    order: (number) => `order ${number}`,
    invoice: (number) => `invoice ${number}`,
    found: (text) => `Found: ${text}`,
    declined: (title) => `Not done: ${title}`,
    replaced: (old, start) => `the clock was replaced at ${old}, the new one began at ${start}`,
    none: 'Nothing was done here yet.',
    keptBack: (visits) =>
      `${visits === 1 ? 'One visit is' : `${visits} visits are`} left out, since whoever owned the car then wished it so.`,
    noPromise: 'Only what was done in this garage stands here.',
  },
  de: {
    title: (car, plate) => `Was an ${car}, ${plate}, gemacht wurde`,
    vin: (vin) => `FIN ${vin}`,
    order: (number) => `Auftrag ${number}`,
    invoice: (number) => `Rechnung ${number}`,
    found: (text) => `Gefunden: ${text}`,
    declined: (title) => `Nicht gemacht: ${title}`,
    replaced: (old, start) => `der Zähler wurde bei ${old} ersetzt, der neue begann bei ${start}`,
    none: 'Hier wurde noch nichts gemacht.',
    keptBack: (visits) =>
      `${visits === 1 ? 'Ein Besuch fehlt' : `${visits} Besuche fehlen`}, weil der damalige Halter es so wünschte.`,
    noPromise: 'Hier steht nur, was in dieser Werkstatt gemacht wurde.',
  },
};
