import { describe, expect, it } from 'vitest';
import { amountText, quantityText, rateText, taxName, wholeText } from '../../core/paper/figures.ts';
import { paperName } from '../../core/paper/words.ts';
import { CREDIT_NOTE, INVOICE } from './papers.ts';

const US = { code: 'USD', sign: 'US$', digits: 2, decimal: '.', group: ',' } as const;
const DE = { code: 'EUR', sign: '€', digits: 2, decimal: ',', group: '.' } as const;
const YEN = { code: 'JPY', sign: '¥', digits: 0, decimal: '.', group: ',' } as const;
const SPACED = { code: 'NOK', sign: 'kr', digits: 2, decimal: ',', group: ' ' } as const;
const DINAR = { code: 'KWD', sign: 'KD', digits: 3, decimal: '.', group: '' } as const;

describe('figures as they are written', () => {
  it('amounts, with the digits and signs of the currency', () => {
    expect(amountText(312158, US)).toBe('3,121.58');
    expect(amountText(-50000, US)).toBe('−500.00');
    expect(amountText(5, US)).toBe('0.05');
    expect(amountText(0, US)).toBe('0.00');
    expect(amountText(123456789, DE)).toBe('1.234.567,89');
    expect(amountText(1234567, YEN)).toBe('1,234,567');
    expect(amountText(1234567, SPACED)).toBe('12\u00a0345,67');
    expect(amountText(1234567, DINAR)).toBe('1234.567');
  });

  it('quantities and rates without needless zeros, whole numbers grouped', () => {
    expect(quantityText(1200, US)).toBe('1.2');
    expect(quantityText(12000, US)).toBe('12');
    expect(quantityText(5, DE)).toBe('0,005');
    expect(rateText(62500, US)).toBe('6.25\u00a0%');
    expect(rateText(88750, DE)).toBe('8,875\u00a0%');
    expect(rateText(200000, US)).toBe('20\u00a0%');
    expect(wholeText(61480, US)).toBe('61,480');
  });

  it('a tax whose name ends in its rate does not say it twice', () => {
    expect(taxName('ΦΠΑ 24 %', '24\u00a0%')).toBe('ΦΠΑ');
    expect(taxName('Sales tax 6.25%', '6.25\u00a0%')).toBe('Sales tax');
    expect(taxName('VAT 120 %', '20\u00a0%')).toBe('VAT 120 %');
    expect(taxName('VAT', '20\u00a0%')).toBe('VAT');
  });

  it('a paper is called by its kind and number', () => {
    expect(paperName(INVOICE)).toBe('Invoice 1187');
    expect(paperName({ ...CREDIT_NOTE, language: 'de' })).toBe('Rechnungskorrektur 31');
  });
});
