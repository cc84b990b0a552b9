import type { Content } from './draft.ts';

type Due = Pick<Content['after'][number], 'words' | 'days' | 'distance'>;

const DAYS_MOST = 7300;
const FAR_MOST = 1_000_000;

/**
 * "Tighten the wheels again after 50", "Change the run-in oil after 30 days or 1000": words, then days, a distance in the
 * car's own unit, or both, whichever comes first. Null where there is neither.
 */
export function readAfter(text: string): Due | null {
  const match = /^(\S.*?)\s+after\s+(?:(\d{1,4})\s*days?)?(?:\s*(?:or|,)?\s*(\d{1,7})(?:\s*(?:km|mi|miles))?)?$/i.exec(
    text.trim(),
  );
  if (match?.[1] === undefined) return null;
  const days = match[2] === undefined ? null : Number(match[2]);
  const distance = match[3] === undefined ? null : Number(match[3]);
  const good = (figure: number | null, most: number) => figure === null || (figure >= 1 && figure <= most);
  if (days === null && distance === null) return null;
  if (match[1].length > 300 || !good(days, DAYS_MOST) || !good(distance, FAR_MOST)) return null;
  return { words: match[1], days, distance };
}

/** The same as it is typed. */
export function afterText({ words, days, distance }: Due): string {
  const when = [days === null ? '' : `${days} days`, distance === null ? '' : String(distance)];
  return `${words} after ${when.filter((part) => part !== '').join(' or ')}`;
}
