import type { DistanceUnit } from '../../../core/measure/distance.ts';

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
  },
  ...METRIC.map(
    ([code, currency, decimal, group]): Usage => ({
      ...{ code, currency, decimal, group },
      ...{ paper: 'A4', distance: 'km', torque: 'N·m', prices: 'exclusive' },
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
