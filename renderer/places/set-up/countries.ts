import type { DistanceUnit } from '../../../core/measure/distance.ts';
import type { DateForm } from '../../../core/time/date-form.ts';

/** What a country fills in because it does no harm. Never tax or law. */
export interface Usage {
  readonly code: string;
  readonly currency: string;
  readonly decimal: '.' | ',';
  readonly group: ',' | '.' | ' ' | '';
  readonly paper: 'A4' | 'Letter';
  readonly distance: DistanceUnit;
  readonly torque: 'N·m' | 'lbf·ft';
  readonly prices: 'exclusive' | 'inclusive';
  readonly dateForm: DateForm;
}

type Short = readonly [code: string, currency: string, decimal: '.' | ',', group: Usage['group']];

/** Metric, A4, kilometres. */
const METRIC: readonly Short[] = [
  ['AT', 'EUR', ',', ' '],
  ['AU', 'AUD', '.', ','],
  ['BE', 'EUR', ',', '.'],
  ['CH', 'CHF', '.', ' '],
  ['CZ', 'CZK', ',', ' '],
  ['DE', 'EUR', ',', '.'],
  ['DK', 'DKK', ',', '.'],
  ['ES', 'EUR', ',', '.'],
  ['FI', 'EUR', ',', ' '],
  ['FR', 'EUR', ',', ' '],
  ['IE', 'EUR', '.', ','],
  ['IN', 'INR', '.', ','],
  ['IT', 'EUR', ',', '.'],
  ['JP', 'JPY', '.', ','],
  ['NL', 'EUR', ',', '.'],
  ['NO', 'NOK', ',', ' '],
  ['NZ', 'NZD', '.', ','],
  ['PL', 'PLN', ',', ' '],
  ['PT', 'EUR', ',', ' '],
  ['SE', 'SEK', ',', ' '],
  ['TR', 'TRY', ',', '.'],
  ['ZA', 'ZAR', ',', ' '],
];

/** Where dates in figures are not the language's own: what is typed as 11/3 must be read as it is meant there. */
const YEAR_FIRST: ReadonlySet<string> = new Set(['JP', 'SE']);

/**
 * Common usage, written from memory: the page shows each value and lets it be changed. Currency codes are those of
 * ISO 4217, country codes those of ISO 3166-1.
 */
export const USAGES: readonly Usage[] = [
  {
    code: 'US',
    currency: 'USD',
    decimal: '.',
    group: ',',
    paper: 'Letter',
    distance: 'mi',
    torque: 'lbf·ft',
    prices: 'exclusive',
    dateForm: 'month-day',
  },
  {
    code: 'CA',
    currency: 'CAD',
    decimal: '.',
    group: ',',
    paper: 'Letter',
    distance: 'km',
    torque: 'N·m',
    prices: 'exclusive',
    dateForm: 'year-month',
  },
  {
    code: 'GB',
    currency: 'GBP',
    decimal: '.',
    group: ',',
    paper: 'A4',
    distance: 'mi',
    torque: 'N·m',
    prices: 'exclusive',
    dateForm: 'language',
  },
  ...METRIC.map(
    ([code, currency, decimal, group]): Usage => ({
      ...{ code, currency, decimal, group },
      ...{ paper: 'A4', distance: 'km', torque: 'N·m', prices: 'exclusive' },
      dateForm: YEAR_FIRST.has(code) ? 'year-month' : 'language',
    }),
  ),
];

/** The usage of a country by its code; the first of the list for one that is not there. */
export function usageOf(code: string): Usage | undefined {
  return USAGES.find((usage) => usage.code === code);
}

/** The name of a country in English, from the machine's own list. */
export function countryName(code: string): string {
  return new Intl.DisplayNames(['en'], { type: 'region' }).of(code) ?? code;
}
