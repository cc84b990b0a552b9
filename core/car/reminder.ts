import { type DistanceUnit, inMiles } from '../measure/distance.ts';
import { addDays } from '../time/civil.ts';
import { dueOn, expectedDistance } from './due.ts';
import { MOST_KM_A_DAY, type Reading } from './odometer.ts';
import { paceReadings } from './readings.ts';

/** What came of asking once, in the order it was asked. */
export interface Try {
  readonly outcome: 'booked' | 'later' | 'no' | 'nobody' | 'letter';
  /** Civil date that the customer asked to be asked again. */
  readonly askOn: string | null;
  /** Civil date of the try. */
  readonly on: string;
}

/** Nobody nags: after this many noes a reminder is over. */
const MOST_NOES = 2;
/** A no is not asked again, and a letter not followed up, sooner than this; nobody reached: the next day. Common practice, no source. */
const QUIET_DAYS = { no: 30, letter: 14, nobody: 1, later: 0, booked: 0 } as const;

export interface Standing {
  readonly noes: number;
  /** Civil date before which it is not spoken of again; null when nobody has asked. */
  readonly askOn: string | null;
  readonly over: '' | 'booked' | 'two-noes';
}

/** Where a reminder stands by what came of asking. */
export function standingOf(tries: readonly Try[]): Standing {
  const noes = tries.filter(({ outcome }) => outcome === 'no').length;
  const last = tries.at(-1);
  const over = noes >= MOST_NOES ? 'two-noes' : last?.outcome === 'booked' ? 'booked' : '';
  return { noes, askOn: last ? (last.askOn ?? addDays(last.on, QUIET_DAYS[last.outcome])) : null, over };
}

export interface Ahead {
  /** The earlier of the set day and the guessed one; null when neither is known. */
  readonly on: string | null;
  readonly guessed: boolean;
  readonly days: number | null;
  readonly perDayX100: number | null;
  /** True distance to be expected today; the last one read where there is no pace. */
  readonly expected: number | null;
}

/**
 * When a reminder falls due, from the car's true readings in its own unit (two visits over 30 days apart, at most
 * 300 km a day, else the date alone). A distance that was read as gone already is due on the day it was read.
 */
export function ahead(
  readings: readonly Reading[],
  rule: { readonly onDate: string | null; readonly atDistance: number | null },
  unit: DistanceUnit,
  today: string,
): Ahead {
  const last = readings.at(-1) ?? null;
  const pace = paceReadings(readings);
  const most = unit === 'km' ? MOST_KM_A_DAY : inMiles(MOST_KM_A_DAY, 'km');
  const due = pace && dueOn(pace.first, pace.last, rule, most);
  const gone = last !== null && rule.atDistance !== null && last.distance >= rule.atDistance;
  if (gone) {
    const on = rule.onDate !== null && rule.onDate < last.on ? rule.onDate : last.on;
    return { on, guessed: false, days: null, perDayX100: null, expected: last.distance };
  }
  if (!due || !pace || due.perDayX100 === null)
    return { on: rule.onDate, guessed: false, days: null, perDayX100: null, expected: last?.distance ?? null };
  const expected = today > pace.last.on ? expectedDistance(pace.first, pace.last, today) : pace.last.distance;
  return { on: due.on, guessed: due.guessed, days: due.days, perDayX100: due.perDayX100, expected };
}
