import type { InputOf } from '../../../../core/contract/index.ts';

export type Measured = NonNullable<InputOf<'finding.add'>['measured']>;

/** What is measured at a finding as somebody says it; figures in thousandths of the unit. */
export interface Measuring {
  readonly what: string;
  readonly unit: string;
  readonly value: number | null;
  readonly side: 'most' | 'least';
  readonly limit: number | null;
  readonly source: string;
}

export const NOT_MEASURED: Measuring = { what: '', unit: 'mm', value: null, side: 'most', limit: null, source: '' };

/** As it goes to the shop; null while no figure was read. */
export function measuredOf({ what, unit, value, side, limit, source }: Measuring, usual: string): Measured | null {
  if (value === null) return null;
  return {
    ...{ what: what.trim() === '' ? usual : what, value, unit },
    least: side === 'least' ? limit : null,
    most: side === 'most' ? limit : null,
    source: limit === null ? '' : source,
  };
}

/** How far a figure lies beyond its limit, thousandths; 0 inside; null without a limit. */
export function beyond({ value, limit, side }: Pick<Measuring, 'value' | 'limit' | 'side'>): number | null {
  if (value === null || limit === null) return null;
  return Math.max(0, side === 'most' ? value - limit : limit - value);
}

/** The end of the drawn scale: the first of 1, 2, 5, 10 … that leaves room beyond both figures; thousandths. */
export function scaleEnd(value: number, limit: number): number {
  const needed = Math.max(Math.abs(value), Math.abs(limit), 1) * 1.25;
  const power = 10 ** Math.floor(Math.log10(needed));
  return [1, 2, 5, 10].map((step) => step * power).find((end) => end >= needed) ?? 10 * power;
}
