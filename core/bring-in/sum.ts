import { type Money, money } from '../money/money.ts';

/** What stands before the decimals of a file's sums. */
export const DECIMAL_MARKS = ['.', ','] as const;
export type DecimalMark = (typeof DECIMAL_MARKS)[number];

interface Bare {
  readonly figures: string;
  readonly negative: boolean;
}

/** A sum without its sign and the currency beside it; "84,-" and "84.–" are whole. Null where it holds more than one. */
function bareOf(text: string): Bare | null {
  const plain = text
    .replace(/[\s\u00a0\u2009\u202f]+/g, ' ')
    .replaceAll('’', "'")
    .replaceAll('\u2212', '-');
  const whole = plain.replace(/(?<=\d)[.,] ?[-–—]+(?=\D*$)/u, '');
  const [, before = '', figures = '', after = ''] = /^([^\d.,]*)([\d., ']*\d)([^\d]*)$/u.exec(whole.trim()) ?? [];
  if (figures === '') return null;
  const bracketed = before.includes('(') && after.includes(')');
  return { figures: figures.trim(), negative: bracketed || before.includes('-') || /^ ?-/.test(after) };
}

/** Whole part and decimals where `decimal` parts them and anything else only parts thousands in threes; null else. */
function parted(figures: string, decimal: DecimalMark): readonly [string, string] | null {
  const [whole = '', decimals = '', ...more] = figures.split(decimal);
  if (more.length > 0 || !/^\d*$/.test(decimals)) return null;
  if (/^\d*$/.test(whole)) return [whole || '0', decimals];
  return /^[1-9]\d{0,2}([., '])\d{3}(?:\1\d{3})*$/.test(whole) ? [whole.replace(/\D/g, ''), decimals] : null;
}

/** In minor units; null for more decimals than the currency has, unless they are noughts, and for what is out of range. */
function minorOf([whole, decimals]: readonly [string, string], digits: number): number | null {
  const kept = decimals.slice(0, digits);
  if (/[1-9]/.test(decimals.slice(digits))) return null;
  const minor = Number(whole + kept.padEnd(digits, '0'));
  return Number.isSafeInteger(minor) ? minor : null;
}

/** What a sum shows of its decimal mark: the mark, 'either' where it could be both, null where it says nothing. */
function shows(text: string, digits: number): DecimalMark | 'either' | null {
  const figures = bareOf(text)?.figures ?? '';
  const [point, comma] = [parted(figures, '.'), parted(figures, ',')];
  if (figures === '' || (point === null && comma === null)) return null;
  if (point === null) return ',';
  if (comma === null) return '.';
  if (!/[.,]/.test(figures)) return null;
  // A currency without decimals has none behind a mark either.
  if (digits > 0) return 'either';
  return minorOf(point, 0) === null ? ',' : minorOf(comma, 0) === null ? '.' : 'either';
}

/** What parts the decimals of a column of sums, by all of it; null where nothing tells, or where its cells disagree. */
export function guessDecimal(cells: readonly string[], digits: number): DecimalMark | null {
  const shown = new Set(cells.map((cell) => shows(cell, digits)));
  if (shown.has('.') === shown.has(',')) return null;
  return shown.has('.') ? '.' : ',';
}

/** The first sum that has two readings as long as nobody says what parts the decimals; null where there is none. */
export function unclearSum(cells: readonly string[], digits: number, decimal: DecimalMark | null): string | null {
  return decimal === null ? (cells.find((cell) => shows(cell, digits) === 'either') ?? null) : null;
}

/**
 * A sum of a file in minor units, without the currency beside it; in brackets or with a minus on either side it is below
 * nothing. `decimal` is what parts its column's decimals; null reads it by itself, and what could be a thousand as well
 * as one is 'two-readings'. Null where it is no sum of a currency with `digits` decimals.
 */
export function readSum(text: string, digits: number, decimal: DecimalMark | null): Money | 'two-readings' | null {
  const bare = bareOf(text);
  if (bare === null) return null;
  const shown = decimal ?? shows(text, digits) ?? '.';
  if (shown === 'either') return 'two-readings';
  const parts = parted(bare.figures, shown);
  const minor = parts === null ? null : minorOf(parts, digits);
  if (minor === null) return null;
  return money(bare.negative ? -minor : minor);
}
