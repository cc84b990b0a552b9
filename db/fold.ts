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
