import type { OutputOf } from '../../../core/contract/index.ts';
import { formatQuantity, parseQuantity } from '../../../core/measure/quantity.ts';

export type CheckList = OutputOf<'checkList.list'>['rows'][number];
type Item = CheckList['items'][number];

export const FIELDS = ['item', 'place', 'what', 'unit', 'least', 'most', 'source'] as const;
export type ItemField = (typeof FIELDS)[number];

/** What a cell of an item shows. */
export function itemText(item: Item, field: ItemField, decimal: string): string {
  if (field === 'item') return item.words;
  if (field === 'place') return item.place;
  const value = item.measure?.[field] ?? '';
  return typeof value === 'number' ? formatQuantity(value, decimal) : value;
}

const NOTHING = { what: '', unit: '', least: null, most: null, source: '' };

/** An item with one cell changed; null where the text does not fit. */
export function changedItem(item: Item, field: ItemField, text: string): Item | null {
  const said = text.trim();
  if (field === 'item') return said === '' ? null : { ...item, words: said };
  if (field === 'place') return { ...item, place: said };
  // Without what is measured there is no measure, and no limit stays.
  if (field === 'what') return { ...item, measure: said === '' ? null : { ...(item.measure ?? NOTHING), what: said } };
  if (item.measure === null) return said === '' ? item : null;
  if (field === 'unit' || field === 'source') return { ...item, measure: { ...item.measure, [field]: said } };
  const figure = said === '' ? null : parseQuantity(said);
  return figure === null && said !== '' ? null : { ...item, measure: { ...item.measure, [field]: figure } };
}

/** What is said where the text of a cell does not fit. */
export function wrongOf(item: Item, field: ItemField): 'itemWrong' | 'measureFirst' | 'limitWrong' {
  if (field === 'item') return 'itemWrong';
  return item.measure === null ? 'measureFirst' : 'limitWrong';
}
