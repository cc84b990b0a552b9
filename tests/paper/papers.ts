import type {
  CreditNotePaper,
  InvoicePaper,
  PaperCommon,
  PaperJob,
  PaperLine,
  QuotePaper,
  ReceiptPaper,
} from '../../core/paper/document.ts';

/** Invented papers of an invented garage. Figures add up by hand; the code under test adds up none. */

export function line(
  words: string,
  quantity: number,
  unitPrice: number,
  amount: number,
  more: Partial<PaperLine> = {},
): PaperLine {
  return {
    kind: 'part',
    words,
    partNumber: '',
    condition: '',
    quantity,
    unit: '',
    unitPrice,
    amount,
    discount: 0,
    given: false,
    estimated: false,
    note: '',
    ...more,
  };
}

export function job(letter: string, title: string, amount: number, lines: readonly PaperLine[]): PaperJob {
  return { letter, title, amount, fixedPrice: false, given: false, note: '', lines };
}

export const labour = (hours: number, amount: number): PaperLine =>
  line('', hours, 12800, amount, { kind: 'labour', unit: 'h' });

export const COMMON: PaperCommon = {
  shape: 1,
  practice: false,
  language: 'en',
  size: 'Letter',
  currency: { code: 'USD', sign: 'US$', digits: 2, decimal: '.', group: ',' },
  garage: {
    name: 'Saltmarsh Motor Works',
    address: ['14 Causeway Road', 'Port Ansel'],
    phone: '555-0100',
    email: '',
    registration: 'registered repairer PA-2207',
    taxNumber: '00-5550100',
    logo: {
      kind: 'paths',
      width: 54,
      height: 54,
      paths: [
        { d: 'M27 1.5a25.5 25.5 0 1 0 0 51a25.5 25.5 0 1 0 0 -51z', stroke: 3 },
        { d: 'M10 33q4.2 -5 8.5 0t8.5 0t8.5 0t8.5 0M14 40q3.3 -4 6.5 0t6.5 0t6.5 0t6.5 0', stroke: 2.6 },
        { d: 'M27 9v19M21 14v14M33 16v12', stroke: 2.6 },
      ],
    },
  },
  number: 1187,
  date: '2026-11-20',
  issuedAt: Date.UTC(2026, 10, 20, 22, 15),
  orderNumber: 1186,
  billTo: ['Ilse Vandermeer', '8 Tollgate Lane', 'Port Ansel'],
  billToTaxNumber: '',
  purchaseOrder: '',
  car: { name: 'Corvane R, 2016', plate: 'KTB 4471', vin: '9ZCGT6R32GL005187' },
};

export const JOBS: readonly PaperJob[] = [
  job('A', 'Find the whine', 10240, [labour(800, 10240)]),
  job('B', 'Swap the differential for a rebuilt unit', 275000, [
    labour(6200, 79360),
    line('Rebuilt differential, exchange', 1000, 184000, 184000, { partNumber: 'RD-4127X', condition: 'rebuilt' }),
    line('Ring-gear bolt, M10 fine', 12000, 485, 5820, { partNumber: 'RG-1012', condition: 'new' }),
    line('Crush washer', 2000, 210, 420, { partNumber: 'CW-18', condition: 'new' }),
    line('O-ring', 1000, 640, 640, { partNumber: 'OR-583', condition: 'new' }),
    line('Gear oil 75W-90 synthetic', 1200, 3150, 3780, { kind: 'fluid', unit: 'L' }),
    line('Cleaner, rags, threadlock', 1000, 980, 980, { kind: 'part' }),
  ]),
  job('C', 'Oil sample to the lab', 4200, [line('Fennick Fluid Lab', 1000, 4200, 4200, { kind: 'outside' })]),
  job('D', 'Left output seal', 10250, [
    labour(500, 6400),
    line('Output seal', 1000, 3850, 3850, { partNumber: 'OS-2214', condition: 'new' }),
  ]),
];

export const INVOICE: InvoicePaper = {
  ...COMMON,
  kind: 'invoice',
  mileage: { unit: 'mi', in: 61480, out: 61492 },
  dates: { in: '2026-11-18', out: '2026-11-20' },
  complaint: 'It whines from the back over fifty, louder on the overrun.',
  found:
    'Pinion bearing worn, ring-gear teeth pitted on the coast side. Whole unit changed for a rebuilt one, the old one returned to the rebuilder.',
  jobs: JOBS,
  sums: {
    rows: [
      { kind: 'labour', hours: 7500, amount: 96000 },
      { kind: 'parts-and-fluids', hours: null, amount: 199490 },
      { kind: 'outside', hours: null, amount: 4200 },
    ],
    discounts: [],
    prices: 'exclusive',
    taxes: [{ name: 'Sales tax', ratePpm: 62500, base: 199490, amount: 12468 }],
    exempt: '',
    net: 299690,
    tax: 12468,
    total: 312158,
  },
  taken: [{ what: 'deposit', method: 'card', date: '2026-11-18', amount: 50000 }],
  cashRounding: 0,
  toPay: 262158,
  payBy: '2026-12-04',
  payTerms: '',
  yes: [
    {
      at: { date: '2026-11-17', time: '16:43' },
      way: 'phone',
      name: 'Ilse Vandermeer',
      reached: '555-0142',
      upTo: 18000,
      jobs: ['A'],
    },
    {
      at: { date: '2026-11-18', time: '11:32' },
      way: 'message',
      name: 'Ilse Vandermeer',
      reached: '',
      upTo: 310000,
      jobs: ['B', 'C'],
    },
    {
      at: { date: '2026-11-20', time: '16:09' },
      way: 'phone',
      name: 'Ilse Vandermeer',
      reached: '555-0142',
      upTo: 315000,
      jobs: ['D'],
    },
  ],
  declined: [
    {
      title: 'Rear brake hoses',
      amount: 18600,
      date: '2026-11-20',
      unsafe: true,
      risk: 'Cracked to the cords: a hose may burst when braking hard.',
    },
  ],
  tightened: [
    { what: 'Ring-gear bolts, 12, cross pattern', figure: '85 N·m (63 lbf·ft)' },
    { what: 'Drain and fill plugs', figure: '35 N·m (26 lbf·ft)' },
    { what: 'Wheel bolts', figure: '110 N·m (81 lbf·ft)' },
  ],
  overrides: [],
  oldParts: 'Shown to you; the old unit went back to the rebuilder.',
  nextDue: [{ what: 'Rear axle oil', date: null, mileage: 62500 }],
  warranty: 'Work and parts on this sheet: 12 months or 12,000 miles, whichever comes first, street use.',
  notices: [],
};

/** The invoice exactly as the picture has it, with the issue date and tax number that an invoice needs besides. */
export const PICTURED_INVOICE: InvoicePaper = {
  ...INVOICE,
  declined: [],
  oldParts: '',
  nextDue: [],
  warranty:
    'The work and parts on this sheet are warranted for 12 months or 12,000 miles, street use. Have the oil changed again at 62,500 miles. The lab’s result follows by post.',
};

export const QUOTE: QuotePaper = {
  ...COMMON,
  kind: 'quote',
  size: 'A4',
  number: 412,
  version: 2,
  validUntil: '2026-12-18',
  mileage: INVOICE.mileage,
  dates: { in: '2026-11-18' },
  complaint: INVOICE.complaint,
  found: INVOICE.found,
  jobs: JOBS,
  sums: INVOICE.sums,
  offered: [
    job('E', 'Rear brake hoses', 18600, [
      labour(1000, 12800),
      line('Brake hose, rear', 2000, 2900, 5800, { condition: 'new' }),
    ]),
  ],
  yes: INVOICE.yes.slice(0, 1),
  declined: [],
  oldParts: 'Please show me the old parts.',
  warranty: INVOICE.warranty,
  notices: [
    'We ask before anything that goes beyond this sheet. Taking apart and putting together again is charged as job A tells.',
  ],
};

export const CREDIT_NOTE: CreditNotePaper = {
  ...COMMON,
  kind: 'credit-note',
  number: 31,
  date: '2026-11-24',
  corrects: { number: 1187, date: '2026-11-20' },
  reason: 'Two ring-gear bolts were charged too many.',
  jobs: [
    job('B', 'Swap the differential for a rebuilt unit', 970, [
      line('Ring-gear bolt, M10 fine', 2000, 485, 970, { partNumber: 'RG-1012', condition: 'new' }),
    ]),
  ],
  sums: {
    rows: [{ kind: 'parts-and-fluids', hours: null, amount: 970 }],
    discounts: [],
    prices: 'exclusive',
    taxes: [{ name: 'Sales tax', ratePpm: 62500, base: 970, amount: 61 }],
    exempt: '',
    net: 970,
    tax: 61,
    total: 1031,
  },
  settlement: 'Taken off what is still to pay on invoice 1187.',
  notices: [],
};

export const RECEIPT: ReceiptPaper = {
  ...COMMON,
  kind: 'receipt',
  size: 'A4',
  number: 902,
  date: '2026-11-24',
  what: 'payment',
  method: 'cash',
  amount: 200000,
  invoice: { number: 1187, date: '2026-11-20', total: 312158 },
  cash: { handed: 200000, back: 0 },
  cashRounding: 0,
  balance: 61127,
  takenBy: 'Ottoline Brack',
  note: '',
  notices: [],
};
