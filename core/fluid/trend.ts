import { deviation, mean } from './statistics.ts';

/** A lab's figure of one element (parts per million) in fluid that was in for `km`. */
export interface Sample {
  readonly ppm: number;
  readonly km: number;
}

export interface TrendRule {
  /** Standard deviations over the mean: past the first is an alert, past the second an alarm. */
  readonly alertSd: number;
  readonly alarmSd: number;
  /** Divides by n - 1 (sample) or by n (population). */
  readonly sd: 'sample' | 'population';
  readonly fewestSamples: number;
  readonly fewestKm: number;
}

/** Common practice; labs work on far more samples than one car ever has, so this is a hint with its count. */
export const USUAL_TREND: TrendRule = { alertSd: 2, alarmSd: 3, sd: 'sample', fewestSamples: 4, fewestKm: 1000 };

/** The rule with the shop's own guards, deviations in tenths. */
export const trendRule = (guards: {
  readonly fewestSamples: number;
  readonly fewestKm: number;
  readonly alertTenths: number;
  readonly alarmTenths: number;
}): TrendRule => ({
  alertSd: guards.alertTenths / 10,
  alarmSd: guards.alarmTenths / 10,
  sd: USUAL_TREND.sd,
  fewestSamples: guards.fewestSamples,
  fewestKm: guards.fewestKm,
});

export interface Trend {
  /** ppm for each 1000 km, in the order of the samples. */
  readonly rates: readonly number[];
  readonly newRate: number;
  /** Null without enough samples to work it from. */
  readonly mean: number | null;
  readonly deviation: number | null;
  readonly alert: number | null;
  readonly alarm: number | null;
  /** none: too few samples, or too short a time on the fluid, to say anything. */
  readonly says: 'none' | 'normal' | 'alert' | 'alarm';
}

/**
 * A new sample against the history of the same unit: each figure is brought to 1000 km, and the new one is held against
 * mean + so many standard deviations. Exactly at a limit is inside it. The lab's own remark comes first.
 * Throws RangeError for a sample without distance.
 */
export function trend(history: readonly Sample[], latest: Sample, rule: TrendRule = USUAL_TREND): Trend {
  const rates = history.map(rate);
  const newRate = rate(latest);
  const middle = rates.length === 0 ? null : mean(rates);
  const spread = deviation(rates, rule.sd);
  const limit = (times: number) => (middle === null || spread === null ? null : middle + times * spread);
  const [alert, alarm] = [limit(rule.alertSd), limit(rule.alarmSd)];
  const silent = rates.length < rule.fewestSamples || latest.km < rule.fewestKm || alert === null || alarm === null;
  const says = silent ? 'none' : newRate > alarm ? 'alarm' : newRate > alert ? 'alert' : 'normal';
  return { rates, newRate, mean: middle, deviation: spread, alert, alarm, says };
}

function rate({ ppm, km }: Sample): number {
  if (!(km > 0)) throw new RangeError('A sample needs the distance on its fluid');
  return (ppm * 1000) / km;
}
