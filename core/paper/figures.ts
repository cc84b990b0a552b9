import type { PaperCurrency } from './document.ts';

/** A whole number of minor units as written on this paper, without sign of the currency: 312158 -> '3,121.58'. */
export function amountText(minor: number, currency: PaperCurrency): string {
  const digits = Math.abs(minor)
    .toString()
    .padStart(currency.digits + 1, '0');
  const whole = digits.slice(0, digits.length - currency.digits);
  const rest = currency.digits > 0 ? currency.decimal + digits.slice(digits.length - currency.digits) : '';
  return (minor < 0 ? '−' : '') + grouped(whole, currency) + rest;
}

/** Thousandths without needless zeros: 1200 -> '1.2', 12000 -> '12'. */
export function quantityText(thousandths: number, currency: PaperCurrency): string {
  return decimalText(thousandths, 3, currency);
}

/** Millionths as a percentage: 62500 -> '6.25 %'. The space does not break. */
export function rateText(ppm: number, currency: PaperCurrency): string {
  return `${decimalText(ppm, 4, currency)}\u00a0%`;
}

/** A tax's name as it stands before its rate: one that ends in the rate already ("VAT 20 %") does not say it twice. */
export function taxName(name: string, rate: string): string {
  const bare = name.replace(/\s*%$/, '%');
  const figure = rate.replace(/\s/g, '');
  return bare.endsWith(` ${figure}`) ? bare.slice(0, -figure.length).trimEnd() : name;
}

/** A whole number such as a mileage: 61480 -> '61,480'. */
export function wholeText(value: number, currency: PaperCurrency): string {
  return (value < 0 ? '−' : '') + grouped(Math.abs(value).toString(), currency);
}

function decimalText(value: number, places: number, currency: PaperCurrency): string {
  const digits = Math.abs(value)
    .toString()
    .padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const rest = digits.slice(digits.length - places).replace(/0+$/, '');
  return (value < 0 ? '−' : '') + grouped(whole, currency) + (rest === '' ? '' : currency.decimal + rest);
}

function grouped(whole: string, currency: PaperCurrency): string {
  const group = currency.group === ' ' ? '\u00a0' : currency.group;
  return whole.replace(/\B(?=(\d{3})+$)/g, group);
}
