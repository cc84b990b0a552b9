import { type Money, money } from './money.ts';

/**
 * Digits of the minor unit by ISO 4217 code (list of 2024-06-25). Codes not here are not offered.
 */
export const CURRENCY_DIGITS: Readonly<Record<string, number>> = {
  AED: 2,
  ARS: 2,
  AUD: 2,
  BHD: 3,
  BRL: 2,
  CAD: 2,
  CHF: 2,
  CLF: 4,
  CLP: 0,
  CNY: 2,
  COP: 2,
  CZK: 2,
  DKK: 2,
  EGP: 2,
  EUR: 2,
  GBP: 2,
  HKD: 2,
  HUF: 2,
  IDR: 2,
  ILS: 2,
  INR: 2,
  IQD: 3,
  ISK: 0,
  JOD: 3,
  JPY: 0,
  KES: 2,
  KRW: 0,
  KWD: 3,
  LYD: 3,
  MAD: 2,
  MXN: 2,
  MYR: 2,
  NGN: 2,
  NOK: 2,
  NZD: 2,
  OMR: 3,
  PHP: 2,
  PKR: 2,
  PLN: 2,
  RON: 2,
  SAR: 2,
  SEK: 2,
  SGD: 2,
  THB: 2,
  TND: 3,
  TRY: 2,
  TWD: 2,
  UAH: 2,
  USD: 2,
  UYW: 4,
  VND: 0,
  XAF: 0,
  XOF: 0,
  ZAR: 2,
};

/** Digits of the minor unit of an ISO 4217 code; null for a code that is not in the list. */
export function currencyDigits(code: string): number | null {
  return CURRENCY_DIGITS[code] ?? null;
}

/** How a sum is written: what parts the thousands ('' for nothing) and what stands before the minor unit. */
export interface MoneyFormat {
  readonly group: string;
  readonly decimal: string;
}

/** Writes minor units with the currency's digits: 123456 with 2 digits, ',' and '.' is "1,234.56". */
export function formatMoney(amount: Money, digits: number, format: MoneyFormat): string {
  const text = String(Math.abs(amount)).padStart(digits + 1, '0');
  const whole = text.slice(0, text.length - digits).replace(/\B(?=(\d{3})+$)/g, format.group);
  const minor = digits === 0 ? '' : format.decimal + text.slice(text.length - digits);
  return (amount < 0 ? '-' : '') + whole + minor;
}

const SPACES = /[\s\u00a0\u2009\u202f]/g;

/**
 * Reads what somebody typed as minor units: 1234, 1234.5, 1,234.56, 1.234,56, 1 234,56, -20. A single mark with three
 * figures behind it parts thousands, unless the currency itself has three digits or the text starts with 0.
 * Null for letters, more decimals than the currency has, thousands that are not in threes, or a sum out of range.
 * `decimal`, where it is known, is what the shop itself parts decimals with: it is never read as parting thousands, so
 * "210.005" there is no sum rather than a thousand times what was meant.
 */
export function parseMoney(text: string, digits: number, decimal = ''): Money | null {
  const bare = text.trim().replace(/^\u2212/, '-');
  const match = /^([+-]?)(\d[\d.,'\s\u00a0\u2009\u202f]*|[.,]\d+)$/.exec(bare);
  if (match === null) return null;
  const parts = splitDecimals(match[2] ?? '', digits, decimal);
  if (parts === null) return null;
  const [grouped, decimals] = parts;
  const whole = ungroup(grouped);
  if (whole === null || decimals.length > digits) return null;
  const minor = Number(whole + decimals.padEnd(digits, '0'));
  if (!Number.isSafeInteger(minor)) return null;
  return money(match[1] === '-' ? -minor : minor);
}

/** The mark that comes last parts the decimals, unless it can only part thousands. */
function splitDecimals(figures: string, digits: number, decimal: string): [string, string] | null {
  const at = Math.max(figures.lastIndexOf('.'), figures.lastIndexOf(','));
  if (at < 0) return [figures, ''];
  const mark = figures.charAt(at);
  const before = figures.slice(0, at);
  const after = figures.slice(at + 1);
  if (!/^\d+$/.test(after)) return null;
  const threes = after.length === 3 && digits !== 3 && mark !== decimal && /[1-9]/.test(before);
  const onlyMark = !before.replaceAll(mark, '').match(/[.,]/);
  if (before.includes(mark) || (threes && onlyMark)) return [figures, ''];
  return [before === '' ? '0' : before, after];
}

/** Takes the marks out of thousands; null when they do not stand in threes or are not all the same. */
function ungroup(text: string): string | null {
  const plain = text.replace(SPACES, ' ');
  if (/^\d+$/.test(plain)) return plain;
  const mark = plain.match(/[., ']/)?.[0];
  if (mark === undefined) return null;
  const groups = plain.split(mark);
  const inThrees = groups.slice(1).every((group) => /^\d{3}$/.test(group)) && /^\d{1,3}$/.test(groups[0] ?? '');
  return inThrees ? groups.join('') : null;
}
