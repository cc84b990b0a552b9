import { stageText } from '../../../core/bench/stage.ts';
import { formatQuantity, parseQuantity } from '../../../core/measure/quantity.ts';
import type { Step } from './draft.ts';

type Torque = NonNullable<Step['torque']>;
type Measure = NonNullable<Step['measure']>;
type Fluid = NonNullable<Step['fluidOut']>;

const number = (text: string): number => Number(text.replace(',', '.'));

/**
 * Rounds as typed: "30, 60, 85" in N·m, "22 lbf·ft", "40 N·m (30 lbf·ft)" where the source prints both, "90°". Null where
 * one is no figure, or there are none or more than six.
 */
export function readStages(text: string): Torque['stages'] | null {
  const stages = text
    .split(/;|,\s+/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map(readStage);
  const good = stages.filter((stage) => stage !== null);
  return good.length !== stages.length || good.length === 0 || good.length > 6 ? null : good;
}

const FIGURE = String.raw`(\d{1,4}(?:[.,]\d{1,2})?)`;
const FEET = '(?:lbf·ft|lbf ?ft|ft·lbf)';
const ANGLE = new RegExp(`^${FIGURE}\\s*(?:°|deg)$`, 'i');
const FEET_ALONE = new RegExp(`^${FIGURE}\\s*${FEET}$`, 'i');
const METRES = new RegExp(`^${FIGURE}\\s*(?:N·m|Nm)?(?:\\s*\\(${FIGURE}\\s*${FEET}\\))?$`, 'i');

function readStage(text: string): Torque['stages'][number] | null {
  const within = (figure: number, most: number) => figure > 0 && figure <= most;
  const angle = number(ANGLE.exec(text)?.[1] ?? '0');
  if (angle !== 0) return within(angle, 720) ? { degrees: angle } : null;
  const feet = number(FEET_ALONE.exec(text)?.[1] ?? '0');
  if (feet !== 0) return within(feet, 3700) ? { lbfft: feet } : null;
  const match = METRES.exec(text);
  const Nm = number(match?.[1] ?? '0');
  if (!within(Nm, 5000)) return null;
  if (match?.[2] === undefined) return { Nm };
  const lbfft = number(match[2]);
  return within(lbfft, 3700) ? { Nm, lbfft } : null;
}

/** "30, 60, 90°"; with its unit where it is not N·m alone. */
export const stagesText = (stages: Torque['stages']): string =>
  stages.map((stage) => ('Nm' in stage && !('lbfft' in stage) ? String(stage.Nm) : stageText(stage))).join(', ');

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
export function readFluid(text: string): Fluid | null {
  const match = /^([\d.,]+)\s*(?:[Ll]\s+|\s)(\S.{0,79})$/.exec(text.trim());
  const quantity = match === null ? null : parseQuantity(match[1] ?? '');
  return match?.[2] === undefined || /^l$/i.test(match[2]) || quantity === null || quantity <= 0
    ? null
    : { what: match[2], quantity };
}
export const fluidText = (fluid: Fluid | null): string =>
  fluid === null ? '' : `${formatQuantity(fluid.quantity, '.')} L ${fluid.what}`;

/** "backlash 0.13 to 0.18 mm". Null where it does not fit or the most is under the least. */
export function readMeasure(text: string): Measure | null {
  const match = /^(\S.{0,79}?)\s+(-?\d+(?:[.,]\d+)?)\s*(?:to|–|-)\s*(-?\d+(?:[.,]\d+)?)\s*(\S{0,10})$/.exec(
    text.trim(),
  );
  if (match?.[1] === undefined) return null;
  const [, what, from = '', to = '', unit = ''] = match;
  const measure = { what, unit, least: number(from), most: number(to), places: 1 };
  return measure.most < measure.least ? null : measure;
}
export const measureText = (measure: Step['measure']): string =>
  measure === null ? '' : `${measure.what} ${measure.least} to ${measure.most} ${measure.unit}`.trim();
