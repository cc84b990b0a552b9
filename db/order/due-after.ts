import { type DistanceUnit, inKilometres, inMiles } from '../../core/measure/distance.ts';
import { REMINDER_WORDS } from '../../core/paper/message-words.ts';
import { addDays } from '../../core/time/civil.ts';
import type { Settings } from '../context.ts';
import type { ReminderRow } from '../tables.ts';
import { bookContent } from './book-content.ts';
import type { Loaded } from './load.ts';
import type { Reckoned } from './reckon.ts';

/** Wheels are asked after at the latest so many days on, where nobody knows how far the car went: common practice, no source. */
const WHEEL_DAYS = 14;

/** What a visit leaves to be done on the car later. */
export interface DueAfter {
  readonly source: ReminderRow['source'];
  readonly sourceId: string;
  readonly words: string;
  /** Civil date; null where only the distance says. */
  readonly on: string | null;
  /** What the car's clock will show, its own unit. */
  readonly shows: number | null;
}

const inUnit = (distance: number, from: DistanceUnit, to: DistanceUnit) =>
  to === 'km' ? inKilometres(distance, from) : inMiles(distance, from);

/** A distance in the shop's unit from here on, as the clock of this order's car will show it; null without a reading. */
export function clockAfter({ order, car }: Loaded, settings: Settings, distance: number | null): number | null {
  const shown = order.mileage_out ?? order.mileage_in;
  return distance === null || shown === null ? null : shown + inUnit(distance, settings.distance, car.unit);
}

/**
 * What the job book says is due after the jobs of an order, and wheels to tighten again where a step hands out the card: as
 * the invoice prints it and as the car is reminded of it. A sale over the counter leaves nothing.
 */
export function dueAfter(loaded: Loaded, { inSum }: Reckoned, settings: Settings, today: string): DueAfter[] {
  if (loaded.order.counter_sale === 1) return [];
  const contents = inSum.flatMap((job) => {
    const version = loaded.versions.find((one) => one.id === job.book_job_version_id);
    return version === undefined ? [] : [{ job, content: bookContent(version) }];
  });
  const due = contents.flatMap(({ job, content }) =>
    content.after.map(
      ({ source, words, days, distance }, place): DueAfter => ({
        ...{ source, sourceId: `${job.id}:${place}`, words },
        on: days === null ? null : addDays(today, days),
        shows: clockAfter(loaded, settings, distance),
      }),
    ),
  );
  const card = contents.some(({ job, content }) =>
    content.steps.some(
      (step) =>
        step.recheckCard &&
        loaded.steps.findLast((row) => row.job_id === job.id && row.step === step.n)?.state === 'done',
    ),
  );
  if (card && settings.wheelRecheckDistance !== null)
    due.push({
      ...{ source: 'wheel-recheck', sourceId: loaded.order.id, words: REMINDER_WORDS[settings.language].wheels },
      on: addDays(today, WHEEL_DAYS),
      shows: clockAfter(loaded, settings, settings.wheelRecheckDistance),
    });
  return due;
}
