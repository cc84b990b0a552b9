/** A quote that was issued, with the jobs that stand in its sum. */
export interface IssuedQuote {
  readonly paperId: string;
  readonly jobIds: readonly string[];
}

export interface YesSaid {
  /** Tax in, minor units. */
  readonly ceiling: number;
  /** All jobs said yes to so far. */
  readonly jobIds: readonly string[];
  readonly way: 'signed' | 'phone' | 'message' | 'person';
  /** The quote that was answered, or null. */
  readonly quotePaperId: string | null;
}

/**
 * no-quote: none was issued that holds all the jobs said yes to. by-word: there is one, but the yes was spoken and does not
 * say that it answers it.
 */
export type Unwritten = 'no-quote' | 'by-word';

/**
 * What is missing in writing where the shop wants a written estimate above a sum (minor units, tax in), or null where
 * nothing is. Exactly the sum is not above it. The desk is told; nothing is held by it.
 */
export function unwritten(above: number | null, yes: YesSaid, quotes: readonly IssuedQuote[]): Unwritten | null {
  if (above === null || yes.ceiling <= above || yes.jobIds.length === 0) return null;
  const whole = quotes.filter(({ jobIds }) => yes.jobIds.every((jobId) => jobIds.includes(jobId)));
  if (whole.length === 0) return 'no-quote';
  const spoken = yes.way === 'phone' || yes.way === 'person';
  return spoken && !whole.some(({ paperId }) => paperId === yes.quotePaperId) ? 'by-word' : null;
}
