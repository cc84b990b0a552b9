import type { InputOf, OutputOf } from '../../../core/contract/index.ts';
import { formatQuantity, type Marks, parseQuantity } from '../../../core/measure/quantity.ts';

export type CheckList = OutputOf<'checkList.list'>['rows'][number];
type Fields = InputOf<'checkList.add'>;

/** An item as it is typed. */
export interface ItemDraft {
  readonly key: number;
  readonly words: string;
  readonly place: string;
  /** What is measured; '' where nothing is. */
  readonly what: string;
  readonly unit: string;
  readonly least: string;
  readonly most: string;
  readonly source: string;
}

export interface ListDraft {
  readonly title: string;
  readonly kind: CheckList['kind'];
  readonly items: readonly ItemDraft[];
}

export const emptyItem = (key: number): ItemDraft => ({
  ...{ key, words: '', place: '', what: '', unit: 'mm', least: '', most: '', source: '' },
});

export const EMPTY_LIST: ListDraft = { title: '', kind: 'walk-round', items: [emptyItem(0)] };

/** A list of the shop, to be typed over. */
export function draftOf(list: CheckList, decimal: string): ListDraft {
  const text = (figure: number | null | undefined) => (figure == null ? '' : formatQuantity(figure, decimal));
  return {
    title: list.title,
    kind: list.kind,
    items: list.items.map(({ words, place, measure }, key) => ({
      ...{ key, words, place, what: measure?.what ?? '', unit: measure?.unit ?? 'mm', source: measure?.source ?? '' },
      least: text(measure?.least),
      most: text(measure?.most),
    })),
  };
}

/** Which field of an item does not fit: its words are missing, or a limit is no figure. */
export function itemWrong({ words, what, least, most }: ItemDraft, marks: Marks): 'words' | 'least' | 'most' | null {
  const typed = words.trim() !== '' || what.trim() !== '';
  if (typed && words.trim() === '') return 'words';
  const fits = (text: string) => text.trim() === '' || parseQuantity(text, marks) !== null;
  if (!fits(least)) return 'least';
  return fits(most) ? null : 'most';
}

/** As it goes to the shop, without items that nobody typed; null while something does not fit. */
export function listOf({ title, kind, items }: ListDraft, marks: Marks): Fields | null {
  const typed = items.filter((item) => item.words.trim() !== '' || item.what.trim() !== '');
  if (title.trim() === '' || typed.length === 0 || typed.some((item) => itemWrong(item, marks) !== null)) return null;
  const figure = (text: string) => (text.trim() === '' ? null : parseQuantity(text, marks));
  return {
    ...{ title, kind },
    items: typed.map(({ words, place, what, unit, least, most, source }) => ({
      ...{ words, place },
      measure: what.trim() === '' ? null : { what, unit, least: figure(least), most: figure(most), source },
    })),
  };
}
