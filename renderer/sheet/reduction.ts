import { amountText, rateText, readAmount, type Writing } from '../words/figures.ts';
import type { Line } from './order.ts';
import { readQuantity } from './read-line.ts';

const PPM_PER_BP = 100;

/** "5 %" is 500 basis points, "20.00" a sum; null where it is neither. */
export function readReduction(text: string, writing: Writing) {
  const trimmed = text.trim();
  if (!trimmed.endsWith('%')) {
    const minor = readAmount(trimmed, writing);
    return minor === null || minor <= 0 ? null : { sum: minor };
  }
  // Thousandths of a percent, ten of which are a basis point.
  const read = readQuantity(trimmed.slice(0, -1).trim(), writing);
  return read === null || read.unit !== '' || read.quantity <= 0 || read.quantity % 10 !== 0 || read.quantity > 100_000
    ? null
    : { bp: read.quantity / 10 };
}

/** A reduction as it is typed; '' where there is none. */
export function reductionText(reduction: Line['discount'], writing: Writing): string {
  if (reduction === null || reduction === undefined) return '';
  return 'bp' in reduction ? rateText(reduction.bp * PPM_PER_BP, writing) : amountText(reduction.sum, writing);
}
