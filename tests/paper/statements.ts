import { USUAL_EDGES } from '../../core/books/ageing.ts';
import { type AccountEntry, type EntryKind, statementOf } from '../../core/books/statement.ts';
import { money } from '../../core/money/money.ts';
import type { StatementDocument } from '../../core/paper/statement.ts';
import { addDays } from '../../core/time/civil.ts';

/** An entry as papers show it; all invented. */
interface Shown extends AccountEntry {
  readonly number: number | null;
  readonly method: 'cash' | 'card' | 'transfer' | null;
  readonly plate: string;
}

const PLATES = ['KTB 4471', 'JJD 311', 'PLT 9', 'OYB 902'];

export const shown = (
  kind: EntryKind,
  on: string,
  amount: number,
  item: string,
  number: number | null,
  method: Shown['method'] = null,
): Shown => ({
  ...{ kind, on, amount: money(amount), item, number, method },
  dueOn: kind === 'invoice' ? addDays(on, 30) : null,
  plate: PLATES[Number(item) % PLATES.length] ?? '',
});

/** A statement's paper from entries, reckoned as the shop reckons it. */
export function statementPaper(
  entries: readonly Shown[],
  more: Partial<StatementDocument> & { from: string; until: string },
): StatementDocument {
  const seen = statementOf(entries, more);
  const about = (entry: Shown) => ({ orderNumber: Number(entry.item), plate: entry.plate });
  return {
    ...{ practice: false, language: 'en', size: 'Letter' },
    currency: { code: 'USD', sign: 'US$', digits: 2, decimal: '.', group: ',' },
    garage: {
      ...{ name: 'Saltmarsh Motor Works', address: ['14 Causeway Road', 'Port Ansel'], phone: '555-0100' },
      ...{
        email: 'desk@saltmarsh.example',
        registration: 'registered repairer PA-2207',
        taxNumber: 'T-100',
        logo: null,
      },
    },
    ...{ to: ['Hollow Lane Farm', 'Hollow Lane 2', 'Port Ansel'], taxNumber: 'T-2207' },
    ...{ asOf: { date: '2026-07-01', time: '09:12' }, asOfInstant: Date.parse('2026-07-01T09:12:00Z') },
    ...{ opening: seen.opening, sums: seen.sums, closing: seen.closing },
    rows: seen.rows.map(({ entry, balance }) => ({
      ...{ on: entry.on, kind: entry.kind, number: entry.number, method: entry.method },
      ...{ about: about(entry), amount: entry.amount, balance },
    })),
    open: seen.open.map(({ entry, dueOn, open, daysPastDue }) => ({
      ...{ number: entry.number, on: entry.on, dueOn, about: about(entry), gross: entry.amount, open, daysPastDue },
    })),
    unapplied: seen.unapplied.map(({ item, sum }) => ({
      about: { orderNumber: Number(item), plate: PLATES[Number(item) % PLATES.length] ?? '' },
      sum,
    })),
    ageing: seen.ageing.buckets.map((sum, at) => ({ upTo: USUAL_EDGES[at] ?? null, sum })),
    ...more,
  };
}

/** The worked sum of the trade's page: 3850.00 + 2617.80 - 2000.00 = 4467.80. */
export const WORKED = statementPaper(
  [
    shown('invoice', '2026-05-20', 385_000, '1101', 1045),
    shown('invoice', '2026-06-10', 261_780, '1187', 1047),
    shown('payment', '2026-06-12', -200_000, '1101', 502, 'transfer'),
  ],
  { from: '2026-06-01', until: '2026-06-30' },
);

/** Every kind of row, every bucket, money that stands alone. */
export const FULL = statementPaper(
  [
    shown('invoice', '2026-02-20', 41_000, '1002', 1003),
    shown('invoice', '2026-03-10', 36_000, '1004', 1011),
    shown('payment', '2026-03-11', -30_000, '1004', 470, 'card'),
    shown('invoice', '2026-04-22', 7550, '1009', 1020),
    shown('deposit', '2026-06-02', -4000, '1190', 498, 'card'),
    shown('invoice', '2026-06-03', 13_728, '1188', 1046),
    shown('payment', '2026-06-03', -13_730, '1188', 499, 'cash'),
    shown('rounding', '2026-06-03', 2, '1188', 499),
    shown('credit-note', '2026-06-09', -1872, '1188', 20),
    shown('refund', '2026-06-10', 1870, '1188', 500, 'cash'),
    shown('rounding', '2026-06-10', 2, '1188', 500),
    shown('invoice', '2026-06-12', 261_780, '1187', 1047),
  ],
  { from: '2026-06-01', until: '2026-06-30' },
);

/** Several pages: a fleet's month, every third invoice paid. */
export const LONG = statementPaper(
  Array.from({ length: 90 }, (_, n) => {
    const day = addDays('2026-05-20', Math.floor(n / 2));
    return n % 3 === 2
      ? shown('payment', day, -(20_000 + 137 * (n - 2)), String(1200 + n - 2), 600 + n, 'transfer')
      : shown('invoice', day, 20_000 + 137 * n, String(1200 + n), 1100 + n);
  }),
  { from: '2026-06-01', until: '2026-07-05', size: 'A4', practice: true },
);
