/**
 * Vehicle identification numbers. Check digit, transliteration, weights and year letters: 49 CFR 565.15 (tables III to
 * VII); length and characters: ISO 3779. A car built for a place that asks for no check digit may fail it, and a car
 * from before 1981 has a shorter number: both are warned of, never refused.
 */
export type VinVerdict = 'ok' | 'warn_check_digit' | 'warn_length' | 'refuse_character' | 'refuse_length';

export interface VinReading {
  /** As it is kept: capitals, without spaces and dashes. */
  readonly vin: string;
  readonly verdict: VinVerdict;
  /** What position 9 should be; null when the number is not one of 17 permitted characters. */
  readonly expectedCheckDigit: string | null;
  /** Years that position 10 can mean, the one that position 7 speaks for first. Not decisive outside North America. */
  readonly modelYears: readonly number[];
}

const LENGTH = 17;
const LETTERS: Readonly<Record<string, number>> = {
  ...{ A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8 },
  ...{ J: 1, K: 2, L: 3, M: 4, N: 5, P: 7, R: 9 },
  ...{ S: 2, T: 3, U: 4, V: 5, W: 6, X: 7, Y: 8, Z: 9 },
};
const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
const YEAR_LETTERS = 'ABCDEFGHJKLMNPRSTVWXY123456789';

/** Reads a typed VIN and says what is wrong with it, if anything. */
export function readVin(text: string): VinReading {
  const vin = text.toUpperCase().replace(/[\s-]/g, '');
  const refused = (verdict: VinVerdict): VinReading => ({ vin, verdict, expectedCheckDigit: null, modelYears: [] });
  if (!/^[A-Z0-9]*$/.test(vin)) return refused('refuse_character');
  if (vin === '' || vin.length > LENGTH) return refused('refuse_length');
  if (vin.length < LENGTH) return refused('warn_length');
  if (/[IOQ]/.test(vin)) return refused('refuse_character');
  const expectedCheckDigit = checkDigit(vin);
  const verdict = expectedCheckDigit === vin[8] ? 'ok' : 'warn_check_digit';
  return { vin, verdict, expectedCheckDigit, modelYears: modelYears(vin) };
}

/** Weighted sum of the values modulo 11; ten is written X. */
function checkDigit(vin: string): string {
  const total = WEIGHTS.reduce((sum, weight, at) => sum + weight * figureOf(vin.charAt(at)), 0);
  return total % 11 === 10 ? 'X' : String(total % 11);
}

function figureOf(character: string): number {
  return /\d/.test(character) ? Number(character) : (LETTERS[character] ?? 0);
}

/** The year of position 10: position 7 a figure speaks for 1980 to 2009, a letter for 2010 to 2039. */
function modelYears(vin: string): number[] {
  const place = YEAR_LETTERS.indexOf(vin.charAt(9));
  if (place < 0) return [];
  const early = 1980 + place;
  return /\d/.test(vin.charAt(6)) ? [early, early + 30] : [early + 30, early];
}
