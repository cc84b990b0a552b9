/**
 * Reads what somebody typed as thousandths of a unit: "1.350", "1,35", "2", ".5", "-1". One mark parts the decimals,
 * whichever it is; at most three of them. Null for letters, a sign in the middle, more decimals or a second mark.
 * `group`, where it is known, is what the shop parts thousands with: "1,000" there is null rather than one.
 */
export function parseQuantity(text: string, group = ''): number | null {
  const match = /^([+-]?)(\d{0,9})(?:([.,])(\d{1,3}))?$/.exec(text.trim().replace(/^\u2212/, '-'));
  if (match === null) return null;
  const [, sign, whole = '', mark = '', decimals = ''] = match;
  if (whole === '' && decimals === '') return null;
  if (mark !== '' && mark === group && decimals.length === 3) return null;
  const thousandths = Number(whole) * 1000 + Number(decimals.padEnd(3, '0'));
  return sign === '-' && thousandths !== 0 ? -thousandths : thousandths;
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
