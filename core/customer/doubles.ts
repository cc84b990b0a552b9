/** What is known of somebody, folded: name without accents in lower case, phones as digits, e-mail in lower case. */
export interface KnownBy {
  readonly name: string;
  readonly phones: readonly string[];
  readonly email: string;
}

export type AlikeBy = 'name' | 'phone' | 'email';

/** Fewer digits than these are no number to tell people apart by. */
const FEWEST_DIGITS = 6;

/** Whether two numbers are one, written with and without the country: the shorter, without leading noughts, ends the longer. */
function samePhone(a: string, b: string): boolean {
  const [short = '', long = ''] = [a, b]
    .map((digits) => digits.replace(/^0+/, ''))
    .sort((one, other) => one.length - other.length);
  return short.length >= FEWEST_DIGITS && long.endsWith(short);
}

const partsOf = (name: string) => name.split(/[^\p{L}\p{N}]+/u).filter((part) => part !== '');

/** Whether two names may be one person's: the same parts in any order, or all of at least two of them in the other. */
function sameName(a: string, b: string): boolean {
  const [few = [], many = []] = [partsOf(a), partsOf(b)].sort((one, other) => one.length - other.length);
  if (few.length === 0 || (few.length === 1 && many.length > 1)) return false;
  return few.every((part) => many.includes(part));
}

/** By what two entries may be the same person; empty where nothing speaks for it. */
export function alikeBy(one: KnownBy, other: KnownBy): AlikeBy[] {
  const phone = one.phones.some((mine) => other.phones.some((theirs) => samePhone(mine, theirs)));
  return [
    ...(sameName(one.name, other.name) ? (['name'] as const) : []),
    ...(phone ? (['phone'] as const) : []),
    ...(one.email !== '' && one.email === other.email ? (['email'] as const) : []),
  ];
}
