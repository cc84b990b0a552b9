import { en } from './en.ts';

/** One sentence, or one for each grammatical number of `n` (as Intl.PluralRules names them). */
type Sentence = string | { readonly one: string; readonly other: string };
export type Figures = Readonly<Record<string, string | number>>;

type Words = typeof en;
/** 'place.key' of every sentence there is. */
export type WordKey = { [P in keyof Words]: `${P & string}.${keyof Words[P] & string}` }[keyof Words];

const plural = new Intl.PluralRules('en');

/** The sentence of a key with its {figures} filled in; `n` also picks one or many. */
export function t(key: WordKey, figures: Figures = {}): string {
  return tMaybe(key, figures) ?? key;
}

/** The same for a key that comes from the shop's answers; null where there are no words for it. */
export function tMaybe(key: string, figures: Figures = {}): string | null {
  const dot = key.indexOf('.');
  const place = (en as Readonly<Record<string, Readonly<Record<string, Sentence>>>>)[key.slice(0, dot)];
  const found = place !== undefined && Object.hasOwn(place, key.slice(dot + 1)) ? place[key.slice(dot + 1)] : undefined;
  if (found === undefined) return null;
  return fill(
    typeof found === 'string' ? found : plural.select(Number(figures.n ?? 0)) === 'one' ? found.one : found.other,
    figures,
  );
}

function fill(sentence: string, figures: Figures): string {
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const figure = figures[name];
    return figure === undefined ? whole : String(figure);
  });
}
