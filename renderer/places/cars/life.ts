import { perDayX100 } from '../../../core/car/odometer.ts';
import type { OutputOf } from '../../../core/contract/index.ts';
import { scale } from '../../../core/money/money.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { carriedOf } from './life-events.ts';

type Car = OutputOf<'car.get'>;

export interface LifePoint {
  readonly id: string;
  /** What the car had truly gone, every replaced clock counted, in its own unit. */
  readonly distance: number;
  readonly words: string;
}

/** The visits with a mileage, newest first, those before this program too: what it had gone by then and what was done. */
export function visitPoints(car: Car, zone: string): LifePoint[] {
  const before = car.pastVisits.flatMap((visit): LifePoint[] =>
    visit.mileage === null ? [] : [{ id: visit.id, distance: visit.mileage, words: visit.words }],
  );
  const own = car.visits.flatMap((visit): LifePoint[] => {
    const shown = visit.mileageOut ?? visit.mileageIn;
    if (shown === null) return [];
    const day = civilDateOf(visit.openedAt, zone);
    const reading = car.readings.find((one) => one.reading === shown && one.on >= day);
    const words = visit.jobs[0]?.title ?? visit.complaint;
    return [{ id: visit.orderId, distance: reading?.trueDistance ?? shown, words }];
  });
  return [...own, ...before];
}

/** Work said no to that is to be asked about again at a mileage. */
export function askAgainPoints(car: Car): LifePoint[] {
  const carried = carriedOf(car);
  return car.declined.flatMap((work) =>
    work.followUpMileage === null
      ? []
      : [{ id: work.decisionId + work.jobId, distance: work.followUpMileage + carried, words: work.title }],
  );
}

/** The furthest it has truly gone; null before any reading. */
export function goneSoFar(car: Car): number | null {
  return car.readings.length === 0 ? null : Math.max(...car.readings.map((one) => one.trueDistance));
}

const FEWEST_DAYS = 30;
const DAYS_OF_YEAR = 365;
const DAY = 86_400_000;

/** Distance a year by the first and the last reading, whole units; null when they are less than 30 days apart. */
export function aYear(car: Car): number | null {
  const [first, last] = [car.readings[0], car.readings.at(-1)];
  if (first === undefined || last === undefined) return null;
  if ((Date.parse(last.on) - Date.parse(first.on)) / DAY < FEWEST_DAYS) return null;
  const pace = perDayX100({ on: first.on, distance: first.trueDistance }, { on: last.on, distance: last.trueDistance });
  return pace === null || pace <= 0 ? null : scale(pace, DAYS_OF_YEAR, 100);
}
