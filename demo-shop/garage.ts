import type { InputOf } from '../core/contract/index.ts';

type SetUp = InputOf<'shop.setUp'>;

/** The people of the invented garage, with the codes that the demo prints. Pay in cents an hour. */
export const PEOPLE = [
  { name: 'Runa', role: 'owner', code: 'runa-4127', payRate: 3400 },
  { name: 'Piet', role: 'desk', code: 'piet-1012', payRate: 2800 },
  { name: 'Nessa', role: 'mechanic', code: 'nessa-7590', payRate: 2600 },
] as const;

export type PersonName = (typeof PEOPLE)[number]['name'];

/** Hours a day that each works at the bench, thousandths. */
export const BENCH_HOURS: readonly (readonly [PersonName, number])[] = [
  ['Runa', 7000],
  ['Piet', 2000],
  ['Nessa', 8000],
];

/** Saltmarsh Motor Works, Port Ansel. Invented, its tax and its rules of the yes too: no place's law is meant. */
export const SALTMARSH: SetUp = {
  settings: {
    name: 'Saltmarsh Motor Works',
    address: ['14 Causeway Road', 'Port Ansel'],
    phone: '555-0100',
    email: 'desk@saltmarsh.example',
    registration: 'PA-2207',
    taxNumber: 'T-2207',
    logoPng: null,
    currency: 'USD',
    decimal: '.',
    group: ',',
    zone: 'UTC',
    language: 'en',
    paper: 'Letter',
    distance: 'mi',
    torque: 'N·m',
    prices: 'exclusive',
    taxRounding: 'document',
    cashStep: 5,
    supplies: { mode: 'itemise' },
    overrun: { mode: 'none', bp: 0, fixed: 0, cap: null, base: 'gross', edge: 'inside', source: '', checkedOn: null },
    taxes: [
      {
        id: 'sales',
        name: 'Sales tax',
        ratePpm: 62_500,
        kinds: ['part', 'fluid', 'supplies', 'core'],
        source: 'invented for the demo garage',
        checkedOn: null,
      },
    ],
    quoteDays: 14,
    payDays: 14,
    followUpDays: 30,
    followUpDistance: 1200,
    warranty: 'Work and parts are warranted for 12 months or 12,000 miles, whichever comes first.',
    notices: ['Replaced parts are shown or returned when asked for before the work.'],
    firstNumbers: { order: 1151, quote: 269, invoice: 1133, creditNote: 20, receipt: 621 },
    planOpens: '08:00',
    planCloses: '17:30',
  },
  people: [...PEOPLE],
  bays: [
    { name: 'Bay 1', words: 'two-post lift' },
    { name: 'Bay 2', words: 'four-post lift' },
    { name: 'Floor', words: 'by the door' },
  ],
  rates: [{ name: 'Labour', price: 12_800, usual: true }],
};

/** Stock of the first day: quantities in thousandths, prices and costs in cents. */
export const STOCK = {
  bolt: {
    number: 'RG-1012',
    words: 'Ring-gear bolt, M10 fine',
    unit: '',
    price: 485,
    cost: 260,
    bin: 'C 14',
    oneTime: true,
    keepAtLeast: 12_000,
    onHand: 36_000,
  },
  washer: {
    number: 'CW-18',
    words: 'Crush washer, drain and fill',
    unit: '',
    price: 210,
    cost: 60,
    bin: 'D 02',
    oneTime: true,
    keepAtLeast: 10_000,
    onHand: 40_000,
  },
  ring: {
    number: 'OR-583',
    words: 'O-ring 58 x 3',
    unit: '',
    price: 640,
    cost: 220,
    bin: 'D 07',
    oneTime: true,
    keepAtLeast: 2000,
    onHand: 5000,
  },
  gearOil: {
    number: 'GO-7590',
    words: 'Gear oil 75W-90, synthetic',
    unit: 'L',
    price: 3150,
    cost: 1480,
    bin: 'Oil 3',
    oneTime: false,
    keepAtLeast: 10_000,
    onHand: 22_500,
  },
  engineOil: {
    number: 'EO-0530',
    words: 'Engine oil 5W-30',
    unit: 'L',
    price: 1400,
    cost: 520,
    bin: 'Oil 1',
    oneTime: false,
    keepAtLeast: 40_000,
    onHand: 160_000,
  },
} as const satisfies Record<string, InputOf<'part.add'>>;

/** Where each part of the stock stands, once it is put in. */
export type StockIds = Record<keyof typeof STOCK, string>;
