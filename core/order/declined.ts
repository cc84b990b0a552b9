import { addDays } from '../time/civil.ts';

/** When declined work is spoken of again: a civil date and a distance on the car's clock. */
export interface FollowUp {
  readonly on: string;
  readonly distance: number | null;
}

/**
 * Declined work comes up again some days or some distance after the no, whichever is first. The mileage is null when it
 * was not read. Throws RangeError for a date that does not exist.
 */
export function followUp(declinedOn: string, mileage: number | null, days: number, distance: number): FollowUp {
  return { on: addDays(declinedOn, days), distance: mileage === null ? null : mileage + distance };
}
