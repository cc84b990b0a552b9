import { formatQuantity, type Marks, parseQuantity, twoWays } from '../../../core/measure/quantity.ts';
import type { Step } from './draft.ts';

type Measure = NonNullable<Step['measure']>;
type Fluid = NonNullable<Step['fluidOut']>;
type FluidIn = NonNullable<Step['fluidIn']>;

const number = (text: string): number => Number(text.replace(',', '.'));

/** "2 plug washer, 1 O-ring"; a part without a figure is one. Null where a count does not fit. */
export function readOneTime(text: string): Step['oneTime'] | null {
  const parts = text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => {
      const match = /^(?:(\d{1,3})\s+)?(\S.{0,79})$/.exec(part);
      const count = Number(match?.[1] ?? '1');
      return match?.[2] === undefined || count < 1 || count > 200 ? null : { part: match[2], count };
    });
  const good = parts.filter((part) => part !== null);
  return good.length === parts.length ? good : null;
}
export const oneTimeText = (parts: Step['oneTime']): string =>
  parts.map(({ part, count }) => `${count} ${part}`).join(', ');

/** "1.1 L gear oil": litres and what. Null where it does not fit; undefined quantities are not taken. */
export function readFluid(text: string, marks: Marks): Fluid | null {
  const match = /^([\d.,]+)\s*(?:[Ll]\s+|\s)(\S.{0,79})$/.exec(text.trim());
  const quantity = match === null ? null : parseQuantity(match[1] ?? '', marks);
  return match?.[2] === undefined || /^l$/i.test(match[2]) || quantity === null || quantity <= 0
    ? null
    : { what: match[2], quantity };
}
export const fluidText = (fluid: Fluid | null, { decimal }: Marks): string =>
  fluid === null ? '' : `${formatQuantity(fluid.quantity, decimal)} L ${fluid.what}`;

/** "1.1 L gear oil, 53 strokes": how many strokes of the shop's pump that is about may follow. */
export function readFluidIn(text: string, lastTime: boolean, marks: Marks): FluidIn | null {
  const match = /^(.*?),\s*(\d{1,4})\s*strokes?$/i.exec(text.trim());
  const fluid = readFluid(match?.[1] ?? text, marks);
  const strokes = match === null ? null : Number(match[2]);
  return fluid === null || strokes === 0 || (strokes ?? 1) > 2000 ? null : { ...fluid, strokes, lastTime };
}
export const fluidInText = (fluid: Step['fluidIn'], marks: Marks): string =>
  `${fluidText(fluid, marks)}${fluid?.strokes == null ? '' : `, ${fluid.strokes} strokes`}`;

/** "100 ml mid-stream to a clean bottle". Null where it does not fit. */
export function readSample(text: string): NonNullable<Step['sample']> | null {
  const match = /^(\d{1,4})\s*ml(?:[,\s]\s*(.{0,120}))?$/i.exec(text.trim());
  const millilitres = Number(match?.[1] ?? '0');
  return millilitres < 1 || millilitres > 5000 ? null : { millilitres, words: (match?.[2] ?? '').trim() };
}
export const sampleText = (sample: Step['sample']): string =>
  sample === null ? '' : `${sample.millilitres} ml ${sample.words}`.trim();

/** "backlash 0.13 to 0.18 mm", "… at 4 places". Null where it does not fit, a figure has two readings, or the most is under the least. */
export function readMeasure(text: string, marks: Marks): Measure | null {
  const [whole = '', placesText] = text.trim().split(/\s+at\s+(\d{1,2})\s+places?$/i);
  const match = /^(\S.{0,79}?)\s+(-?\d+(?:[.,]\d+)?)\s*(?:to|–|-)\s*(-?\d+(?:[.,]\d+)?)\s*(\S{0,10})$/.exec(whole);
  if (match?.[1] === undefined) return null;
  const [, what, from = '', to = '', unit = ''] = match;
  if (twoWays(from, marks) !== null || twoWays(to, marks) !== null) return null;
  const measure = { what, unit, least: number(from), most: number(to), places: Number(placesText ?? '1') };
  return measure.most < measure.least || measure.places < 1 || measure.places > 16 ? null : measure;
}
export function measureText(measure: Step['measure']): string {
  if (measure === null) return '';
  const { what, least, most, unit, places } = measure;
  return `${`${what} ${least} to ${most} ${unit}`.trim()}${places === 1 ? '' : ` at ${places} places`}`;
}

/**
 * Steps that open again with step `n`: "5, 7", nothing for every one after it, "none". Undefined where one is not a later
 * step of this procedure.
 */
export function readReopens(text: string, n: number, last: number): Step['reopens'] | undefined {
  if (text.trim() === '') return null;
  if (/^none$/i.test(text.trim())) return [];
  const steps = text
    .split(/[,\s]+/)
    .filter((part) => part !== '')
    .map((part) => (/^\d{1,3}$/.test(part) ? Number(part) : 0));
  return steps.every((step) => step > n && step <= last) ? [...new Set(steps)].sort((a, b) => a - b) : undefined;
}
export const reopensText = (reopens: Step['reopens']): string =>
  reopens === null ? '' : reopens.length === 0 ? 'none' : reopens.join(', ');
