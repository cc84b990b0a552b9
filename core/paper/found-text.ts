import { quantityText } from './figures.ts';
import type { PaperCurrency } from './parts.ts';
import type { PaperMeasured } from './seen.ts';
import { seenWords } from './seen-words.ts';

/** A measured value with its limits and their source: 'play 1.2 mm (at most 0.5 mm, limit: maker's manual)'. */
export function measuredText(measured: PaperMeasured, language: 'en' | 'de', currency: PaperCurrency): string {
  const said = seenWords(language);
  const figure = (value: number) => `${quantityText(value, currency)}\u00a0${measured.unit}`.trim();
  const limits = [
    measured.least === null ? '' : said.least(figure(measured.least)),
    measured.most === null ? '' : said.most(figure(measured.most)),
    measured.source === '' ? '' : said.source(measured.source),
  ].filter((part) => part !== '');
  return `${measured.what} ${figure(measured.value)}${limits.length === 0 ? '' : ` (${limits.join(', ')})`}`;
}

/** A finding as the papers tell it: its words, where, and what was measured, as a sentence. */
export function foundText(
  found: { readonly text: string; readonly place: string; readonly measured: PaperMeasured | null },
  language: 'en' | 'de',
  currency: PaperCurrency,
): string {
  const { text, place, measured } = found;
  const more = [place, measured === null ? '' : measuredText(measured, language, currency)].filter(
    (part) => part !== '',
  );
  const whole = [text.replace(/\.$/, ''), ...more].join(', ');
  return /[.!?…]$/.test(whole) ? whole : `${whole}.`;
}
