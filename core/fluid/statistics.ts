/** Mean of figures. Throws RangeError for none. */
export function mean(figures: readonly number[]): number {
  if (figures.length === 0) throw new RangeError('No figures, no mean');
  // About the first figure, so that large figures with small differences keep their digits.
  const [first = 0] = figures;
  return first + figures.reduce((all, one) => all + (one - first), 0) / figures.length;
}

/**
 * Standard deviation in two passes: of a sample (divides by n - 1) or of a population (by n); null where there is
 * nothing to divide by. Held against NIST's certified values and simple-statistics in tests.
 */
export function deviation(figures: readonly number[], kind: 'sample' | 'population'): number | null {
  const by = kind === 'sample' ? figures.length - 1 : figures.length;
  if (by < 1) return null;
  const middle = mean(figures);
  const squares = figures.reduce((all, one) => all + (one - middle) ** 2, 0);
  // What rounding left in the mean is taken back.
  const rest = figures.reduce((all, one) => all + (one - middle), 0);
  return Math.sqrt((squares - rest ** 2 / figures.length) / by);
}

/**
 * The straight line of least squares through points: y = intercept + slope x, with the residual deviation. Null for
 * fewer than three points or where all x are one. Held against NIST's certified values in tests.
 */
export function line(points: readonly { readonly x: number; readonly y: number }[]) {
  if (points.length < 3) return null;
  const middleX = mean(points.map(({ x }) => x));
  const middleY = mean(points.map(({ y }) => y));
  const sxx = points.reduce((all, { x }) => all + (x - middleX) ** 2, 0);
  if (sxx === 0) return null;
  const slope = points.reduce((all, { x, y }) => all + (x - middleX) * (y - middleY), 0) / sxx;
  const intercept = middleY - slope * middleX;
  const squares = points.reduce((all, { x, y }) => all + (y - middleY - slope * (x - middleX)) ** 2, 0);
  return { slope, intercept, residual: Math.sqrt(squares / (points.length - 2)) };
}
