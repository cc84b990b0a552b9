import { roundDivide } from '../money/money.ts';
import { type TrendRule, trend, USUAL_TREND } from './trend.ts';

/** A sample of one unit as the lab answered it. Parts per million in thousandths. */
export interface LabSample {
  readonly id: string;
  /** Kilometres that the fluid was in; null where nobody wrote them down. */
  readonly km: number | null;
  /** Null while there is no result. */
  readonly metals: readonly { readonly element: string; readonly ppm: number; readonly limit: number | null }[] | null;
}

/** Rates are parts per million for each 1000 km, in thousandths. */
export interface MetalHistory {
  readonly element: string;
  readonly points: readonly { readonly sampleId: string; readonly ppm: number; readonly rate: number | null }[];
  /** The lab's own limit for the raw figure, as it last named one. */
  readonly limit: number | null;
  /** Earlier samples that the limits were worked from. */
  readonly count: number;
  readonly mean: number | null;
  readonly deviation: number | null;
  readonly alert: number | null;
  readonly alarm: number | null;
  readonly says: 'none' | 'normal' | 'alert' | 'alarm';
  /** Why nothing is said. */
  readonly because: '' | 'no-result' | 'no-distance' | 'few-samples' | 'short-distance';
}

/**
 * Each metal over the samples of one unit, oldest first; the last one is held against those before it. A sample after too
 * short a distance stands among the points but not in the limits: its rate says little, and would widen them.
 */
export function metalHistories(samples: readonly LabSample[], rule: TrendRule = USUAL_TREND): MetalHistory[] {
  const elements = new Set(samples.flatMap(({ metals }) => (metals ?? []).map(({ element }) => element)));
  return [...elements].sort().map((element) => metalHistory(element, samples, rule));
}

function metalHistory(element: string, samples: readonly LabSample[], rule: TrendRule): MetalHistory {
  const points = samples.flatMap(({ id, km, metals }) => {
    const metal = metals?.find((one) => one.element === element);
    return metal === undefined ? [] : [{ sampleId: id, ppm: metal.ppm, limit: metal.limit, km }];
  });
  const asked = samples.at(-1);
  const latest = points.find(({ sampleId }) => sampleId === asked?.id);
  const earlier = points.flatMap(({ sampleId, ppm, km }) =>
    sampleId === asked?.id || km === null || km < rule.fewestKm ? [] : [{ ppm: ppm / 1000, km }],
  );
  // Limits stand whether or not the last sample can be held against them.
  const against = latest?.km ? { ppm: latest.ppm / 1000, km: latest.km } : { ppm: 0, km: rule.fewestKm };
  const { mean, deviation, alert, alarm, says } = trend(earlier, against, rule);
  const because = whyNot(latest, earlier.length, rule);
  return {
    element,
    points: points.map(({ sampleId, ppm, km }) => ({
      sampleId,
      ppm,
      rate: km === null ? null : roundDivide(BigInt(ppm) * 1000n, BigInt(km)),
    })),
    limit: points.findLast(({ limit }) => limit !== null)?.limit ?? null,
    count: earlier.length,
    mean: thousandths(mean),
    deviation: thousandths(deviation),
    alert: thousandths(alert),
    alarm: thousandths(alarm),
    says: because === '' ? says : 'none',
    because,
  };
}

function whyNot(latest: { readonly km: number | null } | undefined, count: number, rule: TrendRule) {
  if (!latest) return 'no-result';
  if (latest.km === null) return 'no-distance';
  if (latest.km < rule.fewestKm) return 'short-distance';
  return count < rule.fewestSamples ? 'few-samples' : '';
}

const thousandths = (value: number | null): number | null => (value === null ? null : Math.round(value * 1000));
