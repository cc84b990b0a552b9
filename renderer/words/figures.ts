import { formatQuantity } from '../../core/measure/quantity.ts';
import { currencyDigits, formatMoney, parseMoney } from '../../core/money/currency.ts';
import { money } from '../../core/money/money.ts';
import type { DateForm } from '../../core/time/date-form.ts';

/** How this shop writes figures and times. */
export interface Writing {
  readonly currency: string;
  readonly decimal: string;
  readonly group: string;
  /** IANA zone of the shop. */
  readonly zone: string;
  readonly language: string;
  /** Absent: as the language writes a date. */
  readonly dateForm?: DateForm;
}

/** Until the shop is known. */
export const PLAIN_WRITING: Writing = { currency: 'USD', decimal: '.', group: ',', zone: 'UTC', language: 'en' };

const MINUTE = 60_000;

/** Minor units as text without the currency's sign; '' for an amount that the person may not see. */
export function amountText(minor: number | null, writing: Writing): string {
  if (minor === null) return '';
  return formatMoney(money(minor), currencyDigits(writing.currency) ?? 2, {
    group: writing.group === ' ' ? '\u00a0' : writing.group,
    decimal: writing.decimal,
  }).replace('-', '\u2212');
}

/** What somebody typed as minor units, or null where it is no sum of this currency. */
export function readAmount(text: string, writing: Writing): number | null {
  return parseMoney(text, currencyDigits(writing.currency) ?? 2, writing.decimal);
}

/** Thousandths with their unit: 6200, 'h' is "6.2 h". */
export function quantityText(thousandths: number, unit: string, writing: Writing): string {
  const figure = formatQuantity(thousandths, writing.decimal);
  return unit === '' ? figure : `${figure}\u00a0${unit}`;
}

/** A whole figure with its thousands parted: 61480 is "61,480". */
export function wholeText(figure: number, writing: Writing): string {
  return String(figure).replace(/\B(?=(\d{3})+$)/g, writing.group === ' ' ? '\u00a0' : writing.group);
}

/** Millionths as a percentage: 62500 is "6.25 %". */
export function rateText(ppm: number, writing: Writing): string {
  return `${String(ppm / 10_000).replace('.', writing.decimal)}\u00a0%`;
}

/** How long since, as a clock face: "0:41", "12:07". */
export function spanText(ms: number): string {
  const minutes = Math.max(0, Math.trunc(ms / MINUTE));
  return `${Math.trunc(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
