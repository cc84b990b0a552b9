/** A measured fill: so many strokes gave so much fluid (thousandths of a litre). */
export interface Calibration {
  readonly strokes: number;
  readonly quantity: number;
}

function perStroke({ strokes, quantity }: Calibration): number {
  if (!(strokes > 0 && quantity > 0)) throw new RangeError('A calibration needs strokes and what they gave');
  return quantity / strokes;
}

/** What so many strokes of a calibrated pump give, in thousandths of a litre. Throws RangeError for an empty calibration. */
export function quantityOf(strokes: number, calibration: Calibration): number {
  return Math.round(strokes * perStroke(calibration));
}

/** The whole strokes that give at least so much: one looks at the level before the last. Throws as quantityOf does. */
export function strokesFor(quantity: number, calibration: Calibration): number {
  return Math.ceil(quantity / perStroke(calibration) - 1e-9);
}
