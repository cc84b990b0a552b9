import { addDays, daysBetween, weekday } from '../time/civil.ts';

/** Storage of a car that is ready and not fetched. Only where told in writing at intake; a local rule may forbid it. */
export interface StorageRule {
  /** Working days after the day of the notice that cost nothing. */
  readonly freeWorkingDays: number;
  /** Monday = 1 to Sunday = 7. */
  readonly workingWeekdays: readonly number[];
  /** Whether the day of collection is charged. */
  readonly collectionDayCharged: boolean;
}

export interface StorageDays {
  readonly firstCharged: string;
  /** Calendar days charged. */
  readonly days: number;
}

/** Days of storage between a ready notice and the collection, both civil dates. Throws RangeError without a working day. */
export function storageDays(notice: string, collected: string, rule: StorageRule): StorageDays {
  if (rule.freeWorkingDays > 0 && rule.workingWeekdays.length === 0) throw new RangeError('No working day');
  let day = notice;
  for (let free = 0; free < rule.freeWorkingDays; ) {
    day = addDays(day, 1);
    if (rule.workingWeekdays.includes(weekday(day))) free += 1;
  }
  const firstCharged = addDays(day, 1);
  const days = daysBetween(firstCharged, collected) + (rule.collectionDayCharged ? 1 : 0);
  return { firstCharged, days: Math.max(0, days) };
}

/** The last day that is charged; null where none is. */
export const lastCharged = ({ firstCharged, days }: StorageDays): string | null =>
  days === 0 ? null : addDays(firstCharged, days - 1);

/** What of these days is still to be charged where an invoice charges up to a day already; null: none does. */
export function daysAfter(storage: StorageDays, invoicedLast: string | null): StorageDays {
  const last = lastCharged(storage);
  if (last === null || invoicedLast === null || invoicedLast < storage.firstCharged) return storage;
  const firstCharged = addDays(invoicedLast, 1);
  return { firstCharged, days: Math.max(0, daysBetween(firstCharged, last) + 1) };
}
