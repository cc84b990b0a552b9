import { formatQuantity, twoWays } from '../../core/measure/quantity.ts';
import type { Writing } from './figures.ts';
import { t } from './t.ts';

/** What would be right where a quantity could not be read: both readings where it has two, otherwise `wrong`. */
export function unreadWords(text: string, writing: Writing, wrong: string): string {
  const figure = text.trim().replace(/[\s\u00a0]*(?:\p{L}{0,8}|%)$/u, '');
  const two = twoWays(figure, writing);
  if (two === null) return wrong;
  const shown = (thousandths: number) => formatQuantity(thousandths, writing.decimal);
  return t('parts.twoWays', { typed: figure, parted: shown(two.parted), decimals: shown(two.decimals) });
}
