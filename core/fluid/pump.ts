import { scale } from '../money/money.ts';

/** A measured fill: so many whole strokes gave so much fluid (thousandths of a litre). */
export interface Calibration {
  readonly strokes: number;
  readonly quantity: number;
}

function checked(calibration: Calibration): Calibration {
  if (calibration.strokes > 0 && calibration.quantity > 0) return calibration;
  throw new RangeError('A calibration needs strokes and what they gave');
}

/**
 * What so many strokes of a calibrated pump give, in thousandths of a litre, rounded half away from zero. Throws RangeError
 * for an empty calibration or what is no whole number.
 */
export function quantityOf(strokes: number, calibration: Calibration): number {
  const { strokes: counted, quantity } = checked(calibration);
  return scale(quantity, strokes, counted);
}

/** The whole strokes that give at least so much: one looks at the level before the last. Throws as quantityOf does. */
export function strokesFor(quantity: number, calibration: Calibration): number {
  const { strokes, quantity: given } = checked(calibration);
  // In whole numbers: a fraction of a stroke too many or too few would be a whole one in the end.
  const [wanted, by] = [BigInt(quantity) * BigInt(strokes), BigInt(given)];
  return Number((wanted + by - 1n) / by);
}
