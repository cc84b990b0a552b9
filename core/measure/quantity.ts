/** What a shop writes its figures with. */
export interface Marks {
  /** What stands before its decimals. */
  readonly decimal: string;
  /** What parts its thousands; '' for nothing. */
  readonly group: string;
}

/**
 * Reads what somebody typed as thousandths of a unit: "1.350", "1,35", "2", ".5", "-1". One mark parts the decimals,
 * whichever it is; at most three of them. Null for letters, a sign in the middle, more decimals or a second mark, and for
 * what could be a thousand as well in a shop with these marks ({@link twoWays}).
 */
export function parseQuantity(text: string, marks: Marks): number | null {
  const match = /^([+-]?)(\d{0,9})(?:([.,])(\d{1,3}))?$/.exec(text.trim().replace(/^\u2212/, '-'));
  if (match === null || twoWays(text, marks) !== null) return null;
  const [, sign, whole = '', , decimals = ''] = match;
  if (whole === '' && decimals === '') return null;
  const thousandths = Number(whole) * 1000 + Number(decimals.padEnd(3, '0'));
  return sign === '-' && thousandths !== 0 ? -thousandths : thousandths;
}

/**
 * The two readings, in thousandths, of a figure with three digits behind a mark that is not the shop's own for decimals:
 * where 1.5 is written with a point, "1,350" is 1350 or 1.35. Null where there is only one, as in "0,350" or "1,35".
 */
export function twoWays(
  text: string,
  { decimal }: Marks,
): { readonly parted: number; readonly decimals: number } | null {
  const match = /^[+-]?([1-9]\d{0,2})([.,])(\d{3})$/.exec(text.trim().replace(/^\u2212/, '-'));
  if (match === null || match[2] === decimal) return null;
  const figures = Number(`${match[1]}${match[3]}`);
  return { parted: figures * 1000, decimals: figures };
}

/** Writes thousandths with as many decimals as it takes: 1350 is "1.35", 2000 is "2". */
export function formatQuantity(thousandths: number, decimal: string): string {
  const size = Math.abs(thousandths);
  const decimals = String(size % 1000)
    .padStart(3, '0')
    .replace(/0+$/, '');
  const text = Math.trunc(size / 1000) + (decimals === '' ? '' : decimal + decimals);
  return thousandths < 0 ? `-${text}` : text;
}
