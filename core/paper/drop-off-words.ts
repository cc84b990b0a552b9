import type { DropOffSlip } from './drop-off.ts';

/** Every word that a drop-off slip adds to the shop's own. */
interface DropOffWords {
  readonly title: string;
  readonly order: (number: string) => string;
  readonly came: string;
  readonly cameAtNight: string;
  readonly booked: string;
  readonly says: string;
  readonly mileage: string;
  readonly keys: string;
  readonly keysAt: (keys: string, where: string) => string;
  readonly wheelLock: string;
  readonly fuel: string;
  readonly left: string;
  readonly drive: string;
  readonly driveWords: (yes: boolean, limit: string) => string;
  readonly oldParts: string;
  readonly oldPartsWords: Readonly<Record<Exclude<DropOffSlip['oldParts'], 'unasked'>, string>>;
  readonly yes: string;
  readonly upTo: (sum: string) => string;
  readonly deposit: string;
  readonly promise: string;
  readonly storage: string;
  readonly storageTold: string;
  readonly storageWords: (perDay: string, free: number) => string;
  readonly marks: string;
  readonly noMarks: string;
  readonly signed: string;
  readonly unsigned: string;
  readonly takenBy: (name: string) => string;
  readonly noOrder: string;
}

const ENGLISH: DropOffWords = {
  title: 'Drop-off slip',
  order: (number) => `Order ${number}`,
  came: 'Here since',
  cameAtNight: 'Found here',
  booked: 'Booked for',
  says: 'You say',
  mileage: 'Mileage',
  keys: 'Keys',
  keysAt: (keys, where) => [keys, where].filter((part) => part !== '').join(', hung at '),
  wheelLock: 'Wheel lock key',
  fuel: 'Fuel',
  left: 'Left in the car',
  drive: 'Test drive',
  driveWords: (yes, limit) => (yes ? `agreed${limit === '' ? '' : `, no farther than ${limit}`}` : 'not agreed'),
  oldParts: 'Old parts',
  oldPartsWords: { show: 'are shown to you', return: 'are given back to you', dispose: 'are disposed of' },
  yes: 'Said yes to',
  upTo: (sum) => `work up to ${sum}, tax in`,
  deposit: 'Deposit held',
  promise: 'Promised',
  storage: 'Left standing',
  storageTold: 'You were told what it costs to leave the car here once it is done.',
  storageWords: (perDay, free) =>
    `${perDay} a day once the car is done and you were told; the first ${free} working days cost nothing.`,
  marks: 'Marks on the car',
  noMarks: 'None was written down.',
  signed: 'Signed for the marks and for what is written above',
  unsigned: 'The car was left without meeting anybody. Nobody signed; the marks are as we found them.',
  takenBy: (name) => `Taken in by ${name}`,
  noOrder: 'This slip says what was left with us. It is no order: work begins with a yes of its own.',
};

const GERMAN: DropOffWords = {
  title: 'Annahmeschein',
  order: (number) => `Auftrag ${number}`,
  came: 'Hier seit',
  cameAtNight: 'Vorgefunden',
  booked: 'Bestellt für',
  says: 'Sie sagen',
  mileage: 'Laufleistung',
  keys: 'Schlüssel',
  keysAt: (keys, where) => [keys, where].filter((part) => part !== '').join(', am Haken '),
  wheelLock: 'Felgenschloss',
  fuel: 'Kraftstoff',
  left: 'Im Auto gelassen',
  drive: 'Probefahrt',
  driveWords: (yes, limit) => (yes ? `erlaubt${limit === '' ? '' : `, nicht weiter als ${limit}`}` : 'nicht erlaubt'),
  oldParts: 'Altteile',
  oldPartsWords: { show: 'werden gezeigt', return: 'werden ausgehändigt', dispose: 'werden entsorgt' },
  yes: 'Zugesagt',
  upTo: (sum) => `Arbeiten bis ${sum} mit Steuer`,
  deposit: 'Anzahlung',
  promise: 'Versprochen',
  storage: 'Stehenlassen',
  storageTold: 'Ihnen wurde gesagt, was das Stehenlassen nach der Fertigstellung kostet.',
  storageWords: (perDay, free) =>
    `${perDay} am Tag nach der Fertigmeldung; die ersten ${free} Arbeitstage kosten nichts.`,
  marks: 'Spuren am Auto',
  noMarks: 'Keine aufgeschrieben.',
  signed: 'Unterschrieben für die Spuren und was oben steht',
  unsigned: 'Das Auto wurde ohne Begegnung abgestellt. Niemand hat unterschrieben; die Spuren sind wie vorgefunden.',
  takenBy: (name) => `Angenommen von ${name}`,
  noOrder: 'Dieser Schein sagt, was bei uns gelassen wurde. Er ist kein Auftrag: Arbeit beginnt mit einer Zusage.',
};

export const dropOffWords = (language: 'en' | 'de'): DropOffWords => (language === 'de' ? GERMAN : ENGLISH);
