import type { DateOrder, Field, Mapping } from './fields.ts';
import { readSum } from './sum.ts';

/** A customer as a row names them; `key` is what the file calls them. */
export interface CustomerDraft {
  readonly key: string;
  readonly name: string;
  readonly phone: string;
  readonly phone2: string;
  readonly email: string;
  readonly address: readonly string[];
  readonly taxNumber: string;
  readonly note: string;
}

export interface CarDraft {
  readonly key: string;
  readonly plate: string;
  readonly vin: string;
  readonly words: string;
  readonly year: number | null;
  readonly note: string;
}

/** A visit before this program: what stands in the old books. `amount` in minor units. */
export interface VisitDraft {
  readonly on: string;
  readonly mileage: number | null;
  readonly words: string;
  readonly amount: number | null;
}

export interface RowProblem {
  readonly field: Field;
  readonly problem: 'missing' | 'not-a-date' | 'not-a-number' | 'two-readings' | 'wrong-form';
}

/** What a row of a file means. Only what it names stands in it. */
export interface RowDraft {
  readonly customer: CustomerDraft | null;
  readonly car: CarDraft | null;
  readonly visit: VisitDraft | null;
  readonly problems: readonly RowProblem[];
}

/** What a row holds, by what its columns mean; columns of one meaning are joined by a space, what is empty is left out. */
function valuesOf(cells: readonly string[], mapping: Pick<Mapping, 'columns'>): ReadonlyMap<Field, string> {
  const values = new Map<Field, string>();
  mapping.columns.forEach((field, at) => {
    const cell = cells[at]?.trim() ?? '';
    if (field === null || cell === '') return;
    const text = field.endsWith('note') || field === 'visit-words' ? cell : cell.replace(/\s+/g, ' ');
    const before = values.get(field);
    values.set(field, before === undefined ? text : `${before} ${text}`);
  });
  return values;
}

/** So many signs of a value are shown where it is found wrong. */
const VALUE_SHOWN = 60;

/** What stands in a row under a field, short enough for a sentence; '' where nothing does. */
export function valueShown(cells: readonly string[], mapping: Pick<Mapping, 'columns'>, field: Field): string {
  const signs = [...(valuesOf(cells, mapping).get(field) ?? '').replace(/\s+/g, ' ')];
  return signs.length > VALUE_SHOWN ? `${signs.slice(0, VALUE_SHOWN).join('')}…` : signs.join('');
}

/** Reads the cells of a row. `digits`: those of the shop's currency. Never throws: what cannot be read is a problem. */
export function readRow(cells: readonly string[], mapping: Mapping, digits: number): RowDraft {
  const values = valuesOf(cells, mapping);
  const problems: RowProblem[] = [];
  const of = (field: Field) => values.get(field) ?? '';
  const has = (what: 'customer' | 'car' | 'visit') => [...values.keys()].some((field) => field.startsWith(what));
  const read = <T>(field: Field, how: (text: string) => T | null, problem: RowProblem['problem']): T | null => {
    const text = of(field);
    if (text === '') return null;
    const value = how(text);
    if (value === null) problems.push({ field, problem });
    return value;
  };
  const readAmount = (text: string): number | null => {
    const sum = text === '' ? null : readSum(text, digits, mapping.decimal);
    if (typeof sum === 'number') return sum;
    if (text !== '') problems.push({ field: 'visit-amount', problem: sum ?? 'not-a-number' });
    return null;
  };

  const customer: CustomerDraft | null = has('customer')
    ? {
        key: of('customer-key'),
        name: joined(of('customer-first-name'), of('customer-name')),
        phone: of('customer-phone'),
        phone2: of('customer-phone2'),
        email: of('customer-email'),
        address: [
          of('customer-street'),
          joined(of('customer-postcode'), of('customer-town')),
          of('customer-country'),
        ].filter((line) => line !== ''),
        taxNumber: of('customer-tax-number'),
        note: of('customer-note'),
      }
    : null;
  const car: CarDraft | null = has('car')
    ? {
        key: of('car-key'),
        plate: of('car-plate'),
        vin: of('car-vin').toUpperCase().replace(/[\s-]/g, ''),
        words: joined(of('car-make'), of('car-model')),
        year: read('car-year', readYear, 'wrong-form'),
        note: of('car-note'),
      }
    : null;
  const visit: VisitDraft | null =
    has('visit') && (of('visit-on') !== '' || of('visit-words') !== '' || of('visit-amount') !== '')
      ? {
          on: read('visit-on', (text) => readDay(text, mapping.dates), 'not-a-date') ?? '',
          mileage: read('visit-mileage', readMileage, 'not-a-number'),
          words: of('visit-words'),
          amount: readAmount(of('visit-amount')),
        }
      : null;
  if (visit !== null && of('visit-on') === '') problems.push({ field: 'visit-on', problem: 'missing' });
  if (visit !== null && car === null) problems.push({ field: 'car-plate', problem: 'missing' });
  if (customer === null && car === null) problems.push({ field: 'customer-name', problem: 'missing' });
  return { customer, car, visit, problems };
}

const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(' ');

/** Whole kilometres or miles, thousands parted or not; null for anything else. */
function readMileage(text: string): number | null {
  const figures = text.replace(/\s*(km|mi|miles)\.?$/i, '').replace(/(?<=\d)[.,'’\s](?=\d{3}(\D|$))/g, '');
  return /^\d{1,7}$/.test(figures) ? Number(figures) : null;
}

/** A year alone or as part of a date. */
function readYear(text: string): number | null {
  const year = Number(/(?:^|\D)((?:19|20)\d\d)(?:\D|$)/.exec(text)?.[1]);
  return Number.isNaN(year) ? null : year;
}

/** A day as YYYY-MM-DD; two figures of a year mean 1970 to 2069. Null where there is no such day. */
export function readDay(text: string, order: DateOrder): string | null {
  const [, a = '', b = '', c = ''] = /^(\d{1,4})[-./](\d{1,2})[-./](\d{1,4})(?:[T\s].*)?$/.exec(text.trim()) ?? [];
  const iso = a.length === 4;
  const [year, month, day] = iso || order === 'ymd' ? [a, b, c] : order === 'dmy' ? [c, b, a] : [c, a, b];
  if (![2, 4].includes(year.length)) return null;
  const whole = year.length === 4 ? Number(year) : Number(year) + (Number(year) < 70 ? 2000 : 1900);
  const date = new Date(Date.UTC(whole, Number(month) - 1, Number(day)));
  const written = `${String(whole).padStart(4, '0')}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return date.toISOString().slice(0, 10) === written ? written : null;
}
