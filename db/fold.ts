const SPECIAL: Record<string, string> = { ł: 'l', ø: 'o', ß: 'ss', æ: 'ae', œ: 'oe', đ: 'd', ð: 'd', þ: 'th', ı: 'i' };

/** A text as it is found by: lower case, no accents, ł ø ß and their like spelt out, single spaces. */
export const foldText = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[łøßæœđðþı]/g, (letter) => SPECIAL[letter] ?? letter)
    .replace(/\s+/g, ' ')
    .trim();

/** The digits of a phone number, however written. */
export const foldPhone = (text: string): string => text.replace(/\D/g, '');

/** A plate as it is found by: capitals and digits only, O like 0 and I like 1, as they are mistyped. */
export const foldPlate = (text: string): string =>
  text
    .toUpperCase()
    .normalize('NFD')
    .replace(/[^\p{L}\p{N}]/gu, '')
    .replace(/O/g, '0')
    .replace(/I/g, '1');

/** How much of a text stands before what was looked for, and how much in all, characters. */
const BEFORE = 16;
const PIECE = 56;

/** The piece of a text round folded words that it holds, whole words, with points where more was said. */
export function pieceAround(text: string, words: string): string {
  const plain = text.replace(/\s+/g, ' ').trim();
  if (plain.length <= PIECE) return plain;
  // Folding may lengthen a text by a letter or two before the words: near enough for a glance.
  const at = Math.max(0, foldText(plain).indexOf(words));
  const from = at <= BEFORE ? 0 : plain.lastIndexOf(' ', at - BEFORE) + 1;
  const cut = plain.slice(from, from + PIECE);
  const end = from + cut.length < plain.length ? cut.lastIndexOf(' ') : -1;
  const piece = end > at - from + words.length ? cut.slice(0, end) : cut;
  return `${from > 0 ? '… ' : ''}${piece}${from + piece.length < plain.length ? ' …' : ''}`;
}
