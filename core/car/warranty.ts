import { addMonths } from '../time/civil.ts';
import type { Reading } from './odometer.ts';

/** A promise by time and distance, whichever ends first. */
export interface WarrantyTerms {
  readonly months: number;
  readonly distance: number;
  /** Whether the last day and the last unit of distance are still covered. */
  readonly edgesIncluded: boolean;
}

/** Whether a return falls under the warranty of a repair; both with true distances in one unit. */
export function covered(repair: Reading, terms: WarrantyTerms, back: Reading): boolean {
  const lastDay = addMonths(repair.on, terms.months);
  const lastDistance = repair.distance + terms.distance;
  return terms.edgesIncluded
    ? back.on <= lastDay && back.distance <= lastDistance
    : back.on < lastDay && back.distance < lastDistance;
}
