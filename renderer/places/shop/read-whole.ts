/** What was typed as a whole figure within both edges; null where it is none. */
export function readWhole(text: string, least: number, most: number): number | null {
  const figure = /^\d{1,7}$/.test(text.trim()) ? Number(text) : -1;
  return figure < least || figure > most ? null : figure;
}
