import type { PaperSeen } from './seen.ts';

/** Words of the papers that tell what was seen, and of the label of a sample. */
export interface SeenWords {
  readonly title: string;
  readonly photos: string;
  readonly goneThrough: (title: string, by: string, when: string) => string;
  readonly order: (number: string) => string;
  readonly heading: Readonly<Record<PaperSeen, string>>;
  /** Below a heading; '' for none. */
  readonly note: Readonly<Record<PaperSeen, string>>;
  readonly least: (figure: string) => string;
  readonly most: (figure: string) => string;
  readonly source: (source: string) => string;
  readonly taken: (when: string, by: string) => string;
  readonly close: string;
  readonly serial: (serial: string) => string;
  readonly onFluid: (distance: string) => string;
  readonly clock: (reading: string) => string;
  readonly drawn: (date: string, by: string) => string;
}

const ENGLISH: SeenWords = {
  title: 'What we saw',
  photos: 'Photos',
  goneThrough: (title, by, when) => `${title}, gone through by ${by}, ${when}`,
  order: (number) => `order ${number}`,
  heading: {
    unsafe: 'Unsafe now',
    soon: 'Soon',
    watch: 'To be watched',
    fine: 'Nothing found',
    'not-seen': 'Not looked at',
  },
  note: {
    unsafe: 'The car should not be driven before this is mended.',
    soon: 'Before the next service.',
    watch: 'We look again at the next visit.',
    fine: '',
    'not-seen': '',
  },
  least: (figure) => `at least ${figure}`,
  most: (figure) => `at most ${figure}`,
  source: (source) => `limit: ${source}`,
  taken: (when, by) => `${when}, ${by}`,
  close: 'None of this is ordered by this paper. You get a price first, and we start when you say yes.',
  serial: (serial) => `serial ${serial}`,
  onFluid: (distance) => `${distance} on this fluid`,
  clock: (reading) => `clock ${reading}`,
  drawn: (date, by) => `drawn ${date}, ${by}`,
};

const GERMAN: SeenWords = {
  title: 'Was wir gesehen haben',
  photos: 'Fotos',
  goneThrough: (title, by, when) => `${title}, durchgegangen von ${by}, ${when}`,
  order: (number) => `Auftrag ${number}`,
  heading: {
    unsafe: 'Jetzt nicht sicher',
    soon: 'Bald',
    watch: 'Im Auge behalten',
    fine: 'Nichts gefunden',
    'not-seen': 'Nicht angesehen',
  },
  note: {
    unsafe: 'Bevor das behoben ist, sollte das Auto nicht gefahren werden.',
    soon: 'Vor der nächsten Wartung.',
    watch: 'Beim nächsten Besuch sehen wir wieder nach.',
    fine: '',
    'not-seen': '',
  },
  least: (figure) => `mindestens ${figure}`,
  most: (figure) => `höchstens ${figure}`,
  source: (source) => `Grenze: ${source}`,
  taken: (when, by) => `${when}, ${by}`,
  close: 'Mit diesem Blatt ist nichts bestellt. Sie bekommen zuerst einen Preis; wir fangen an, wenn Sie Ja sagen.',
  serial: (serial) => `Nr. ${serial}`,
  onFluid: (distance) => `${distance} mit dieser Füllung`,
  clock: (reading) => `Stand ${reading}`,
  drawn: (date, by) => `entnommen ${date}, ${by}`,
};

/** The words of a language. */
export const seenWords = (language: 'en' | 'de'): SeenWords => (language === 'de' ? GERMAN : ENGLISH);
