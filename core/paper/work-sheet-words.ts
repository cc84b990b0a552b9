type Second = 'looks' | 'holds' | 'signs' | 'does it';

/** Every word that a bench copy adds to the shop's own. */
export interface WorkSheetWords {
  readonly title: string;
  readonly order: string;
  readonly fromBook: string;
  readonly version: (n: number) => string;
  readonly yesOn: (date: string) => string;
  readonly before: (unit: string) => string;
  readonly after: (unit: string) => string;
  readonly atTheDoor: (figure: string) => string;
  readonly step: string;
  readonly doneBy: string;
  readonly second: string;
  readonly secondDoes: Readonly<Record<Second, string>>;
  readonly hold: string;
  readonly fresh: (count: number, part: string) => string;
  readonly out: (what: string, litres: string) => string;
  readonly into: (what: string, litres: string) => string;
  readonly litresOut: string;
  readonly litresIn: string;
  readonly strokes: (about: number | null) => string;
  readonly sample: (millilitres: number, how: string) => string;
  readonly sampleLabel: string;
  readonly photo: string;
  readonly card: string;
  readonly between: (what: string, least: string, most: string, unit: string) => string;
  readonly level: (words: string) => string;
  readonly tool: (words: string) => string;
  readonly from: (source: string) => string;
  readonly crosswise: (holes: number, rounds: number) => string;
  readonly asNumbered: (holes: number, rounds: number) => string;
  readonly lengthened: (length: number, angle: number) => string;
  readonly circle: string;
  readonly side: (n: number) => string;
  readonly clocks: string;
  readonly who: string;
  readonly on: string;
  readonly off: string;
  readonly found: string;
  readonly wrench: string;
  readonly tools: string;
  readonly keyedIn: string;
  readonly manual: string;
  readonly printed: (date: string, time: string) => string;
}

const ENGLISH: WorkSheetWords = {
  title: 'Bench copy',
  order: 'Order',
  fromBook: 'Job book',
  version: (n) => `job book version ${n}`,
  yesOn: (date) => `yes on ${date}`,
  before: (unit) => `${unit} before test`,
  after: (unit) => `${unit} after`,
  atTheDoor: (figure) => `${figure} at the door`,
  step: 'step',
  doneBy: 'done by',
  second: 'second',
  secondDoes: { looks: 'look', holds: 'hold', signs: 'sign', 'does it': 'does it' },
  hold: 'Hold',
  fresh: (count, part) => `${count} new: ${part}.`,
  out: (what, litres) => `Out: ${what}, about ${litres} L.`,
  into: (what, litres) => `In: ${what}, ${litres} L.`,
  litresOut: 'out, L',
  litresIn: 'in, L',
  strokes: (about) => (about === null ? 'pump strokes' : `pump strokes, about ${about}`),
  sample: (millilitres, how) => `Sample: ${millilitres} ml${how === '' ? '' : `, ${how}`}.`,
  sampleLabel: 'sample no.',
  photo: 'photo',
  card: 'card given',
  between: (what, least, most, unit) => `${what} ${least} to ${most} ${unit}`.trim(),
  level: (words) => `Full: ${words}.`,
  tool: (words) => `With ${words}.`,
  from: (source) => `Figures: ${source}`,
  crosswise: (holes, rounds) => `${holes}, in this order, ${rounds === 1 ? 'one round' : `${rounds} rounds`}`,
  asNumbered: (holes, rounds) => `${holes}, ${rounds === 1 ? 'one round' : `${rounds} rounds`}`,
  lengthened: (length, angle) => `extension ${length} mm${angle === 0 ? '' : ` at ${angle}°`}: set by the reckoner`,
  circle: 'once round',
  side: (n) => `side ${n}`,
  clocks: 'Clocks, true times',
  who: 'who',
  on: 'on',
  off: 'off',
  found: 'Found, or used more of',
  wrench: 'wrench no. and date it is good to',
  tools: 'all tools counted, by',
  keyedIn: 'keyed in by, at (the sheet keeps the true times)',
  manual: 'The maker’s manual rules over this sheet.',
  printed: (date, time) => `Printed ${date}, ${time}`,
};

const GERMAN: WorkSheetWords = {
  title: 'Werkbankblatt',
  order: 'Auftrag',
  fromBook: 'Arbeitsbuch',
  version: (n) => `Arbeitsbuch, Fassung ${n}`,
  yesOn: (date) => `Zusage vom ${date}`,
  before: (unit) => `${unit} vor der Probefahrt`,
  after: (unit) => `${unit} danach`,
  atTheDoor: (figure) => `${figure} bei Annahme`,
  step: 'Schritt',
  doneBy: 'getan von',
  second: 'Zweiter',
  secondDoes: { looks: 'schaut', holds: 'hält', signs: 'zeichnet', 'does it': 'tut es' },
  hold: 'Halt',
  fresh: (count, part) => `${count} neu: ${part}.`,
  out: (what, litres) => `Heraus: ${what}, etwa ${litres} L.`,
  into: (what, litres) => `Hinein: ${what}, ${litres} L.`,
  litresOut: 'heraus, L',
  litresIn: 'hinein, L',
  strokes: (about) => (about === null ? 'Pumpenhübe' : `Pumpenhübe, etwa ${about}`),
  sample: (millilitres, how) => `Probe: ${millilitres} ml${how === '' ? '' : `, ${how}`}.`,
  sampleLabel: 'Probe Nr.',
  photo: 'Foto',
  card: 'Karte mitgegeben',
  between: (what, least, most, unit) => `${what} ${least} bis ${most} ${unit}`.trim(),
  level: (words) => `Voll: ${words}.`,
  tool: (words) => `Mit ${words}.`,
  from: (source) => `Werte: ${source}`,
  crosswise: (holes, rounds) =>
    `${holes}, in dieser Reihenfolge, ${rounds === 1 ? 'ein Durchgang' : `${rounds} Durchgänge`}`,
  asNumbered: (holes, rounds) => `${holes}, ${rounds === 1 ? 'ein Durchgang' : `${rounds} Durchgänge`}`,
  lengthened: (length, angle) =>
    `Verlängerung ${length} mm${angle === 0 ? '' : ` unter ${angle}°`}: Einstellwert ausrechnen`,
  circle: 'einmal rundum',
  side: (n) => `Seite ${n}`,
  clocks: 'Zeiten, wie sie waren',
  who: 'wer',
  on: 'an',
  off: 'ab',
  found: 'Gefunden oder mehr gebraucht',
  wrench: 'Schlüssel Nr. und gültig bis',
  tools: 'Werkzeug vollzählig, gezählt von',
  keyedIn: 'eingegeben von, am (die wahren Zeiten bleiben)',
  manual: 'Das Handbuch des Herstellers geht diesem Blatt vor.',
  printed: (date, time) => `Gedruckt ${date}, ${time}`,
};

/** The words of a language. */
export const workSheetWords = (language: 'en' | 'de'): WorkSheetWords => (language === 'de' ? GERMAN : ENGLISH);
