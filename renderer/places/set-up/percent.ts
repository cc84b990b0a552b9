/**
 * A percentage as typed ("6.25", "6,25 %"), as a whole figure of its last decimal: with 2 decimals basis points, with 4
 * millionths. Null for letters, more decimals, or more than `most` percent.
 */
export function readPercent(text: string, decimals: 2 | 4, most = 100): number | null {
  const match = /^(\d{1,4})(?:[.,](\d*))?\s*%?$/.exec(text.trim());
  if (match === null) return null;
  const part = match[2] ?? '';
  if (part.length > decimals) return null;
  const figure = Number((match[1] ?? '') + part.padEnd(decimals, '0'));
  return figure <= most * 10 ** decimals ? figure : null;
}
